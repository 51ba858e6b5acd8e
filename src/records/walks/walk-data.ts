import type { JsonObject } from '../../core/json.ts';
import type { Finding } from './walk.ts';
import type { WalkView } from './walk-view.ts';

/** A search as scripts get it. */
export function walkData({ walk, guide, position }: WalkView): JsonObject {
  const { step, ruledOut, beliefs } = position;
  return {
    kind: 'walk',
    walk: walk.id,
    symptom: guide.id,
    state: walk.state,
    startedBy: walk.startedBy,
    leftBy: walk.leftBy,
    cameFrom: walk.cameFrom,
    step: step.kind,
    test: step.kind === 'test' ? step.test.id : null,
    measure: step.kind === 'measure' ? step.measure.id : null,
    expect: step.kind === 'test' ? step.test.expect : null,
    minutes: step.kind === 'test' ? step.test.minutes : null,
    outcomes: step.kind === 'test' ? step.test.outcomes.map(({ id, label }) => ({ outcome: id, label })) : [],
    cause: walk.state === 'finished' ? walk.cause : step.kind === 'found' ? step.cause.id : null,
    proved: step.kind === 'found' ? step.by === 'test' : null,
    note: walk.note,
    ruledOut: ruledOut.map(({ id }) => id),
    left: beliefs.suspects.map(({ cause, shareRatio }) => ({
      cause: cause.id,
      shareRatio: Math.round(shareRatio * 1000) / 1000,
    })),
    findings: walk.findings.map(findingData),
  };
}

export function findingData({
  id,
  round,
  step,
  outcome,
  note,
  byName,
  atMs,
  firstOutcome,
}: Finding): JsonObject {
  return { finding: id, round, step, outcome, note, by: byName, atMs, firstOutcome };
}
