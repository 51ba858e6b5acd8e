import { describe, expect, it } from 'vitest';
import cases from '../../data/reference/calendar.json' with { type: 'json' };
import { publicHolidays } from '../../src/calendar/holidays.ts';
import { workingDays } from '../../src/calendar/working-days.ts';
import { easterSunday } from '../../src/phrases/dates/feasts.ts';

interface Case {
  readonly id: string;
  readonly kind: string;
  readonly country: string;
  readonly source: string;
  readonly year?: number;
  readonly dates?: readonly string[];
  readonly date?: string;
  readonly holiday?: boolean;
  readonly workingDays?: number;
  readonly from?: string;
  readonly to?: string;
}

describe('bank holidays and their substitutes in England and Wales', () => {
  /** Source: the UK government's published list of bank holidays (gov.uk/bank-holidays). */
  it.each([
    ['2026-12-28', 'Boxing Day'],
    ['2027-12-27', 'Christmas Day'],
    ['2027-12-28', 'Boxing Day'],
    ['2028-01-03', "New Year's Day"],
  ])('%s stands in for %s', (day, name) => {
    expect(workingDays('GB/ENG').holidayName(day)).toContain(name);
    expect(workingDays('GB/ENG').isWorkingDay(day)).toBe(false);
  });

  /** Source: Banking and Financial Dealings Act 1971, schedule 1: last Mondays of May and August, Easter Monday. */
  it.each(['2025-08-25', '2026-08-31', '2027-08-30', '2028-08-28', '2026-05-25', '2027-05-31', '2027-03-29'])(
    'the bank is shut on Monday %s',
    (day) => {
      expect(workingDays('GB/ENG').isWorkingDay(day)).toBe(false);
    },
  );
});

describe('federal holidays of the United States', () => {
  /** Source: 5 U.S.C. 6103(a), (b): a holiday on a Saturday is kept on the Friday before it. */
  it.each(['2026-07-03', '2027-06-18', '2027-12-24', '2027-12-31', '2026-11-26', '2027-10-11', '2027-01-18'])(
    '%s is kept',
    (day) => {
      expect(workingDays('US').isWorkingDay(day)).toBe(false);
    },
  );

  /** Source: 5 U.S.C. 6103(b): Veterans Day on Saturday 11 November 2028 is kept on the 10th; the library leaves it out. */
  it.fails('2028-11-10 is kept', () => {
    expect(workingDays('US').isWorkingDay('2028-11-10')).toBe(false);
  });
});

describe('Easter Sunday', () => {
  /** Source: published tables of Easter dates (Western churches); from memory. */
  it.each([
    [1961, '1961-04-02'],
    [2000, '2000-04-23'],
    [2008, '2008-03-23'],
    [2011, '2011-04-24'],
    [2019, '2019-04-21'],
    [2025, '2025-04-20'],
    [2026, '2026-04-05'],
    [2027, '2027-03-28'],
    [2028, '2028-04-16'],
    [2038, '2038-04-25'],
  ])('%i falls on %s', (year, day) => {
    expect(easterSunday(year).toString()).toBe(day);
  });

  /** Source: date-holidays 3.37.0 (an independent reckoning): Good Friday and Easter Monday of Germany. */
  it('lies between Karfreitag and Ostermontag in every year from 1970 to 2099', () => {
    for (let year = 1970; year < 2100; year++) {
      const easter = easterSunday(year);
      const kept = publicHolidays('DE', year);
      expect(kept.get(easter.subtract({ days: 2 }).toString()), String(year)).toBe('Karfreitag');
      expect(kept.get(easter.add({ days: 1 }).toString()), String(year)).toBe('Ostermontag');
    }
  });
});

describe('the working calendar agrees with worked cases', () => {
  const all: readonly Case[] = cases;

  it('has cases of every kind', () => {
    expect(new Set(all.map(({ kind }) => kind)).size).toBe(6);
  });

  it.each(all.map((row) => ({ ...row, what: `${row.id} ${row.kind} ${row.country}` })))(
    '$what ($source)',
    (row) => {
      const days = workingDays(row.country);
      switch (row.kind) {
        case 'list':
          expect([...publicHolidays(row.country, row.year ?? 0).keys()].sort()).toEqual(row.dates);
          break;
        case 'is-holiday':
          expect(days.holidayName(row.date ?? '') !== undefined).toBe(row.holiday);
          break;
        case 'library-disagreement':
          expect(days.holidayName(row.date ?? '')).toBeDefined();
          break;
        case 'add-working-days':
        case 'subtract-working-days':
          expect(days.add(...startOf(row))).toBe(row.date);
          break;
        case 'count-working-days':
          expect(days.between(row.from ?? '', row.to ?? '')).toBe(row.workingDays);
          break;
        default:
          throw new Error(`no check for ${row.kind}`);
      }
    },
  );
});

/** The start and the signed count of a case in which both were given as "start". */
function startOf(row: Case): [string, number] {
  const sign = row.kind === 'subtract-working-days' ? -1 : 1;
  return [row.from ?? '', sign * (row.workingDays ?? 0)];
}
