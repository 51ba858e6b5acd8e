import type { Cause, Guide, GuideTest } from '../../src/calc/guide/guide.ts';

/** A guide that is in no file, for the rule alone. */
export const aGuide = (causes: readonly Cause[], tests: readonly GuideTest[]): Guide => ({
  id: 'a-guide',
  name: 'A guide',
  means: 'Nothing real.',
  words: [],
  ask: 'nobody',
  causes,
  tests,
});

export const aCause = (id: string, weight: number): Cause => ({
  id,
  name: id,
  weight,
  do: 'Mend it.',
  recheck: 'Look again.',
  touches: [],
  leftOff: [],
  readings: [],
});

type Shown = { readonly leaves: readonly string[] } | { readonly rulesOut: readonly string[] };

export const aTest = (id: string, minutes: number, outcomes: Readonly<Record<string, Shown>>): GuideTest => ({
  id,
  test: id,
  how: [],
  expect: '',
  source: [],
  minutes,
  tools: [],
  cautions: [],
  after: [],
  outcomes: Object.entries(outcomes).map(([outcome, shown]) => ({
    id: outcome,
    label: outcome,
    leaves: 'leaves' in shown ? shown.leaves : null,
    rulesOut: 'rulesOut' in shown ? shown.rulesOut : null,
    reads: null,
  })),
});
