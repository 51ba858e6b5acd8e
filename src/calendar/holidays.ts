import { createRequire } from 'node:module';
import type Holidays from 'date-holidays';
import { addDays, type Day } from '../core/time.ts';
import { UserError } from '../core/user-error.ts';

/** Public holidays of one year: day to name. */
export type HolidayYear = ReadonlyMap<Day, string>;

const load = createRequire(import.meta.url);
let library: typeof Holidays | undefined;

/** The holiday tables take some 110 ms and 40 MB to load, so they are fetched when a country is first asked about. */
function holidayLibrary(): typeof Holidays {
  // A CommonJS load carries no types; the package's own declarations describe what it hands out.
  library ??= load('date-holidays') as typeof Holidays;
  return library;
}

const lists = new Map<string, Holidays>();
const years = new Map<string, HolidayYear>();

/** Whether the tables know `GB`, `GB/ENG`, `DE/BY`: a country, its state and the state's region, parted by slashes. */
export function isCountry(code: string): boolean {
  const [country = '', state, region, ...rest] = code.split('/');
  const tables = new (holidayLibrary())();
  if (rest.length > 0 || !Object.hasOwn(tables.getCountries(), country)) return false;
  if (state === undefined) return true;
  if (!Object.hasOwn(tables.getStates(country) ?? {}, state)) return false;
  return region === undefined || Object.hasOwn(tables.getRegions(country, state) ?? {}, region);
}

/**
 * Public holidays of `code` in `year`: the days themselves and their substitutes, weekend days included.
 *
 * Source: date-holidays 3.37.0, type `public`. Plain `GB` lacks the August bank holiday; use `GB/ENG` and so on.
 * @throws UserError 'bad-input' when the tables do not know the country.
 */
export function publicHolidays(code: string, year: number): HolidayYear {
  const key = `${code} ${year}`;
  const known = years.get(key);
  if (known !== undefined) return known;
  const found = new Map<Day, string>();
  for (const holiday of listFor(code).getHolidays(year)) {
    if (holiday.type !== 'public') continue;
    for (const day of daysOf(holiday.date, holiday.end.getTime() - holiday.start.getTime())) {
      found.set(day, holiday.name);
    }
  }
  years.set(key, found);
  return found;
}

function listFor(code: string): Holidays {
  const known = lists.get(code);
  if (known !== undefined) return known;
  if (!isCountry(code)) {
    throw new UserError(
      'bad-input',
      `There is no holiday list for "${code}". Type a country, and its part where it has one: GB/ENG, US, DE/BY.`,
    );
  }
  const [country = '', ...parts] = code.split('/');
  const list = new (holidayLibrary())({ country, ...named(parts) });
  lists.set(code, list);
  return list;
}

function named([state, region]: readonly string[]): { state?: string; region?: string } {
  if (state === undefined) return {};
  return region === undefined ? { state } : { state, region };
}

const HOUR_MS = 3_600_000;

/**
 * The days of which a holiday takes at least half. Only the library's local text is read for the day, since its
 * instants would have to be brought back into a zone and the process's own is the wrong one.
 */
function daysOf(localStart: string, lengthMs: number): readonly Day[] {
  const first = localStart.slice(0, 10);
  const startHour = Number(localStart.slice(11, 13));
  const endHour = startHour + lengthMs / HOUR_MS;
  const days: Day[] = [];
  for (let index = 0; index * 24 < endHour; index++) {
    const covered = Math.min(24, endHour - index * 24) - Math.max(0, startHour - index * 24);
    if (covered >= 12) days.push(addDays(first, index));
  }
  return days;
}
