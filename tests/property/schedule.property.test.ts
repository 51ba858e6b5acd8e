import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crewScheduler } from '../../src/calc/schedule/crew-schedule.ts';
import { criticalPath } from '../../src/calc/schedule/critical-path.ts';
import { allBefore, countsBehind, followers } from '../../src/calc/schedule/graph.ts';
import { makeHeap } from '../../src/calc/schedule/heap.ts';
import { pertQuantiles, pertTime, positionOf } from '../../src/calc/schedule/pert.ts';
import { workingTime } from '../../src/calc/schedule/working-time.ts';
import { between, check } from '../support/laws.ts';

/** Work that waits only for earlier work, for a crew of some hands. */
const aPlan = fc
  .record({
    hands: fc.integer({ min: 1, max: 4 }),
    work: fc.array(
      fc.record({
        minutes: fc.integer({ min: 0, max: 300 }),
        release: fc.integer({ min: 0, max: 500 }),
        people: fc.integer({ min: 0, max: 4 }),
        after: fc.array(fc.nat(), { maxLength: 3 }),
        urgency: fc.integer({ min: 0, max: 20 }),
      }),
      { minLength: 1, maxLength: 14 },
    ),
  })
  .map(({ hands, work }) => ({
    hands,
    needs: work.map(({ after }, index) =>
      index === 0 ? [] : [...new Set(after.map((each) => each % index))],
    ),
    // what takes no hands is a stage: it takes no time either
    minutes: work.map(({ minutes, people }) => (people === 0 ? 0 : minutes)),
    people: work.map(({ people }) => Math.min(people, hands)),
    releases: work.map(({ release }) => release),
    urgency: work.map(({ urgency }) => urgency),
  }));

describe('work put in order for a crew', () => {
  it('begins nothing before what it needs and what releases it, and never takes more hands than there are', () => {
    check([aPlan], ({ minutes, releases, ...plan }) => {
      const { start, finish } = crewScheduler(plan)(minutes, releases);
      for (const [place, before] of plan.needs.entries()) {
        const began = start[place] ?? -1;
        expect(began).toBeGreaterThanOrEqual(releases[place] ?? 0);
        for (const one of before) expect(began).toBeGreaterThanOrEqual(finish[one] ?? 0);
        expect(finish[place]).toBe(began + (minutes[place] ?? 0));
      }
      for (const at of start) {
        const busy = plan.people.filter(
          (_people, place) => (start[place] ?? 0) <= at && at < (finish[place] ?? 0),
        );
        expect(busy.reduce((sum, people) => sum + people, 0)).toBeLessThanOrEqual(plan.hands);
      }
    });
  });

  it('takes no less than the critical path and no more than everything one after the other', () => {
    check([aPlan], ({ minutes, releases, ...plan }) => {
      const { finish } = crewScheduler(plan)(minutes, releases);
      const end = Math.max(...finish);
      const { length } = criticalPath({ durations: minutes, needs: plan.needs }).value;
      expect(end).toBeGreaterThanOrEqual(length);
      expect(end).toBeLessThanOrEqual(Math.max(...releases) + minutes.reduce((sum, each) => sum + each, 0));
    });
  });

  it('is as the critical path says where there are hands for all of it and nothing is waited for', () => {
    check([aPlan], ({ minutes, ...plan }) => {
      const plenty = { ...plan, hands: 1000 };
      const { start } = crewScheduler(plenty)(
        minutes,
        minutes.map(() => 0),
      );
      const { times } = criticalPath({ durations: minutes, needs: plan.needs }).value;
      expect([...start]).toEqual(times.map(({ earliestStart }) => earliestStart));
    });
  });

  it('is the same however often it is worked out in one scheduler', () => {
    check([aPlan], ({ minutes, releases, ...plan }) => {
      const schedule = crewScheduler(plan);
      const first = [...schedule(minutes, releases).finish];
      schedule(
        minutes.map((each) => each + 1),
        releases,
      );
      expect([...schedule(minutes, releases).finish]).toEqual(first);
    });
  });

  it('names for everything a cause that ends where it begins', () => {
    check([aPlan], ({ minutes, releases, ...plan }) => {
      const { start, finish, after } = crewScheduler(plan)(minutes, releases);
      for (const [place, cause] of after.entries()) {
        if (cause >= 0) expect(finish[cause]).toBe(start[place]);
        else if (cause === -2) expect(releases[place]).toBe(start[place]);
        else expect(start[place]).toBe(0);
      }
    });
  });
});

describe('a network', () => {
  it('counts behind each thing what waits for it', () => {
    check([aPlan], ({ needs }) => {
      const waiting = followers(needs);
      const counts = needs.map((_before, place) => allBefore(waiting, place).size);
      expect(countsBehind(needs, needs.length)).toEqual(counts);
    });
  });

  it('has no slack below nothing, and something without any', () => {
    check([aPlan], ({ minutes, needs }) => {
      const { times } = criticalPath({ durations: minutes, needs }).value;
      const slacks = times.map(({ slack }) => slack);
      expect(Math.min(...slacks)).toBe(0);
    });
  });
});

describe('a heap', () => {
  it('sorts', () => {
    check([fc.array(fc.integer({ min: 0, max: 50 }), { maxLength: 40 })], (keys) => {
      const heap = makeHeap();
      for (const [value, key] of keys.entries()) heap.push(key, value);
      const popped = keys.map(() => keys[heap.pop()]);
      expect(popped).toEqual(keys.toSorted((a, b) => a - b));
    });
  });
});

describe('a time of three figures', () => {
  it('lies between least and most, and grows with its share', () => {
    check(
      [between(0, 100), between(0, 100), between(0, 100), between(0, 0.9999), between(0, 0.9999)],
      (a, b, c, p, q) => {
        const [least = 0, likely = 0, most = 0] = [a, b, c].toSorted((x, y) => x - y);
        const figures = { least, likely, most };
        const table = pertQuantiles(positionOf(figures));
        const [early, late] = [Math.min(p, q), Math.max(p, q)].map((share) =>
          pertTime(figures, table, share),
        );
        expect(early).toBeGreaterThanOrEqual(least - 1e-9);
        expect(late).toBeLessThanOrEqual(most + 1e-9);
        expect(early).toBeLessThanOrEqual((late ?? 0) + 1e-9);
      },
    );
  });
});

describe('working time', () => {
  const aWeek = fc
    .array(fc.constantFrom(0, 0, 60, 150, 360), { minLength: 7, maxLength: 7 })
    .filter((days) => days.some((minutes) => minutes > 0));

  it('finds the day a minute is worked on, and the day the next one is', () => {
    check([aWeek, fc.integer({ min: 0, max: 5_000 })], (days, minute) => {
      const time = workingTime((day) => days[day % 7] ?? 0);
      const [worked, after] = [time.dayWorked(minute), time.dayAfter(minute)];
      expect(time.minuteBefore(worked + 1)).toBeGreaterThanOrEqual(minute);
      if (minute > 0) expect(time.minuteBefore(worked)).toBeLessThan(minute);
      expect(time.minuteBefore(after)).toBeLessThanOrEqual(minute);
      expect(time.minuteBefore(after + 1)).toBeGreaterThan(minute);
      expect(worked).toBeLessThanOrEqual(after);
    });
  });
});
