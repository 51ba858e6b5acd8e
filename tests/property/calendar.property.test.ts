import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber, dayOfNumber, isWeekend } from '../../src/calendar/day-number.ts';
import { publicHolidays } from '../../src/calendar/holidays.ts';
import { workingDays } from '../../src/calendar/working-days.ts';
import type { Closure } from '../../src/core/working-days.ts';
import { check } from '../support/laws.ts';

const FIRST = Temporal.PlainDate.from('2024-01-01');
const dayAt = (offset: number): string => FIRST.add({ days: offset }).toString();
const day = fc.integer({ min: 0, max: 2_000 }).map(dayAt);
const country = fc.constantFrom('GB/ENG', 'DE', 'DE/BY', 'US', 'FR', 'JP', null);
const closures: fc.Arbitrary<readonly Closure[]> = fc.array(
  fc
    .tuple(fc.integer({ min: 0, max: 2_000 }), fc.integer({ min: 0, max: 30 }))
    .map(([from, length]) => ({ from: dayAt(from), to: dayAt(from + length), reason: 'shut' })),
  { maxLength: 3 },
);
const n = fc.integer({ min: -60, max: 60 });

/** Day by day, by the platform's own calendar: slow and plain. */
function isWorked(on: string, land: string | null, shut: readonly Closure[]): boolean {
  if (Temporal.PlainDate.from(on).dayOfWeek > 5) return false;
  if (shut.some(({ from, to }) => from <= on && on <= to)) return false;
  return land === null || !publicHolidays(land, Number(on.slice(0, 4))).has(on);
}

describe('working days', () => {
  it('are those the plain calendar has', () => {
    check([day, country, closures], (on, land, shut) => {
      expect(workingDays(land, shut).isWorkingDay(on)).toBe(isWorked(on, land, shut));
    });
  });

  it('are counted as they are walked', () => {
    check([day, fc.integer({ min: 0, max: 120 }), country, closures], (from, length, land, shut) => {
      const to = Temporal.PlainDate.from(from).add({ days: length }).toString();
      let count = 0;
      for (let at = from; at < to; ) {
        at = Temporal.PlainDate.from(at).add({ days: 1 }).toString();
        if (isWorked(at, land, shut)) count += 1;
      }
      const days = workingDays(land, shut);
      expect(days.between(from, to)).toBe(count);
    });
  });

  it('added come out when they are counted, and the day is one of them', () => {
    check([day, n, country, closures], (from, count, land, shut) => {
      const days = workingDays(land, shut);
      const to = days.add(from, count);
      if (count === 0) expect(to).toBe(from);
      else expect(days.isWorkingDay(to)).toBe(true);
      if (count >= 0) expect(days.between(from, to)).toBe(count);
      else if (days.isWorkingDay(from)) expect(days.add(to, -count)).toBe(from);
    });
  });

  it('add up: n and then m more are n + m', () => {
    const few = fc.integer({ min: 0, max: 40 });
    check([day, few, few, country, closures], (from, some, more, land, shut) => {
      const days = workingDays(land, shut);
      expect(days.add(days.add(from, some), more)).toBe(days.add(from, some + more));
    });
  });

  it('are never more with a shutdown than without', () => {
    check([day, fc.integer({ min: 0, max: 60 }), country, closures], (from, count, land, shut) => {
      expect(workingDays(land, shut).add(from, count) >= workingDays(land).add(from, count)).toBe(true);
    });
  });

  it('from one day to another are minus those the other way', () => {
    check([day, day, country], (a, b, land) => {
      const days = workingDays(land);
      if (a !== b) expect(days.between(a, b) + days.between(b, a)).toBe(between(a, b, land));
    });
  });
});

/** By how much the two directions differ: each counts its later day's end by another rule (see `WorkingDays.between`). */
function between(a: string, b: string, land: string | null): number {
  const [early, late] = a < b ? [a, b] : [b, a];
  const worked = (on: string): number => (isWorked(on, land, []) ? 1 : 0);
  return worked(late) - worked(early);
}

describe('day numbers', () => {
  const far = fc.integer({ min: -700_000, max: 2_900_000 });

  it('agree with the platform’s calendar, leap days and centuries too', () => {
    const epoch = Temporal.PlainDate.from('1970-01-01');
    check([far], (number) => {
      const on = epoch.add({ days: number });
      if (on.year < 0 || on.year > 9_999) return;
      expect(dayNumber(on.toString())).toBe(number);
      expect(dayOfNumber(number)).toBe(on.toString());
      expect(isWeekend(number)).toBe(on.dayOfWeek > 5);
    });
  });
});
