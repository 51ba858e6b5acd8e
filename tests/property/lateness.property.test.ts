import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { supplierLateness, teamLateness, waitBeyond } from '../../src/calc/lateness/lateness.ts';
import { workingDays } from '../../src/calendar/working-days.ts';
import type { Timing } from '../../src/records/orders/order-store.ts';
import { latenessBook } from '../../src/records/suppliers/expected.ts';
import { orderBy } from '../../src/records/suppliers/order-by.ts';
import { check } from '../support/laws.ts';

const days = fc.integer({ min: 0, max: 60 });
const seen = fc.record({
  came: fc.array(days, { maxLength: 12 }),
  waiting: fc.array(days, { maxLength: 4 }),
});
const team = fc.record({
  meanDays: fc.double({ min: 0.01, max: 20, noNaN: true }),
  weightOrders: fc.double({ min: 1, max: 20, noNaN: true }),
  orders: fc.constant(10),
});
const day = fc
  .integer({ min: 0, max: 800 })
  .map((offset) => Temporal.PlainDate.from('2026-01-05').add({ days: offset }).toString());
const calendars = [workingDays('GB/ENG'), workingDays('DE'), workingDays('US'), workingDays(null)];
const calendar = fc.constantFrom(...calendars);
const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;

describe('a supplier’s lateness', () => {
  it('lies between its own average and the team’s, the nearer its own the more has come', () => {
    check([fc.array(days, { minLength: 1, maxLength: 12 }), team], (came, common) => {
      const own = mean(came);
      const at = (copies: number): number => {
        const many = Array.from({ length: copies }, () => came).flat();
        return waitBeyond(supplierLateness({ came: many, waiting: [] }, common)).meanDays;
      };
      const [least, most] = [Math.min(own, common.meanDays), Math.max(own, common.meanDays)];
      expect(at(1)).toBeGreaterThanOrEqual(least - 1e-9);
      expect(at(1)).toBeLessThanOrEqual(most + 1e-9);
      expect(Math.abs(at(3) - own)).toBeLessThanOrEqual(Math.abs(at(1) - own) + 1e-9);
    });
  });

  it('grows with every day that something late has not come', () => {
    check([seen, team, days], (own, common, more) => {
      const before = waitBeyond(supplierLateness({ ...own, waiting: [...own.waiting, more] }, common));
      const after = waitBeyond(supplierLateness({ ...own, waiting: [...own.waiting, more + 1] }, common));
      expect(after.meanDays).toBeGreaterThan(before.meanDays);
      expect(after.latestDays).toBeGreaterThanOrEqual(before.latestDays);
    });
  });

  it('is a number of days whatever came of whatever', () => {
    check([fc.array(seen, { maxLength: 6 }), seen], (others, own) => {
      const common = teamLateness([...others, own]);
      expect(common.weightOrders).toBeGreaterThanOrEqual(1);
      expect(common.weightOrders).toBeLessThanOrEqual(20);
      const { meanDays, latestDays } = waitBeyond(supplierLateness(own, common));
      expect(meanDays).toBeGreaterThanOrEqual(0);
      expect(Number.isInteger(latestDays)).toBe(true);
    });
  });
});

const timing: fc.Arbitrary<Timing> = fc
  .record({
    supplierId: fc.integer({ min: 1, max: 3 }),
    firstPromisedOn: day,
    late: fc.integer({ min: -5, max: 20 }),
    outstanding: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ supplierId, firstPromisedOn, late, outstanding }) => ({
    supplierId,
    firstPromisedOn,
    promisedOn: firstPromisedOn,
    lastCameOn:
      outstanding > 0 ? null : Temporal.PlainDate.from(firstPromisedOn).add({ days: late }).toString(),
    outstanding,
  }));

describe('the day to expect', () => {
  it('is never before the day promised nor before today, and the latest never before it', () => {
    check([fc.array(timing, { maxLength: 20 }), day, day, calendar], (timings, today, promisedOn, own) => {
      const book = latenessBook(timings, today, () => own);
      const { expectedOn, latestOn } = book.expect(1, promisedOn);
      expect(expectedOn >= promisedOn).toBe(true);
      if (promisedOn < today) expect(expectedOn >= today && own.isWorkingDay(expectedOn)).toBe(true);
      expect(latestOn >= expectedOn).toBe(true);
    });
  });

  it('rests on the orders that came, its own and all', () => {
    check([fc.array(timing, { maxLength: 20 }), day], (timings, today) => {
      const came = timings.filter(({ outstanding }) => outstanding === 0);
      const { orders, teamOrders } = latenessBook(timings, today, () => workingDays(null)).expect(2, today);
      expect(teamOrders).toBe(came.length);
      expect(orders).toBe(came.filter(({ supplierId }) => supplierId === 2).length);
    });
  });
});

describe('the day to order by', () => {
  const wait = fc.record({
    meanDays: fc.double({ min: 0, max: 10, noNaN: true }),
    latestDays: fc.integer({ min: 0, max: 30 }),
  });
  const lead = fc.integer({ min: 1, max: 40 });

  it('leaves as many working days as it takes, to the day', () => {
    check([day, calendar, lead, wait], (neededOn, own, leadDays, late) => {
      const { latestOn, safeOn } = orderBy(neededOn, own, leadDays, late);
      expect(own.isWorkingDay(latestOn)).toBe(true);
      expect(own.add(latestOn, leadDays) <= neededOn).toBe(true);
      expect(own.add(own.add(latestOn, 1), leadDays) > neededOn).toBe(true);
      expect(safeOn <= latestOn).toBe(true);
    });
  });

  it('moves to a later day only where the day it is needed does', () => {
    check([day, calendar, lead, wait], (neededOn, own, leadDays, late) => {
      const next = Temporal.PlainDate.from(neededOn).add({ days: 1 }).toString();
      expect(
        orderBy(next, own, leadDays, late).latestOn >= orderBy(neededOn, own, leadDays, late).latestOn,
      ).toBe(true);
    });
  });
});
