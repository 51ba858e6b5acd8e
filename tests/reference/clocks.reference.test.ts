import { describe, expect, it } from 'vitest';
import calendar from '../../data/reference/calendar.json' with { type: 'json' };
import cases from '../../data/reference/days-and-clocks.json' with { type: 'json' };
import { workingDays } from '../../src/calendar/working-days.ts';
import { addDays, instantOf, wallTime } from '../../src/core/time.ts';
import { readDate } from '../../src/phrases/dates/dates.ts';
import { orderBy } from '../../src/records/suppliers/order-by.ts';
import { daysOf } from '../../src/records/suppliers/supplier-days.ts';

interface Case {
  readonly id: string;
  readonly kind: string;
  readonly source: string;
  readonly zone?: string;
  readonly zones?: readonly string[];
  readonly date?: string;
  readonly local?: string;
  readonly utc?: string;
  readonly hours?: number;
  readonly shifted?: string;
  readonly in24h?: string;
  readonly tomorrow?: string;
  readonly days?: number;
  readonly months?: number;
  readonly to?: string;
  readonly week?: string;
}

const HOUR_MS = 3_600_000;
const all: readonly Case[] = cases;

const wall = (ms: number, zone: string): string => wallTime(ms, zone).toString({ smallestUnit: 'minute' });

function instant(local: string, zone: string): number {
  const [day = '', time = ''] = local.split('T');
  return instantOf(day, time, zone);
}

const utc = (text: string): number => Temporal.Instant.from(text).epochMilliseconds;

/** The day read from a phrase, said at noon of a day in London. */
function read(typed: string, day: string, direction: 'future' | 'past' = 'future'): string {
  const now = Temporal.PlainDate.from(day).toPlainDateTime('12:00');
  const context = {
    now,
    zone: 'Europe/London',
    locale: 'en-GB',
    direction,
    workingDays: workingDays(null),
  } as const;
  const reading = readDate(typed, context);
  return reading.verdict === 'read' ? reading.day : reading.verdict;
}

describe('clocks and days agree with worked cases', () => {
  it('has cases of every kind', () => {
    expect(new Set(all.map(({ kind }) => kind)).size).toBe(8);
  });

  it.each(all.map((row) => ({ ...row, what: `${row.id} ${row.kind}` })))('$what ($source)', (row) => {
    const { zone = '', date = '', local = '' } = row;
    switch (row.kind) {
      case 'day-length':
        expect((instantOf(addDays(date, 1), '00:00', zone) - instantOf(date, '00:00', zone)) / HOUR_MS).toBe(
          row.hours,
        );
        break;
      case 'instant':
        expect(instant(local, zone)).toBe(utc(row.utc ?? ''));
        expect(wall(utc(row.utc ?? ''), zone)).toBe(local);
        break;
      case 'skipped':
        expect(instant(local, zone)).toBe(utc(row.utc ?? ''));
        expect(wall(instant(local, zone), zone)).toBe(row.shifted);
        break;
      case 'apart': {
        const [here = '', there = ''] = row.zones ?? [];
        const apart = wallTime(utc(row.utc ?? ''), there).until(wallTime(utc(row.utc ?? ''), here));
        expect(apart.total({ unit: 'hours' })).toBe(row.hours);
        break;
      }
      case 'tomorrow': {
        const [day = '', time = ''] = local.split('T');
        expect(wall(instant(local, zone) + 24 * HOUR_MS, zone)).toBe(row.in24h);
        expect(instantOf(addDays(day, 1), time, zone)).toBe(utc(row.utc ?? ''));
        expect(`${addDays(day, 1)}T${time}`).toBe(row.tomorrow);
        break;
      }
      case 'add-days':
        expect(addDays(date, row.days ?? 0)).toBe(row.to);
        break;
      case 'add-months':
        expect(read(`in ${row.months} ${row.months === 1 ? 'month' : 'months'}`, date)).toBe(row.to);
        break;
      case 'iso-week':
        // something promised for a week is due on its Friday
        expect(read(row.week ?? '', addDays(date, -30))).toBe(addDays(mondayOf(date), 4));
        break;
      default:
        throw new Error(`no check for ${row.kind}`);
    }
  });
});

const mondayOf = (day: string): string => addDays(day, 1 - Temporal.PlainDate.from(day).dayOfWeek);

/** The cases of calendar.json once more, through what the crew asks: a supplier's working days, and by when to order. */
describe('a supplier’s working days agree with worked cases', () => {
  const NO_LATENESS = { meanDays: 0, latestDays: 0 };
  const supplier = (country: string) =>
    daysOf({ id: 1, name: 'Norvale', country, leadDays: null, note: null, shutdowns: [] }, 'GB/ENG');
  const timed: readonly {
    id: string;
    kind: string;
    country: string;
    from?: string;
    date?: string;
    workingDays?: number;
  }[] = calendar;
  const latest = timed.filter(({ kind }) => kind === 'subtract-working-days');
  const promised = timed.filter(({ kind }) => kind === 'add-working-days');

  it('has cases', () => {
    expect([latest.length, promised.length]).toEqual([3, 15]);
  });

  it.each(latest)('$id: order by', ({ country, from = '', workingDays: lead = 0, date }) => {
    const { latestOn, safeOn } = orderBy(from, supplier(country), lead, NO_LATENESS);
    expect(latestOn).toBe(date);
    expect(safeOn).toBe(date);
    expect(orderBy(from, supplier(country), 0, { meanDays: 0.4, latestDays: lead }).safeOn).toBe(date);
  });

  it.each(promised)('$id: promised', ({ country, from = '', workingDays: lead = 0, date }) => {
    expect(supplier(country).add(from, lead)).toBe(date);
  });
});
