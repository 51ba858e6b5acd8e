import type { Day } from '../../core/time.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Stage } from './stage.ts';
import { standingPass } from './stage.ts';
import { stageFacts } from './stage-facts.ts';
import { standingOf } from './standing.ts';

/**
 * Marks every pass as reopened that no longer rests on what it rested on, and lets what people said at that stage lapse. Called
 * at the end of every change, so that the mark comes and goes with the change that caused it.
 *
 * @returns the stages that were reopened, each with why.
 */
export function reopenWhatChanged(
  record: TeamRecord,
  buildId: number,
  today: Day,
): readonly { readonly stage: Stage; readonly why: string }[] {
  if (!record.stages.anyStanding(buildId)) return [];
  const facts = stageFacts(record, buildId, today);
  const reopened = facts.stages.flatMap((stage) => {
    const pass = standingPass(stage);
    const standing = standingOf(stage, facts);
    return pass !== undefined && standing.kind === 'reopened' ? [{ stage, pass, why: standing.why }] : [];
  });
  for (const { stage, pass, why } of reopened) {
    record.stages.reopen(pass.id, { on: today, by: why });
    for (const { id, condition } of stage.conditions)
      if (condition.kind === 'said') record.stages.lapse(buildId, id, why);
  }
  return reopened;
}
