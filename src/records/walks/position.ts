import { type Beliefs, beliefs, type Found, type Suspect } from '../../calc/guide/beliefs.ts';
import type { Cause, Guide, GuideTest } from '../../calc/guide/guide.ts';
import { nextTest, type Search } from '../../calc/guide/next-test.ts';
import {
  causesTouched,
  factorsOf,
  type Known,
  type MeasureOpen,
  type Raise,
  raises,
} from '../../calc/guide/raise.ts';
import { CANNOT, CAUSE_STEP, type Finding, measureOfStep, roundOf, type Walk } from './walk.ts';

/** What a search asks for or has come to. */
export type Step =
  /** Something done for now may be it: look there first. */
  | { readonly kind: 'measure'; readonly measure: MeasureOpen; readonly causes: readonly Cause[] }
  | { readonly kind: 'test'; readonly test: GuideTest; readonly wasPutOff: boolean }
  | { readonly kind: 'found'; readonly cause: Cause; readonly by: 'test' | 'elimination' }
  | { readonly kind: 'beyond'; readonly left: readonly Suspect[] };

/** Where a search stands. */
export interface Position {
  readonly step: Step;
  /** What is still possible. */
  readonly beliefs: Beliefs;
  readonly ruledOut: readonly Cause[];
  /** What the build's record said about what is still possible. */
  readonly raises: readonly Raise[];
}

/** Works out where a search stands from what was found in its round; nothing of it is kept. */
export function positionOf(guide: Guide, walk: Walk, known: Known): Position {
  const now = findingsNow(walk);
  const all = raises(guide, known);
  const search = {
    found: testsFound(now),
    excluded: walk.findings.filter(({ step }) => step === CAUSE_STEP).map(({ outcome }) => outcome),
    factors: factorsOf(all),
    putOff: now.filter(({ outcome }) => outcome === CANNOT).map(({ step }) => step),
  };
  const left = beliefs(guide, search);
  const possible = new Set(left.suspects.map(({ cause }) => cause.id));
  return {
    step: firstLook(guide, known, now, left) ?? testStep(guide, search),
    beliefs: left,
    ruledOut: guide.causes.filter(({ id }) => !possible.has(id)),
    raises: all.filter(({ cause }) => possible.has(cause)),
  };
}

/** What was found since the search last began anew. */
export function findingsNow(walk: Walk): readonly Finding[] {
  const round = roundOf(walk);
  return walk.findings.filter((finding) => finding.round === round);
}

const testsFound = (findings: readonly Finding[]): readonly Found[] =>
  findings
    .filter(({ step, outcome }) => measureOfStep(step) === undefined && outcome !== CANNOT)
    .map(({ step, outcome }) => ({ test: step, outcome }));

function testStep(guide: Guide, search: Search): Step {
  const next = nextTest(guide, search);
  switch (next.kind) {
    case 'test':
      return { kind: 'test', test: next.test, wasPutOff: false };
    case 'put-off':
      return { kind: 'test', test: next.test, wasPutOff: true };
    case 'found':
    case 'beyond':
      return next;
  }
}

/** The measure most likely to be it that nobody has looked at in this round. */
function firstLook(
  guide: Guide,
  { measuresOpen }: Known,
  now: readonly Finding[],
  { suspects }: Beliefs,
): Step | undefined {
  const looked = new Set(now.map(({ step }) => measureOfStep(step)));
  const shares = new Map(suspects.map(({ cause, shareRatio }) => [cause.id, shareRatio]));
  const shareOf = ({ id }: Cause): number => shares.get(id) ?? 0;
  const [first] = measuresOpen
    .filter(({ id }) => !looked.has(id))
    .map((measure) => {
      const causes = causesTouched(guide, measure.what).filter(({ id }) => shares.has(id));
      return { measure, causes: causes.toSorted((a, b) => shareOf(b) - shareOf(a)) };
    })
    .filter(({ causes }) => causes.length > 0)
    .toSorted((a, b) => sum(b.causes.map(shareOf)) - sum(a.causes.map(shareOf)));
  return first && { kind: 'measure', ...first };
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);
