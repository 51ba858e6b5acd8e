import type { Wait } from '../../calc/lateness/lateness.ts';
import type { Day } from '../../core/time.ts';
import type { WorkingDays } from '../../core/working-days.ts';

/** The latest days on which to order, so that something is there on the day it is needed. */
export interface OrderBy {
  /** With the supplier's usual time from order to door. */
  readonly latestOn: Day;
  /** Nine times in ten it is there even so: the supplier's lateness is allowed for. */
  readonly safeOn: Day;
}

/**
 * Counts back from the day something is needed: the supplier's time in its working days, and for the safe day the days by
 * which nine of ten of its orders have come.
 *
 * @param leadDays from order to door, in working days of `days`
 */
export function orderBy(neededOn: Day, days: WorkingDays, leadDays: number, wait: Wait): OrderBy {
  // nothing comes on a day nobody works: what is needed on a Saturday has to be there on the Friday
  const thereOn = days.isWorkingDay(neededOn) ? neededOn : days.add(neededOn, -1);
  return {
    latestOn: days.add(thereOn, -leadDays),
    safeOn: days.add(thereOn, -(leadDays + Math.max(wait.latestDays, Math.round(wait.meanDays)))),
  };
}
