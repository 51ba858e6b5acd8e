import type { Day } from './time.ts';

/**
 * Counts the days on which a supplier works. The order day is day 0: one working day after a Friday is the Monday.
 *
 * Weekends are Saturday and Sunday everywhere, also where a country rests on other days.
 */
export interface WorkingDays {
  /** False when no country is known: only weekends and closures are skipped, and the answer should say so. */
  readonly knowsHolidays: boolean;
  isWorkingDay(day: Day): boolean;
  /** The public holiday or closure on that day; undefined on any other day, a plain weekend included. */
  holidayName(day: Day): string | undefined;
  /** The nth working day after `day`, before it when `n` is negative, `day` itself when `n` is 0. */
  add(day: Day, n: number): Day;
  /** Working days after `from` up to and including `to`; for an earlier `to`, minus those from `to` up to before `from`. */
  between(from: Day, to: Day): number;
}

/** Days on which a supplier is shut over and above weekends and holidays; both ends are shut. */
export interface Closure {
  readonly from: Day;
  readonly to: Day;
  readonly reason: string;
}
