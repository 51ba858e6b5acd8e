import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { workingDays } from '../../src/calendar/working-days.ts';
import { MOST_STEPS, readDate, readDateMetered } from '../../src/phrases/dates/dates.ts';
import type { DateContext } from '../../src/phrases/dates/reading.ts';

const settings = {
  seed: Number(process.env['FC_SEED'] ?? 20261124),
  numRuns: Number(process.env['FC_RUNS'] ?? 300),
};

const LONG = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

const locale = fc.constantFrom('en-GB', 'en-US', 'de', null);
const direction = fc.constantFrom('future' as const, 'past' as const, 'any' as const);
/** Minutes from the start of 2024: four years hold every kind of month, week and leap day. */
const now = fc
  .integer({ min: 0, max: 4 * 366 * 1440 })
  .map((minutes) => Temporal.PlainDateTime.from('2024-01-01T00:00').add({ minutes }));
const context: fc.Arbitrary<DateContext> = fc
  .record({ now, locale, direction, country: fc.constantFrom('GB/ENG', null) })
  .map(({ country, ...rest }) => ({ ...rest, zone: 'Europe/London', workingDays: workingDays(country) }));
const future = context.map((any): DateContext => ({ ...any, direction: 'future' }));

/** Words of the trade's dates in any order: most are nonsense, and nonsense must be safe too. */
const salad = fc
  .array(
    fc.constantFrom(
      'friday',
      'mon',
      'next',
      'last',
      'this',
      'week',
      'weeks',
      'in',
      'on',
      'the',
      'of',
      'a',
      '2',
      '12',
      '15th',
      'dec',
      'may',
      'tomorrow',
      'morgen',
      'heute',
      'am',
      'pm',
      'half',
      'past',
      'end',
      'month',
      'before',
      'after',
      'christmas',
      'by',
      'bis',
      'or',
      'to',
      '-',
      '/',
      '5.12',
      '3/4',
      '2026-12-01',
      '8:30',
      '0830',
      'uhr',
      'ago',
      'vor',
      'from',
      'working',
      'days',
      'tagen',
      'kw',
      'early',
      'evening',
      'noon',
      'year',
      '2027',
      'first',
      'day',
      'halb',
      'acht',
      'freitag',
    ),
    { maxLength: 9 },
  )
  .map((words) => words.join(' '));
const anything = fc.oneof(
  salad,
  fc.string({ maxLength: 120 }),
  fc.string({ unit: 'binary', maxLength: 120 }),
);

describe('reading dates', () => {
  it('reads every day printed as ISO 8601 back', () => {
    fc.assert(
      fc.property(now, fc.integer({ min: 0, max: 700 }), locale, (at, days, where) => {
        const day = at.toPlainDate().add({ days }).toString();
        const reading = readDate(day, {
          now: at,
          zone: 'UTC',
          locale: where,
          direction: 'future',
          workingDays: workingDays(null),
        });
        expect(reading).toEqual({ verdict: 'read', day });
      }),
      settings,
    );
  });

  it('reads a day with its month in words back, with the year and, within nine months, without', () => {
    fc.assert(
      fc.property(now, fc.integer({ min: 0, max: 270 }), locale, (at, days, where) => {
        const date = at.toPlainDate().add({ days });
        const month = LONG[date.month - 1] ?? '';
        const plain: DateContext = {
          now: at,
          zone: 'UTC',
          locale: where,
          direction: 'future',
          workingDays: workingDays(null),
        };
        const wanted = { verdict: 'read', day: date.toString() };
        expect(readDate(`${date.day} ${month} ${date.year}`, plain)).toEqual(wanted);
        expect(readDate(`${date.day} ${month.slice(0, 3)}`, plain)).toEqual(wanted);
        expect(readDate(`${month} ${date.day}`, plain)).toEqual(wanted);
      }),
      settings,
    );
  });

  it('never throws, stays within its work, and gives only real days', () => {
    fc.assert(
      fc.property(anything, context, (text, where) => {
        const meter = { steps: 0, limit: MOST_STEPS };
        const reading = readDateMetered(text, where, meter);
        expect(meter.steps).toBeLessThan(MOST_STEPS);
        if (reading.verdict === 'read')
          expect(Temporal.PlainDate.from(reading.day).toString()).toBe(reading.day);
        if (reading.verdict === 'ask') {
          for (const { day } of reading.options) expect(Temporal.PlainDate.from(day).toString()).toBe(day);
        }
      }),
      { ...settings, numRuns: settings.numRuns * 10 },
    );
  });

  it('never reads a day or time that has gone where a coming one is wanted', () => {
    fc.assert(
      fc.property(anything, future, (text, where) => {
        const reading = readDate(text, where);
        if (reading.verdict !== 'read') return;
        expect(reading.day >= where.now.toPlainDate().toString()).toBe(true);
        const nowMs = where.now.toZonedDateTime(where.zone).epochMilliseconds;
        if (reading.instantMs !== undefined) expect(reading.instantMs).toBeGreaterThan(nowMs - 60_000);
      }),
      { ...settings, numRuns: settings.numRuns * 10 },
    );
  });
});
