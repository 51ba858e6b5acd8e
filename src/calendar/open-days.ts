import type { Closure } from '../core/working-days.ts';
import { dayNumber, dayOfNumber, isWeekend, yearStart } from './day-number.ts';
import { publicHolidays } from './holidays.ts';

/** The days of one year on which work is done, and how many of them came before each. */
interface OpenYear {
  readonly first: number;
  readonly length: number;
  readonly open: Uint8Array;
  readonly before: Uint16Array;
}

/** Which days are worked, by day number (`day-number.ts`). */
export interface OpenDays {
  isOpen(number: number): boolean;
  /** Working days from `start` up to but without `end`. */
  count(start: number, end: number): number;
}

const shared = new Map<string, OpenDays>();

/** Working days of a country less closures; without closures one table serves everybody who asks. */
export function openDays(country: string | null, closures: readonly Closure[]): OpenDays {
  if (closures.length > 0) return tables((year) => without(closures, countryYear(country, year)));
  const key = country ?? '';
  const known = shared.get(key);
  if (known !== undefined) return known;
  const made = tables((year) => counted(countryYear(country, year)));
  shared.set(key, made);
  return made;
}

function tables(make: (year: number) => OpenYear): OpenDays {
  const years = new Map<number, OpenYear>();
  let last: OpenYear | undefined;
  const yearAt = (number: number): OpenYear => {
    if (last !== undefined && number >= last.first && number < last.first + last.length) return last;
    const year = Number(dayOfNumber(number).slice(0, 4));
    const table = years.get(year) ?? make(year);
    years.set(year, table);
    last = table;
    return table;
  };
  return {
    isOpen(number) {
      const year = yearAt(number);
      return year.open[number - year.first] === 1;
    },
    count(start, end) {
      let total = 0;
      for (let at = start; at < end; ) {
        const { first, length, before } = yearAt(at);
        const stop = Math.min(end, first + length);
        total += (before[stop - first] ?? 0) - (before[at - first] ?? 0);
        at = stop;
      }
      return total;
    },
  };
}

function countryYear(country: string | null, year: number): { first: number; open: Uint8Array } {
  const first = yearStart(year);
  const open = new Uint8Array(yearStart(year + 1) - first);
  for (let index = 0; index < open.length; index++) open[index] = isWeekend(first + index) ? 0 : 1;
  if (country !== null)
    for (const day of publicHolidays(country, year).keys()) shut(open, dayNumber(day) - first);
  return { first, open };
}

function without(
  closures: readonly Closure[],
  { first, open }: { first: number; open: Uint8Array },
): OpenYear {
  for (const { from, to } of closures) {
    const end = Math.min(dayNumber(to) - first, open.length - 1);
    for (let index = Math.max(dayNumber(from) - first, 0); index <= end; index++) open[index] = 0;
  }
  return counted({ first, open });
}

/** A holiday that a year's list carries over from its neighbour lies outside the table. */
function shut(open: Uint8Array, index: number): void {
  if (index >= 0 && index < open.length) open[index] = 0;
}

function counted({ first, open }: { first: number; open: Uint8Array }): OpenYear {
  const before = new Uint16Array(open.length + 1);
  for (let index = 0; index < open.length; index++)
    before[index + 1] = (before[index] ?? 0) + (open[index] ?? 0);
  return { first, length: open.length, open, before };
}
