import { type Day, sayDay } from '../../core/time.ts';
import type { TeamRecord } from '../team-record.ts';
import type { StepStanding } from './progress.ts';
import type { RunInPlan } from './run-in.ts';

/** What crews call the case of the engine's oil. */
const ENGINE_OIL = /\b(?:sump|engine|oil|crankcase|dry[ -]sump|motor)\b/iu;
const OIL_CHANGE = /\boil\b.*\bchange\b|\bchange\b.*\boil\b/iu;

/**
 * An engine-oil drain of the record that may have been one of the plan's oil changes: asked about, never taken for it. Only a drain
 * since the first start that came after the last oil change noted.
 */
export function drainProposal(
  record: TeamRecord,
  standings: readonly StepStanding[],
  { buildId, startedOn }: RunInPlan,
  today: Day,
): string | undefined {
  const changes = standings.filter(
    ({ step }) => OIL_CHANGE.test(step.what) && !/gearbox|differential/iu.test(step.what),
  );
  const open = changes.find(({ state }) => state === 'due' || state === 'soon');
  if (open === undefined) return undefined;
  const lastNoted =
    changes
      .flatMap(({ step }) => step.doneOn ?? [])
      .toSorted()
      .at(-1) ?? startedOn;
  const drain = record.fluids
    .casesOf(buildId)
    .filter(({ name }) => ENGINE_OIL.test(name) && !/gear|diff|box/iu.test(name))
    .flatMap(({ id, name }) => record.fluids.movesOf(id).map((move) => ({ ...move, name })))
    .filter(
      ({ kind, inAfterL, movedOn }) =>
        kind === 'drained' && inAfterL === 0 && movedOn >= lastNoted && movedOn >= startedOn,
    )
    .at(-1);
  if (drain === undefined) return undefined;
  return `${drain.name} on ${sayDay(drain.movedOn, today)} by ${drain.byName}. If that was “${open.step.what}”, press Done.`;
}
