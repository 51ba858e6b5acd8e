import { beliefs, chanceOf, type Found } from '../../src/calc/guide/beliefs.ts';
import type { Cause, Guide, GuideTest } from '../../src/calc/guide/guide.ts';
import { type Next, nextTest, openTests, type Search } from '../../src/calc/guide/next-test.ts';

/** A search of which the record knows nothing beforehand. */
export const searchAfter = (found: readonly Found[], putOff: readonly string[] = []): Search => ({
  found,
  putOff,
  excluded: [],
  factors: new Map(),
});

/** One way through a guide, to its end. */
export interface Path {
  readonly found: readonly Found[];
  readonly end: Next & { readonly kind: 'found' | 'beyond' };
}

/** Every way through a guide that the rule can take, whatever is found. */
export function pathsOf(guide: Guide, found: readonly Found[] = []): readonly Path[] {
  const next = nextTest(guide, searchAfter(found));
  if (next.kind === 'found' || next.kind === 'beyond') return [{ found, end: next }];
  return next.test.outcomes.flatMap(({ id }) =>
    pathsOf(guide, [...found, { test: next.test.id, outcome: id }]),
  );
}

/** Picks what is tested next. */
export type Order = (guide: Guide, found: readonly Found[]) => GuideTest | undefined;

export const byRule: Order = (guide, found) => {
  const next = nextTest(guide, searchAfter(found));
  return next.kind === 'test' || next.kind === 'put-off' ? next.test : undefined;
};

/** The tests as they stand in the file, each that still tells something. */
export const asWritten: Order = (guide, found) => {
  const search = searchAfter(found);
  const next = nextTest(guide, search);
  if (next.kind !== 'test') return undefined;
  return openTests(guide, search, beliefs(guide, search))[0];
};

/** The dearest first: what good parts changed by guess come to. */
export const dearestFirst: Order = (guide, found) => {
  const search = searchAfter(found);
  if (nextTest(guide, search).kind !== 'test') return undefined;
  return openTests(guide, search, beliefs(guide, search)).toSorted((a, b) => b.minutes - a.minutes)[0];
};

/** What it takes to get from the symptom to a cause that is really there. */
export interface Cost {
  /** Mean over what the tests may show under it. */
  readonly meanMinutes: number;
  readonly mostTests: number;
  /** Everything the search may end in. */
  readonly ends: ReadonlySet<string>;
}

export function costOf(guide: Guide, truth: Cause, order: Order, found: readonly Found[] = []): Cost {
  const test = order(guide, found);
  if (test === undefined) {
    const end = nextTest(guide, searchAfter(found));
    return {
      meanMinutes: 0,
      mostTests: found.length,
      ends: new Set([end.kind === 'found' ? end.cause.id : end.kind]),
    };
  }
  const parts = test.outcomes
    .map((outcome) => ({ outcome, chance: chanceOf(test, outcome, truth.id) }))
    .filter(({ chance }) => chance > 0)
    .map(({ outcome, chance }) => ({
      chance,
      cost: costOf(guide, truth, order, [...found, { test: test.id, outcome: outcome.id }]),
    }));
  return {
    meanMinutes: test.minutes + parts.reduce((sum, { chance, cost }) => sum + chance * cost.meanMinutes, 0),
    mostTests: Math.max(...parts.map(({ cost }) => cost.mostTests)),
    ends: new Set(parts.flatMap(({ cost }) => [...cost.ends])),
  };
}

/** Mean minutes of a guide over its causes, each as often as its weight says. */
export function meanMinutes(guide: Guide, order: Order): number {
  const all = guide.causes.reduce((sum, { weight }) => sum + weight, 0);
  return guide.causes.reduce(
    (sum, cause) => sum + (cause.weight / all) * costOf(guide, cause, order).meanMinutes,
    0,
  );
}
