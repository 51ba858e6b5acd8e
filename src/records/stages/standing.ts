import { limitsOf, within } from './find-readings.ts';
import type { Finding } from './finding.ts';
import { findingsOf } from './findings.ts';
import { type Pass, type Rests, type Stage, type StageCondition, standingPass } from './stage.ts';
import type { StageFacts } from './stage-facts.ts';

/** Where a stage stands: passed, open again since what it rested on changed, or never passed. */
export type Standing =
  | { readonly kind: 'passed'; readonly pass: Pass }
  | { readonly kind: 'reopened'; readonly pass: Pass; readonly why: string }
  | { readonly kind: 'open' };

/**
 * A pass stands until what it rested on changes: a job of it or of a stage before it is open again, a case is drained, a
 * part is gone, something temporary is in place that must not outlive it, a reading is taken back or corrected out of its
 * limits. Readings that grow old, and required measures that are undone as they should be, change nothing.
 */
export function standingOf(stage: Stage, facts: StageFacts): Standing {
  const last = stage.passes.at(-1);
  if (last === undefined) return { kind: 'open' };
  const pass = standingPass(stage);
  if (pass === undefined) return { kind: 'reopened', pass: last, why: last.reopenedBy ?? '' };
  const why = changedSince(stage, pass.restsOn, facts);
  return why === undefined ? { kind: 'passed', pass } : { kind: 'reopened', pass, why };
}

/** What a pass would rest on now. */
export function restsNow(stage: Stage, findings: readonly Finding[], facts: StageFacts): Rests {
  return {
    conditionIds: stage.conditions.map(({ id }) => id),
    except: lastingOpen(stage, stage.conditions, facts).map(({ key }) => key),
    readingIds: findings.flatMap(({ readingId }) => readingId ?? []),
  };
}

function changedSince(
  stage: Stage,
  { conditionIds, except, readingIds }: Rests,
  facts: StageFacts,
): string | undefined {
  const rested = stage.conditions.filter(({ id }) => conditionIds.includes(id));
  const changed = lastingOpen(stage, rested, facts).find(({ key }) => !except.includes(key));
  if (changed !== undefined) return changed.says;
  for (const { condition } of rested) {
    if (condition.kind !== 'reading') continue;
    const known = facts.readings(condition.reading);
    const limits = limitsOf(condition, facts.limits());
    const bad = known.find(({ id, value }) => readingIds.includes(id) && !within(value, limits));
    if (bad !== undefined) return `A reading of ${condition.reading} that it rested on is out of its limits`;
  }
  return takenBack(rested, readingIds, facts);
}

function takenBack(
  rested: readonly StageCondition[],
  readingIds: readonly number[],
  facts: StageFacts,
): string | undefined {
  if (readingIds.length === 0) return undefined;
  const kinds = rested.flatMap(({ condition }) => (condition.kind === 'reading' ? condition.reading : []));
  const known = new Set(kinds.flatMap((kind) => facts.readings(kind).map(({ id }) => id)));
  const gone = kinds.length > 0 && readingIds.some((id) => !known.has(id));
  return gone ? 'A reading that it rested on was taken back' : undefined;
}

/** What is open of the things that a pass goes on resting on. */
function lastingOpen(
  stage: Stage,
  conditions: readonly StageCondition[],
  facts: StageFacts,
): readonly Finding[] {
  return conditions.flatMap((condition) => {
    const before =
      condition.condition.kind === 'jobs' ? facts.stages.filter(({ rank }) => rank < stage.rank) : [];
    return [...before, stage]
      .flatMap((one) => findingsOf(condition, one, facts))
      .filter(({ lasting, state }) => lasting && state === 'open');
  });
}
