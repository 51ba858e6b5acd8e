import type { Finding } from './finding.ts';
import { findingsOf } from './findings.ts';
import type { Stage } from './stage.ts';
import type { StageFacts } from './stage-facts.ts';
import { standingOf } from './standing.ts';

/** How ready a stage is: pure, from the record's facts alone. */
export interface Readiness {
  readonly stage: Stage;
  /** Everything it asks for, each thing once. */
  readonly findings: readonly Finding[];
  /** Open or in doubt, and to be settled before it is begun. */
  readonly missing: readonly Finding[];
  /** Shown only by going through it, and not shown yet. */
  readonly unproved: readonly Finding[];
  /** Nothing is missing: it can be begun. */
  readonly ready: boolean;
}

export function readiness(stage: Stage, facts: StageFacts): Readiness {
  const all = [
    ...earlierStages(stage, facts),
    ...stage.conditions.flatMap((condition) => findingsOf(condition, stage, facts)),
  ];
  const findings = all.filter((one, at) => all.findIndex(({ key }) => key === one.key) === at);
  const left = findings.filter(({ state }) => state !== 'met');
  const missing = left.filter(({ proof }) => !proof);
  return {
    stage,
    findings,
    missing,
    unproved: left.filter(({ proof }) => proof),
    ready: missing.length === 0,
  };
}

/** The stages before it that do not stand as passed, as one thing. */
function earlierStages(stage: Stage, facts: StageFacts): readonly Finding[] {
  const open = facts.stages.filter(
    (one) => one.rank < stage.rank && standingOf(one, facts).kind !== 'passed',
  );
  if (open.length === 0) return [];
  const names = open.map(({ name }) => name).join(', ');
  return [
    {
      key: 'before',
      conditionId: null,
      state: 'open',
      says:
        open.length === 1
          ? `Not passed: ${names}`
          : `${open.length} stages before it are not passed: ${names}`,
      proof: false,
      lasting: false,
      leads: open.map((one) => ({ to: 'stage', stage: one })),
    },
  ];
}
