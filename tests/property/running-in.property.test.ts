import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ceilingAt, roundedDown } from '../../src/calc/running-in/ceiling.ts';
import { scheduleAt } from '../../src/calc/running-in/schedule.ts';
import { daysToMark, useRate } from '../../src/calc/running-in/use-rate.ts';
import { addDays } from '../../src/core/time.ts';
import { allowedNow } from '../../src/records/running-in/allowed.ts';
import { daysBetween, type Progress, standStep } from '../../src/records/running-in/progress.ts';
import type { RunInPlan, RunInStep } from '../../src/records/running-in/run-in.ts';
import { runInPlans } from '../../src/tables/running-in.ts';
import { between, check } from '../support/laws.ts';

const STARTED = '2026-11-23';

const step = (changes: Partial<RunInStep> = {}): RunInStep => ({
  id: 1,
  planId: 1,
  what: 'oil change',
  hint: null,
  origin: 'builder',
  due: { km: 500, h: null, days: null },
  doneOn: null,
  doneByName: null,
  doneKm: null,
  doneH: null,
  found: null,
  link: null,
  dropped: false,
  snoozes: [],
  ...changes,
});

const progress = (
  km: number | null,
  h: number | null,
  days: number,
  perDay: number | null = null,
): Progress => ({
  km: { run: km, on: km === null ? null : addDays(STARTED, days), perDay },
  h: { run: h, on: h === null ? null : addDays(STARTED, days), perDay: null },
  days,
  today: addDays(STARTED, days),
});

const plan = { startedOn: STARTED };
const marks = fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 12 });

describe('which marks are reached', () => {
  it('never takes one back as the counter counts, and says what is left of the next', () => {
    check(
      [marks, fc.integer({ min: 0, max: 200_000 }), fc.nat(6000), fc.nat(500)],
      (all, start, run, more) => {
        const now = scheduleAt({ start, now: start + run, marks: all });
        const later = scheduleAt({ start, now: start + run + more, marks: all });
        expect(later.dueCount).toBeGreaterThanOrEqual(now.dueCount);
        expect(now.dueCount + all.filter((mark) => mark > run).length).toBe(all.length);
        if (now.remaining === null || now.nextAt === null) return;
        expect(now.remaining).toBeGreaterThan(0);
        expect(scheduleAt({ start, now: now.nextAt, marks: all }).dueCount).toBeGreaterThan(now.dueCount);
      },
    );
  });
});

describe('a step', () => {
  it('is due at the first of its marks, and at none before', () => {
    const mark = fc.option(fc.integer({ min: 1, max: 3000 }), { nil: null });
    const run = fc.option(fc.integer({ min: 0, max: 4000 }), { nil: null });
    check([mark, mark, mark, run, run, fc.nat(400)], (km, h, days, runKm, runH, runDays) => {
      if (km === null && h === null && days === null) return;
      const { state } = standStep(step({ due: { km, h, days } }), plan, progress(runKm, runH, runDays));
      const reached = [
        [km, runKm],
        [h, runH],
        [days, runDays],
      ].some(
        ([due, at]) => due !== null && at !== null && due !== undefined && at !== undefined && at >= due,
      );
      expect(state === 'due').toBe(reached);
    });
  });

  it('is what its newest putting-off says, and never due while that is ahead', () => {
    check([fc.integer({ min: 1, max: 1000 }), fc.integer({ min: 1, max: 1000 })], (run, further) => {
      const due = { km: run + further, h: null, days: null };
      const snoozes = [{ id: 1, due, reason: 'no filter', onDay: STARTED, byName: 'Ada' }];
      const put = step({ due: { km: 1, h: null, days: null }, snoozes });
      expect(standStep(put, plan, progress(run, null, 3)).state).not.toBe('due');
      expect(standStep(put, plan, progress(run + further, null, 3)).state).toBe('due');
    });
  });

  it('goes from later to soon to due, never back, as the counter counts', () => {
    const rank = { later: 0, soon: 1, due: 2, done: 3, 'left out': 3 };
    check([fc.integer({ min: 20, max: 3000 }), fc.nat(3500), fc.nat(500)], (km, run, more) => {
      const at = (each: number) =>
        rank[standStep(step({ due: { km, h: null, days: null } }), plan, progress(each, null, 1)).state];
      expect(at(run + more)).toBeGreaterThanOrEqual(at(run));
    });
  });

  it('is expected on the day that steady use reaches it', () => {
    check(
      [fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 100 }), fc.integer({ min: 1, max: 3000 })],
      (days, perDay, km) => {
        const run = days * perDay;
        const { expectedOn } = standStep(
          step({ due: { km, h: null, days: null } }),
          plan,
          progress(run, null, days, perDay),
        );
        const left = Math.ceil((km - run) / perDay);
        if (km <= run || left > 365) expect(expectedOn).toBeNull();
        else expect(daysBetween(addDays(STARTED, days), expectedOn ?? '')).toBe(left);
      },
    );
  });
});

describe('the pace', () => {
  it('is that of steady use, one long trip or not', () => {
    check(
      [between(1, 200), fc.integer({ min: 6, max: 20 }), fc.nat(), between(0, 3000)],
      (perDay, count, which, extra) => {
        const points = Array.from({ length: count }, (_each, at) => ({ at, value: perDay * at }));
        expect(useRate(points, count)).toBeCloseTo(perDay, 6);
        const trip = points.map((point, at) =>
          at === which % count ? { at, value: point.value + extra } : point,
        );
        expect(useRate(trip, count) ?? 0).toBeGreaterThan(perDay * 0.5);
        expect(daysToMark(perDay, { value: 0, mark: perDay * 10 })).toBeCloseTo(10, 9);
      },
    );
  });

  it('is not told from what is old, or from one day', () => {
    expect(
      useRate(
        [
          { at: 0, value: 0 },
          { at: 1, value: 50 },
        ],
        100,
      ),
    ).toBeNull();
    expect(
      useRate(
        [
          { at: 0, value: 0 },
          { at: 0.2, value: 50 },
        ],
        1,
      ),
    ).toBeNull();
    expect(
      useRate(
        [
          { at: 0, value: 50 },
          { at: 1, value: 50 },
        ],
        1,
      ),
    ).toBeNull();
  });
});

describe('ceilings', () => {
  const row = fc.constantFrom(...runInPlans);

  it('of common practice never fall, stay between their points, and are rounded down', () => {
    check(
      [row, between(0, 2000), between(0, 300), fc.integer({ min: 3000, max: 12_000 })],
      ({ ceilings, measure }, at, more, limitRpm) => {
        const now = ceilingAt(ceilings, at);
        const later = ceilingAt(ceilings, at + more);
        if (now === null || later === null) throw new Error('a plan without ceilings');
        expect(later.speedRatio ?? 0).toBeGreaterThanOrEqual((now.speedRatio ?? 0) - 1e-12);
        expect(later.boostRatio ?? 0).toBeGreaterThanOrEqual((now.boostRatio ?? 0) - 1e-12);
        const whole: RunInPlan = {
          ...{
            id: 1,
            buildId: 1,
            name: 'road',
            origin: 'common practice',
            startedOn: STARTED,
            startKm: 0,
            startH: 0,
          },
          ...{
            measure,
            limitRpm,
            boostKPa: 100,
            steps: [],
            ceilings: ceilings.map((each, id) => ({ ...each, id })),
          },
        };
        const allowed = allowedNow(whole, { ...progress(at, at, Math.floor(at)), days: at });
        expect(allowed?.mostRpm ?? Number.NaN).toBeLessThanOrEqual(limitRpm * (now.speedRatio ?? 1) + 1e-6);
        expect(allowed?.mostRpm ?? Number.NaN).toBeGreaterThan(limitRpm * (now.speedRatio ?? 1) - 51);
      },
    );
  });

  it('are never rounded up', () => {
    check([between(0, 20_000)], (rpm) => {
      expect(roundedDown(rpm)).toBeLessThanOrEqual(rpm + 1e-6);
    });
  });
});
