import type { Day } from '../core/time.ts';
import { UserError } from '../core/user-error.ts';
import type { Closure, WorkingDays } from '../core/working-days.ts';
import { dayNumber, dayOfNumber } from './day-number.ts';
import { publicHolidays } from './holidays.ts';
import { openDays } from './open-days.ts';

/** No delivery time and no shutdown is this long; what asks for more is a slip, and would walk the calendar for ever. */
const LONGEST_WALK_DAYS = 4_000;

/**
 * Working days of a country (`GB/ENG`, `US`, `DE/BY`; null for weekends only), less a supplier's own closures.
 *
 * Saturday and Sunday are taken for the weekend everywhere; countries that rest on other days are not modelled.
 * @throws UserError 'bad-input' when the country has no holiday list (on first use of a day of it).
 */
export function workingDays(country: string | null, closures: readonly Closure[] = []): WorkingDays {
  const worked = openDays(country, closures);

  function holidayName(day: Day): string | undefined {
    const closure = closures.find(({ from, to }) => from <= day && day <= to);
    if (closure !== undefined) return closure.reason;
    return country === null ? undefined : publicHolidays(country, Number(day.slice(0, 4))).get(day);
  }

  function add(day: Day, n: number): Day {
    if (!Number.isInteger(n)) throw new RangeError(`working days are whole: ${n}`);
    const step = Math.sign(n);
    let at = dayNumber(day);
    let left = Math.abs(n);
    for (let walked = 0; left > 0; walked++) {
      if (walked >= LONGEST_WALK_DAYS) {
        throw new UserError(
          'out-of-range',
          `${n} working days from ${day} is too far off. Type a date instead.`,
        );
      }
      at += step;
      if (worked.isOpen(at)) left--;
    }
    return n === 0 ? day : dayOfNumber(at);
  }

  function between(from: Day, to: Day): number {
    const [start, end] = [dayNumber(from), dayNumber(to)];
    if (to < from) return 0 - worked.count(end, start);
    return worked.count(start + 1, end + 1);
  }

  return {
    knowsHolidays: country !== null,
    isWorkingDay: (day) => worked.isOpen(dayNumber(day)),
    holidayName,
    add,
    between,
  };
}
