import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { workingDays } from '../../src/calendar/working-days.ts';
import { dayAt, instantOf, wallTime } from '../../src/core/time.ts';
import type { Order } from '../../src/records/orders/order.ts';
import { dueMorning } from '../../src/reminders/morning.ts';
import { anArrival, anOrder } from '../support/record.ts';

const parameters = {
  numRuns: Number(process.env['FC_RUNS'] ?? 20),
  seed: Number(process.env['FC_SEED'] ?? 20261124),
};

const HOUR = 3_600_000;
const TEN_YEARS = 10 * 365 * 24 * HOUR;
const START = Date.UTC(2026, 0, 1);

/** Zones with half hours, with gaps at midnight, on both sides of the date line, and one that never changes. */
const PLACES = [
  ['Europe/London', 'GB/ENG'],
  ['America/New_York', 'US'],
  ['Europe/Berlin', 'DE/BY'],
  ['Australia/Lord_Howe', 'AU/NSW'],
  ['America/Santiago', 'CL'],
  ['Africa/Cairo', 'EG'],
  ['Pacific/Apia', 'NZ'],
  ['Pacific/Chatham', 'NZ'],
  ['Asia/Kolkata', 'IN'],
  ['Etc/UTC', 'GB'],
] as const;

const order = fc
  .record({
    promised: fc.integer({ min: 0, max: 3_650 }),
    arrives: fc.option(fc.constantFrom('good', 'wrong'), { nil: null }),
    cancelled: fc.boolean(),
  })
  .map(({ promised, arrives, cancelled }) =>
    anOrder({
      promisedOn: Temporal.PlainDate.from('2026-01-01').add({ days: promised }).toString(),
      cancelled,
      arrivals: arrives === null ? [] : [anArrival({ condition: arrives })],
    }),
  );

const story = fc.record({
  place: fc.constantFrom(...PLACES),
  morning: fc.constantFrom('00:00', '02:30', '06:00', '08:30', '19:30'),
  orders: fc.array(order, { maxLength: 5 }),
  /** Stretches of sleep and of steps in an uneven rhythm, some of them backwards. */
  steps: fc.array(
    fc.oneof(
      { weight: 9, arbitrary: fc.integer({ min: 1, max: 40 * HOUR }) },
      { weight: 1, arbitrary: fc.integer({ min: -3 * HOUR, max: 0 }) },
    ),
    {
      minLength: 50,
      maxLength: 400,
    },
  ),
});

/** The days on which a message was decided when the machine looked at these instants. */
function decided(
  {
    place: [zone, country],
    morning,
    orders,
  }: { place: (typeof PLACES)[number]; morning: string; orders: readonly Order[] },
  instants: Iterable<number>,
): readonly string[] {
  const days = workingDays(country);
  const sent: string[] = [];
  for (const nowMs of instants) {
    const build = { id: 1, channelId: '600', name: 'Coupe', lastMorning: sent.at(-1) ?? null };
    const due = dueMorning(build, orders, { zone, country, morning }, days, nowMs);
    if (due) sent.push(due.notice.day);
  }
  return sent;
}

function* atRandom(steps: readonly number[]): Generator<number> {
  let at = START;
  for (let index = 0; at < START + TEN_YEARS; index++) {
    yield at;
    at += steps[index % steps.length] ?? HOUR;
    if (index > 20_000) return;
  }
}

describe('over ten years in any zone', () => {
  it('a build gets at most one morning message a day, on working days, between morning and evening', () => {
    let messages = 0;
    fc.assert(
      fc.property(story, (given) => {
        const sent = decided(given, atRandom(given.steps));
        messages += sent.length;
        expect(new Set(sent).size).toBe(sent.length);
        expect(sent.toSorted()).toEqual(sent);
        const days = workingDays(given.place[1]);
        for (const day of sent) expect(days.isWorkingDay(day)).toBe(true);
      }),
      parameters,
    );
    expect(messages).toBeGreaterThan(0);
  });

  it.each(PLACES)(
    'something late in %s is said on every working day of a year exactly once',
    (zone, country) => {
      const late = anOrder({ promisedOn: '2025-12-01' });
      const quarters = Array.from({ length: 366 * 96 }, (_, index) => START + (index * HOUR) / 4);
      const sent = decided(
        { place: [zone, country] as (typeof PLACES)[number], morning: '08:30', orders: [late] },
        quarters,
      );
      const calendar = workingDays(country);
      const last = dayAt(quarters.at(-1) ?? START, zone);
      const wanted: string[] = [];
      for (let day = dayAt(START, zone); day < last; day = calendar.add(day, 1)) {
        if (!calendar.isWorkingDay(day)) continue;
        // the first day may have begun, for the zone, before we looked
        if (instantOf(day, '20:00', zone) > START) wanted.push(day);
      }
      expect(sent.filter((day) => day < last)).toEqual(wanted.filter((day) => day < last));
    },
  );

  it.each(PLACES)(
    'is said in %s at the morning time to the quarter hour, on the nights the clocks change too',
    (zone, country) => {
      const late = anOrder({ promisedOn: '2025-12-01' });
      for (const day of [
        '2026-03-30',
        '2026-04-06',
        '2026-09-07',
        '2026-10-05',
        '2026-10-26',
        '2026-11-02',
        '2026-04-27',
      ]) {
        if (!workingDays(country).isWorkingDay(day)) continue;
        const start = instantOf(day, '00:00', zone);
        const quarters = Array.from({ length: 96 }, (_, index) => start + (index * HOUR) / 4);
        const build = { id: 1, channelId: '600', name: 'Coupe', lastMorning: null };
        const first = quarters.find((nowMs) =>
          dueMorning(build, [late], { zone, country, morning: '08:30' }, workingDays(country), nowMs),
        );
        expect(wallTime(first ?? 0, zone).toString()).toBe(`${day}T08:30:00`);
      }
    },
  );
});
