import { type Cause, type Guide, type GuideTest, keeps, type Outcome } from './guide.ts';

/** What was found by one test. */
export interface Found {
  readonly test: string;
  readonly outcome: string;
}

/** A cause with its share of what is still possible. */
export interface Suspect {
  readonly cause: Cause;
  readonly shareRatio: number;
}

/** What is still possible, and how it shares out; the shares and `otherRatio` add up to one. */
export interface Beliefs {
  /** The likeliest first; equal ones in the order of the guide. */
  readonly suspects: readonly Suspect[];
  /** That it is something this guide does not list. */
  readonly otherRatio: number;
}

export interface Evidence {
  readonly found: readonly Found[];
  /** Causes that were put right and changed nothing. */
  readonly excluded: readonly string[];
  /** What the build's record makes more or less likely: a factor on the weight. */
  readonly factors: ReadonlyMap<string, number>;
}

/** Taken for "something else" against all listed causes together: a judgement, no statistic. */
const OTHER_RATIO = 0.05;

/**
 * Shares of the causes after what was found, by Bayes' rule with one fault at a time: weight × the chance of each
 * finding under that cause. Under a cause every outcome that keeps it is equally likely.
 */
export function beliefs(guide: Guide, { found, excluded, factors }: Evidence): Beliefs {
  const results = found.flatMap(({ test, outcome }) => resultOf(guide, test, outcome) ?? []);
  const base = guide.causes.reduce((sum, { weight }) => sum + weight, 0);
  const chances = guide.causes.map((cause) => ({
    cause,
    chance: excluded.includes(cause.id)
      ? 0
      : results.reduce(
          (chance, { test, outcome }) => chance * chanceOf(test, outcome, cause.id),
          cause.weight * (factors.get(cause.id) ?? 1),
        ),
  }));
  const other = results.reduce(
    (chance, { test, outcome }) => chance * chanceOfOther(test, outcome),
    base * OTHER_RATIO,
  );
  const sum = chances.reduce((total, { chance }) => total + chance, other);
  const suspects = chances
    .filter(({ chance }) => chance > 0)
    .map(({ cause, chance }) => ({ cause, shareRatio: chance / sum }))
    .toSorted((a, b) => b.shareRatio - a.shareRatio);
  return { suspects, otherRatio: sum === 0 ? 1 : other / sum };
}

interface Result {
  readonly test: GuideTest;
  readonly outcome: Outcome;
}

function resultOf(guide: Guide, testId: string, outcomeId: string): Result | undefined {
  const test = guide.tests.find(({ id }) => id === testId);
  const outcome = test?.outcomes.find(({ id }) => id === outcomeId);
  return test && outcome && { test, outcome };
}

/** The chance of an outcome under a cause; nought when the outcome rules it out. */
export function chanceOf({ outcomes }: GuideTest, outcome: Outcome, cause: string): number {
  if (!keeps(outcome, cause)) return 0;
  return 1 / outcomes.filter((one) => keeps(one, cause)).length;
}

/** What is not listed may show itself as anything but what points to one cause alone. */
export function chanceOfOther(test: GuideTest, outcome: Outcome): number {
  const possible = outcomesOfOther(test);
  return possible.includes(outcome) ? 1 / possible.length : 0;
}

function outcomesOfOther({ outcomes }: GuideTest): readonly Outcome[] {
  const open = outcomes.filter(({ leaves }) => leaves?.length !== 1);
  return open.length > 0 ? open : outcomes;
}
