import { UserError } from '../../core/user-error.ts';

/** Ten years: past that something is wrong with what was entered. */
const MOST_DAYS = 3_660;

/**
 * A crew's working time: minutes of work counted on from today, however many evenings apart, and the days they fall on.
 * Days are counted from today as 0.
 */
export interface WorkingTime {
  /** Minutes of work before this day begins. */
  minuteBefore(day: number): number;
  /** The day on which this minute of work has been worked; today for none. */
  dayWorked(minute: number): number;
  /** The day on which the work after this minute begins. */
  dayAfter(minute: number): number;
}

/**
 * @param minutesOn how long the crew works on a day, in minutes.
 * @throws UserError 'out-of-range' from its members when the work does not end within ten years.
 */
export function workingTime(minutesOn: (day: number) => number): WorkingTime {
  const before = [0];
  const minuteBefore = (day: number): number => {
    for (let last = before.length - 1; last < day; last += 1) {
      if (last > MOST_DAYS) throw tooFar();
      before.push((before[last] ?? 0) + minutesOn(last));
    }
    return before[day] ?? 0;
  };
  /** The first day before which more than this much has been worked, or as much when `whole`. */
  const firstPast = (minute: number, whole: boolean): number => {
    while ((before.at(-1) ?? 0) < minute || (!whole && (before.at(-1) ?? 0) <= minute)) {
      minuteBefore(before.length);
    }
    let [low, high] = [0, before.length - 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      const worked = before[middle] ?? 0;
      if (worked > minute || (whole && worked === minute)) high = middle;
      else low = middle + 1;
    }
    return low;
  };
  return {
    minuteBefore,
    dayWorked: (minute) => Math.max(0, firstPast(minute - 1e-6, true) - 1),
    dayAfter: (minute) => Math.max(0, firstPast(minute + 1e-6, false) - 1),
  };
}

const tooFar = (): UserError =>
  new UserError(
    'out-of-range',
    'With these evenings the work does not end within ten years. Nothing was changed. /when evenings says when you work.',
  );
