import { describe, expect, it } from 'vitest';
import { drawChances } from '../../src/calc/schedule/chances.ts';
import { crewScheduler } from '../../src/calc/schedule/crew-schedule.ts';
import { criticalPath } from '../../src/calc/schedule/critical-path.ts';
import { pertQuantiles, pertTime, positionOf, threePointEstimate } from '../../src/calc/schedule/pert.ts';
import { atOnce, type Plan, simulation, spread } from '../../src/calc/schedule/simulate.ts';
import { workingTime } from '../../src/calc/schedule/working-time.ts';

/** A network as books print it: each activity with its figures and what comes before it. */
type Activity = readonly [name: string, figures: readonly number[], before: string];

const placed = (rows: readonly Activity[]) => {
  const at = new Map(rows.map(([name], place) => [name, place]));
  return rows.map(([, , before]) =>
    [...before].map((name) => at.get(name) ?? expect.fail(`${name} is no activity`)),
  );
};

const meanOf = ([least = 0, likely = 0, most = 0]: readonly number[]) =>
  threePointEstimate({ least, likely, most }).value;

/**
 * Hillier and Lieberman, Introduction to Operations Research, the Reliable Construction example of the chapter on project
 * management (key HILLIER, from memory; the figures agree with one another): 44 weeks, variance 9 on the critical path.
 */
const RELIABLE: readonly Activity[] = [
  ['A', [1, 2, 3], ''],
  ['B', [2, 3.5, 8], 'A'],
  ['C', [6, 9, 18], 'B'],
  ['D', [4, 5.5, 10], 'C'],
  ['E', [1, 4.5, 5], 'C'],
  ['F', [4, 4, 10], 'E'],
  ['G', [5, 6.5, 11], 'D'],
  ['H', [5, 8, 17], 'EG'],
  ['I', [3, 7.5, 9], 'C'],
  ['J', [3, 9, 9], 'FI'],
  ['K', [4, 4, 4], 'J'],
  ['L', [1, 5.5, 7], 'J'],
  ['M', [1, 2, 3], 'H'],
  ['N', [5, 5.5, 9], 'KL'],
];

describe('the Reliable Construction example (HILLIER, from memory)', () => {
  const means = RELIABLE.map(([, figures]) => meanOf(figures).mean);
  const { times, length } = criticalPath({ durations: means, needs: placed(RELIABLE) }).value;
  const critical = RELIABLE.filter((_row, place) => Math.abs(times[place]?.slack ?? 1) < 1e-9);

  it('has the printed mean durations', () => {
    expect(means.map((mean) => Math.round(mean * 1e9) / 1e9)).toEqual([
      2, 4, 10, 6, 4, 5, 7, 9, 7, 8, 4, 5, 2, 6,
    ]);
  });

  it('takes 44 weeks along A B C E F J L N', () => {
    expect(length).toBeCloseTo(44, 9);
    expect(critical.map(([name]) => name).join('')).toBe('ABCEFJLN');
  });

  it('varies by 9 square weeks along them, so that 47 weeks is one deviation off', () => {
    const variance = critical.reduce((sum, [, figures]) => sum + meanOf(figures).variance, 0);
    expect(variance).toBeCloseTo(9, 9);
  });
});

/**
 * A textbook problem with its printed table of means and start and finish times (key WIZEDU, read; its rows A to F).
 */
const PRINTED: readonly Activity[] = [
  ['A', [5, 5, 7], ''],
  ['B', [1, 2, 5], ''],
  ['C', [5, 5, 5], 'A'],
  ['D', [4, 8, 13], 'A'],
  ['E', [1, 10, 17], 'BC'],
  ['F', [1, 5, 7], 'D'],
  ['G', [2, 6, 9], 'D'],
  ['H', [4, 4, 6], 'EF'],
  ['I', [2, 7, 10], 'GH'],
  ['J', [2, 4, 7], 'I'],
  ['K', [6, 10, 13], 'I'],
  ['L', [2, 6, 6], 'J'],
  ['M', [2, 2, 3], 'K'],
  ['N', [7, 7, 12], 'LM'],
];

describe('the printed table of start and finish times (WIZEDU)', () => {
  const means = PRINTED.map(([, figures]) => meanOf(figures).mean);
  const { times } = criticalPath({ durations: means, needs: placed(PRINTED) }).value;

  it.each([
    ['A', 5.33, 0.33],
    ['B', 2.33, 0.67],
    ['C', 5, 0],
    ['D', 8.17, 1.5],
    ['E', 9.67, 2.67],
    ['F', 4.67, 1],
    ['G', 5.83, 1.17],
    ['H', 4.33, 0.33],
    ['I', 6.67, 1.33],
    ['J', 4.17, 0.83],
    ['K', 9.83, 1.17],
    ['L', 5.33, 0.67],
    ['M', 2.17, 0.17],
    ['N', 7.83, 0.83],
  ])('%s: mean %f, deviation %f', (name, mean, deviation) => {
    const row = PRINTED.find(([one]) => one === name)?.[1] ?? [];
    expect(Math.abs(meanOf(row).mean - mean)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(Math.sqrt(meanOf(row).variance) - deviation)).toBeLessThanOrEqual(0.005);
  });

  it.each([
    ['A', 0, 5.33, 0, 5.33, 0],
    ['B', 0, 2.33, 8, 10.33, 8],
    ['C', 5.33, 10.33, 5.33, 10.33, 0],
    ['D', 5.33, 13.5, 7.17, 15.33, 1.83],
    ['E', 10.33, 20, 10.33, 20, 0],
    ['F', 13.5, 18.17, 15.33, 20, 1.83],
  ])('%s: %f to %f at the earliest, %f to %f at the latest, slack %f', (name, ...figures) => {
    const found = times[PRINTED.findIndex(([one]) => one === name)];
    const ours = [
      found?.earliestStart,
      found?.earliestFinish,
      found?.latestStart,
      found?.latestFinish,
      found?.slack,
    ];
    // the page adds up figures it has already rounded
    for (const [index, figure] of figures.entries()) {
      expect(Math.abs((ours[index] ?? Number.NaN) - figure)).toBeLessThanOrEqual(0.011);
    }
  });
});

/**
 * Two networks with activities on arrows, as solved in a solutions manual (key TAYLOR8, read): from node, to node, days,
 * then the printed ES, EF, LS, LF and slack.
 */
const ARROWS: readonly (readonly (readonly number[])[])[] = [
  [
    [1, 2, 7, 0, 7, 2, 9, 2],
    [1, 3, 10, 0, 10, 0, 10, 0],
    [2, 4, 6, 7, 13, 9, 15, 2],
    [3, 4, 5, 10, 15, 10, 15, 0],
    [3, 5, 4, 10, 14, 14, 18, 4],
    [4, 5, 3, 15, 18, 15, 18, 0],
    [5, 6, 2, 18, 20, 18, 20, 0],
  ],
  [
    [1, 2, 8, 0, 8, 1, 9, 1],
    [1, 3, 10, 0, 10, 0, 10, 0],
    [1, 4, 9, 0, 9, 6, 15, 6],
    [2, 5, 6, 8, 14, 9, 15, 1],
    [2, 6, 4, 8, 12, 16, 20, 8],
    [3, 5, 5, 10, 15, 10, 15, 0],
    [4, 5, 0, 9, 9, 15, 15, 6],
    [4, 7, 7, 9, 16, 20, 27, 11],
    [5, 7, 12, 15, 27, 15, 27, 0],
    [5, 8, 15, 15, 30, 16, 31, 1],
    [6, 9, 18, 12, 30, 20, 38, 8],
    [7, 8, 4, 27, 31, 27, 31, 0],
    [8, 9, 7, 31, 38, 31, 38, 0],
  ],
];

describe.each(ARROWS.map((rows, index) => ({ rows, index })))(
  'arrow network $index (TAYLOR8)',
  ({ rows }) => {
    const needs = rows.map(([from]) => rows.flatMap(([, to], place) => (to === from ? [place] : [])));
    const { times } = criticalPath({ durations: rows.map(([, , days = 0]) => days), needs }).value;

    it.each(rows.map((row, place) => ({ row, place, name: `${row[0]}–${row[1]}` })))(
      '$name has the printed times',
      ({ row, place }) => {
        const { earliestStart, earliestFinish, latestStart, latestFinish, slack } = times[place] ?? {};
        expect([earliestStart, earliestFinish, latestStart, latestFinish, slack]).toEqual(row.slice(3));
      },
    );
  },
);

/** Ten hours a day and no day off, so that days are minutes over 600. */
const always = workingTime(() => 600);
const MANY = 4_000;

const run = (plan: Omit<Plan, 'time'> & { readonly time?: Plan['time'] }) => {
  const whole = { time: always, ...plan };
  return atOnce(simulation(whole, drawChances(whole, 7, MANY)));
};

/** Three standard errors of a mean of so many draws. */
const within = (deviation: number): number => (3 * deviation) / Math.sqrt(MANY);

describe('closed-form cases (DEFINITION)', () => {
  it.each([0, 0.25, 0.5, 0.9, 1])(
    'the beta distribution at %f has the mean of its three figures',
    (position) => {
      const figures = { least: 0, likely: position, most: 1 };
      const table = pertQuantiles(position);
      const times = Array.from({ length: 20_000 }, (_, draw) =>
        pertTime(figures, table, (draw + 0.5) / 20_000),
      );
      const mean = times.reduce((sum, each) => sum + each, 0) / times.length;
      expect(Math.abs(mean - threePointEstimate(figures).value.mean)).toBeLessThanOrEqual(5e-4);
      // variance of a beta distribution, α and β adding up to 6: (μ)(1 − μ)/7
      const variance = times.reduce((sum, each) => sum + (each - mean) ** 2, 0) / times.length;
      expect(Math.abs(variance - (mean * (1 - mean)) / 7)).toBeLessThanOrEqual(2e-4);
    },
  );

  it.each([0.1, 0.5, 0.9])('with its mode at an end it has the quantile 1 − (1 − p)^(1/5) at %f', (share) => {
    const figures = { least: 10, likely: 10, most: 20 };
    const exact = 10 + 10 * (1 - (1 - share) ** (1 / 5));
    expect(
      Math.abs(pertTime(figures, pertQuantiles(positionOf(figures)), share) - exact),
    ).toBeLessThanOrEqual(0.01);
  });

  it('the sum of independent times has the sum of their means, and of their variances', () => {
    const chain = [0, 1, 2].map((place) => ({
      minutes: { least: 600, likely: 1200, most: 3600 },
      people: 1,
      needs: place === 0 ? [] : [place - 1],
      arrivals: [],
    }));
    const { ends } = run({ work: chain, arrivals: [], hands: 3, target: 2 });
    const { endDays } = run({ work: chain, arrivals: [], hands: 3, target: 2 });
    // μ = (600 + 4·1200 + 3600)/6 = 1500 min = 2.5 days each; a day is ended by on average half a day earlier
    const mean = endDays.reduce((sum, day) => sum + day, 0) / MANY;
    // x = (1500 − 600)/3000 = 0.3, so σ² = 0.3·0.7/7 · 3000² min² each
    const variance = (3 * ((0.3 * 0.7) / 7) * 3000 ** 2) / 600 ** 2;
    expect(Math.abs(mean - (7.5 - 0.5))).toBeLessThanOrEqual(within(Math.sqrt(variance + 1 / 12)) + 0.02);
    const seen = endDays.reduce((sum, day) => sum + (day - mean) ** 2, 0) / MANY;
    // a twelfth is what counting in whole days adds (Sheppard)
    expect(Math.abs(seen - variance - 1 / 12)).toBeLessThanOrEqual(0.12);
    expect(ends[2]?.p50).toBe(spread(endDays).p50);
  });

  it('the later of two uniform arrivals lies below d half of the time at b·√½, nine times in ten at b·√0.9', () => {
    const uniform = { least: 0, likely: 100, late: 180 };
    const { endDays, arrivalShare } = run({
      work: [{ minutes: { least: 1, likely: 1, most: 1 }, people: 1, needs: [], arrivals: [0, 1] }],
      arrivals: [uniform, uniform],
      hands: 1,
      target: 0,
    });
    const { p50, p90 } = spread(endDays);
    // the density of the later one is 2d/b²; three standard errors of a quantile
    expect(Math.abs(p50 - 200 * Math.sqrt(0.5))).toBeLessThanOrEqual(4);
    expect(Math.abs(p90 - 200 * Math.sqrt(0.9))).toBeLessThanOrEqual(2.5);
    const mean = endDays.reduce((sum, day) => sum + day, 0) / MANY;
    expect(Math.abs(mean - (2 / 3) * 200)).toBeLessThanOrEqual(within(200 / Math.sqrt(18)) + 0.1);
    // each is the later one half of the time
    for (const share of arrivalShare) expect(Math.abs(share - 0.5)).toBeLessThanOrEqual(0.03);
  });

  it('two equal jobs side by side are each on the critical chain half of the time', () => {
    const job = { minutes: { least: 600, likely: 1200, most: 3600 }, people: 1, needs: [], arrivals: [] };
    const end = { minutes: { least: 0, likely: 0, most: 0 }, people: 0, needs: [0, 1], arrivals: [] };
    const { workShare } = run({ work: [job, job, end], arrivals: [], hands: 2, target: 2 });
    expect(workShare[2]).toBe(1);
    expect((workShare[0] ?? 0) + (workShare[1] ?? 0)).toBeCloseTo(1, 9);
    expect(Math.abs((workShare[0] ?? 0) - 0.5)).toBeLessThanOrEqual(0.03);
  });
});

/** Worked by hand: jobs of 60, 60 and 120 minutes for one person each, and one of 60 for two. */
describe('small crews, worked by hand (DEFINITION)', () => {
  const order = (
    hands: number,
    people: readonly number[],
    minutes: readonly number[],
    urgency: readonly number[],
  ) =>
    crewScheduler({ needs: people.map(() => []), people, hands, urgency })(
      minutes,
      people.map(() => 0),
    );

  it('one pair of hands does everything in turn', () => {
    const { start, finish } = order(1, [1, 1, 1], [60, 60, 120], [3, 2, 1]);
    expect([...start]).toEqual([180, 120, 0]);
    expect(Math.max(...finish)).toBe(240);
  });

  it('two do the long one beside the short ones', () => {
    const { finish } = order(2, [1, 1, 1], [60, 60, 120], [3, 2, 1]);
    expect(Math.max(...finish)).toBe(120);
  });

  it('a job for two waits for both, and only what is done by then goes before it', () => {
    const { start } = order(2, [1, 2, 1, 1], [60, 60, 60, 61], [0, 1, 2, 3]);
    // the first begins; the pair waits until 60; the third is done by 60 and goes first, the fourth is not and waits
    expect([...start]).toEqual([0, 60, 0, 120]);
  });
});
