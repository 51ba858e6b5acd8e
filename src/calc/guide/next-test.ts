import { type Beliefs, beliefs, chanceOf, chanceOfOther, type Evidence, type Suspect } from './beliefs.ts';
import { type Cause, type Guide, type GuideTest, keeps } from './guide.ts';

/** Where a search stands, and so what comes next. */
export type Next =
  | { readonly kind: 'test'; readonly test: GuideTest; readonly bits: number }
  /** All that still tells causes apart was put off; the best of those. */
  | { readonly kind: 'put-off'; readonly test: GuideTest; readonly bits: number }
  /** One cause: by a test that leaves no other, or because everything else is ruled out. */
  | { readonly kind: 'found'; readonly cause: Cause; readonly by: 'test' | 'elimination' }
  /** Nothing in the guide fits what was found, or nothing in it tells the rest apart. */
  | { readonly kind: 'beyond'; readonly left: readonly Suspect[] };

export interface Search extends Evidence {
  /** Tests that cannot be done just now. */
  readonly putOff: readonly string[];
}

/**
 * The cheapest decisive test next: of the tests whose conditions hold, the one that tells most for its minutes, as
 * expected fall of the entropy of the causes over the minutes it takes (a greedy rule; equal ones in the guide's order).
 */
export function nextTest(guide: Guide, search: Search): Next {
  const now = beliefs(guide, search);
  const [first, ...more] = now.suspects;
  if (first === undefined) return { kind: 'beyond', left: [] };
  if (more.length === 0 && isProved(guide, search, first.cause.id)) {
    return { kind: 'found', cause: first.cause, by: 'test' };
  }
  const open = openTests(guide, search, now);
  const best = bestOf(
    open.filter(({ id }) => !search.putOff.includes(id)),
    now,
  );
  if (best) return { kind: 'test', ...best };
  const later = bestOf(open, now);
  if (later) return { kind: 'put-off', ...later };
  if (more.length === 0) return { kind: 'found', cause: first.cause, by: 'elimination' };
  return { kind: 'beyond', left: now.suspects };
}

/** Tests that may be done now and tell something: not done, conditions hold, every suspect has an outcome. */
export function openTests(guide: Guide, { found }: Evidence, now: Beliefs): readonly GuideTest[] {
  const done = new Set(found.map(({ test }) => test));
  const suspects = now.suspects.map(({ cause }) => cause.id);
  return guide.tests.filter(
    (test) =>
      !done.has(test.id) &&
      test.after.every((before) => done.has(before)) &&
      suspects.every((cause) => test.outcomes.some((outcome) => keeps(outcome, cause))) &&
      tells(test, suspects),
  );
}

/** Whether a test can tell two suspects apart, or prove the only one. */
function tells({ outcomes }: GuideTest, suspects: readonly string[]): boolean {
  return outcomes.some((outcome) => {
    const kept = suspects.filter((cause) => keeps(outcome, cause)).length;
    return suspects.length === 1
      ? kept === 1 && outcome.leaves?.length === 1
      : kept > 0 && kept < suspects.length;
  });
}

/** Whether some finding left this cause and no other. */
function isProved(guide: Guide, { found }: Evidence, cause: string): boolean {
  return found.some(({ test, outcome }) => {
    const leaves = guide.tests
      .find(({ id }) => id === test)
      ?.outcomes.find(({ id }) => id === outcome)?.leaves;
    return leaves?.length === 1 && leaves[0] === cause;
  });
}

function bestOf(
  tests: readonly GuideTest[],
  now: Beliefs,
): { readonly test: GuideTest; readonly bits: number } | undefined {
  let best: { readonly test: GuideTest; readonly bits: number } | undefined;
  for (const test of tests) {
    const bits = bitsOf(test, now);
    if (best === undefined || bits / test.minutes > best.bits / best.test.minutes + 1e-12)
      best = { test, bits };
  }
  return best;
}

/** What a test is expected to tell, in bits: entropy before, less the entropy after weighted over its outcomes. */
export function bitsOf(test: GuideTest, { suspects, otherRatio }: Beliefs): number {
  const before = entropy([...suspects.map(({ shareRatio }) => shareRatio), otherRatio]);
  const after = test.outcomes.reduce((sum, outcome) => {
    const joint = [
      ...suspects.map(({ cause, shareRatio }) => shareRatio * chanceOf(test, outcome, cause.id)),
      otherRatio * chanceOfOther(test, outcome),
    ];
    const chance = joint.reduce((total, part) => total + part, 0);
    return chance === 0 ? sum : sum + chance * entropy(joint.map((part) => part / chance));
  }, 0);
  return Math.max(0, before - after);
}

function entropy(shares: readonly number[]): number {
  return shares.reduce((sum, share) => (share > 0 ? sum - share * Math.log2(share) : sum), 0);
}
