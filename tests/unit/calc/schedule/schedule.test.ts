import { describe, expect, it } from 'vitest';
import { arrivalDay } from '../../../../src/calc/schedule/arrival.ts';
import { drawChances, runsFor } from '../../../../src/calc/schedule/chances.ts';
import { crewScheduler } from '../../../../src/calc/schedule/crew-schedule.ts';
import { criticalPath } from '../../../../src/calc/schedule/critical-path.ts';
import { allBefore, chainBetween, inOrder, someLoop } from '../../../../src/calc/schedule/graph.ts';
import { makeHeap } from '../../../../src/calc/schedule/heap.ts';
import { threePointEstimate } from '../../../../src/calc/schedule/pert.ts';
import { atOnce, type Plan, simulation } from '../../../../src/calc/schedule/simulate.ts';
import { workingTime } from '../../../../src/calc/schedule/working-time.ts';

describe('a graph', () => {
  const needs = [[], [0], [0, 1], [2], []];

  it('has an order in which everything comes after what it needs', () => {
    const order = inOrder(needs);
    for (const [index, before] of needs.entries()) {
      for (const one of before) expect(order.indexOf(one)).toBeLessThan(order.indexOf(index));
    }
  });

  it('names the shortest chain, or none', () => {
    expect(chainBetween(needs, 3, 0)).toEqual([3, 2, 0]);
    expect(chainBetween(needs, 0, 3)).toBeNull();
    expect(chainBetween(needs, 4, 4)).toEqual([4]);
  });

  it('finds a loop, and what is behind it is not it', () => {
    expect(someLoop(needs)).toBeNull();
    const loop = someLoop([[3], [0], [1], [2], [3]]) ?? [];
    expect(loop.toSorted()).toEqual([0, 1, 2, 3]);
    expect(someLoop([[1], [1]])).toEqual([1]);
  });

  it('collects everything before, once, loops or not', () => {
    expect([...allBefore(needs, 3)].toSorted()).toEqual([0, 1, 2]);
    expect([...allBefore([[1], [0]], 0)].toSorted()).toEqual([0, 1]);
  });
});

describe('a heap', () => {
  it('hands out the smallest key first, of equal keys the smaller value', () => {
    const heap = makeHeap();
    for (const [key, value] of [
      [3, 1],
      [1, 9],
      [2, 4],
      [1, 2],
      [5, 5],
    ] as const)
      heap.push(key, value);
    expect(heap.size).toBe(5);
    expect(heap.leastKey()).toBe(1);
    expect(Array.from({ length: 5 }, () => heap.pop())).toEqual([2, 9, 4, 1, 5]);
    expect(heap.pop()).toBe(-1);
    expect(heap.leastKey()).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('three figures', () => {
  it('are refused out of their order', () => {
    expect(() => threePointEstimate({ least: 3, likely: 2, most: 4 })).toThrow('The likely time is 2');
    expect(() => threePointEstimate({ least: -1, likely: 2, most: 4 })).toThrow('The least time is -1');
  });
});

describe('a network with a loop', () => {
  it('has no critical path and no order of work', () => {
    const needs = [[1], [0]];
    expect(() => criticalPath({ durations: [1, 1], needs })).toThrow('waits for itself');
    expect(() => crewScheduler({ needs, people: [1, 1], hands: 1, urgency: [0, 0] })).toThrow(
      'waits for itself',
    );
  });
});

describe('an arrival', () => {
  it.each([
    [0, 2],
    [0.25, 6],
    [0.5, 10],
    [0.7, 15],
    [0.9, 20],
    [0.99, 22],
  ])('at a share of %f is on day %i', (share, day) => {
    expect(arrivalDay({ least: 2, likely: 10, late: 20 }, share)).toBe(day);
  });
});

describe('working time', () => {
  // Tuesday and Saturday, counted from a Monday
  const time = workingTime((day) => ({ 1: 150, 5: 360 })[day % 7] ?? 0);

  it('counts the minutes before a day', () => {
    expect([0, 1, 2, 5, 6, 8, 9].map(time.minuteBefore)).toEqual([0, 0, 150, 150, 510, 510, 660]);
  });

  it.each([
    [0, 0, 1],
    [1, 1, 1],
    [150, 1, 5],
    [151, 5, 5],
    [510, 5, 8],
    [511, 8, 8],
  ])('minute %i is worked by day %i and followed on day %i', (minute, worked, after) => {
    expect(time.dayWorked(minute)).toBe(worked);
    expect(time.dayAfter(minute)).toBe(after);
  });

  it('gives up after ten years of nothing', () => {
    expect(() => workingTime(() => 0).dayWorked(1)).toThrow('within ten years');
  });
});

describe('a simulation', () => {
  const time = workingTime(() => 100);
  const job = (needs: readonly number[], minutes: number, arrivals: readonly number[] = []) => ({
    minutes: { least: minutes, likely: minutes, most: minutes },
    people: 1,
    needs,
    arrivals,
  });
  const plan: Plan = {
    work: [
      job([], 150),
      job([0], 40, [0]),
      { minutes: { least: 0, likely: 0, most: 0 }, people: 0, needs: [1], arrivals: [] },
    ],
    arrivals: [{ least: 4, likely: 4, late: 4 }],
    hands: 1,
    time,
    target: 2,
  };
  const run = (of: Plan, seed = 1) => atOnce(simulation(of, drawChances(of, seed, 60)));

  it('says the day by hand where nothing is left to chance, and what drove it', () => {
    const found = run(plan);
    // the first ends in the middle of day 1, the part comes on day 4, its 40 minutes are worked that evening
    expect(new Set(found.endDays)).toEqual(new Set([4]));
    expect(found.begins.map(({ p50 }) => p50)).toEqual([0, 4, 4]);
    expect(found.ends.map(({ p50 }) => p50)).toEqual([1, 4, 4]);
    expect(found.arrivalShare).toEqual([1]);
    expect(found.workShare).toEqual([0, 1, 1]);
  });

  it('is driven by the work once the part is there in time', () => {
    const found = run({ ...plan, arrivals: [{ least: 0, likely: 0, late: 0 }] });
    expect(new Set(found.endDays)).toEqual(new Set([1]));
    expect(found.arrivalShare).toEqual([0]);
    expect(found.workShare).toEqual([1, 1, 1]);
  });

  it('counts a job that waited for hands after the one that had them', () => {
    const two = { ...plan, work: [job([], 50), job([], 60), { ...job([0, 1], 0), people: 0 }], arrivals: [] };
    const found = run(two);
    expect(found.workShare).toEqual([1, 1, 1]);
    expect(new Set(found.endDays)).toEqual(new Set([1]));
  });

  it('gives the same for the same seed and another for another', () => {
    const vague = { ...plan, arrivals: [{ least: 2, likely: 20, late: 60 }] };
    expect(run(vague, 5)).toEqual(run(vague, 5));
    expect(run(vague, 5).endDays).not.toEqual(run(vague, 6).endDays);
  });

  it('never ends later, run against run, when something is here sooner', () => {
    const vague = { ...plan, arrivals: [{ least: 2, likely: 20, late: 60 }] };
    const sooner = { ...vague, arrivals: [{ least: 1, likely: 10, late: 30 }] };
    const chances = drawChances(vague, 3, 200);
    const [late, early] = [vague, sooner].map((of) => atOnce(simulation(of, chances)).endDays);
    for (const [index, day] of (early ?? []).entries()) expect(day).toBeLessThanOrEqual(late?.[index] ?? 0);
  });

  it('runs through a large plan less often, and never under 200 times', () => {
    const large = (count: number) =>
      runsFor({ work: Array.from({ length: count }, () => job([], 1)), arrivals: [] });
    expect([large(10), large(400), large(5_000)]).toEqual([2_000, 399, 200]);
  });
});
