import { describe, expect, it } from 'vitest';
import { carries, trendOf } from '../../src/calc/readings/trend.ts';

const points = (at: readonly number[], values: readonly number[]) =>
  values.map((value, index) => ({ at: at[index] ?? Number.NaN, value }));
const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_each, index) => index);

/** Key SCIPY: stats.theilslopes(y, t, alpha=0.90) and stats.kendalltau(t, y, method='exact'), run with scipy 1.17.1. */
const BY_SCIPY = [
  {
    where: 'a falling pressure on uneven days',
    at: [0, 3, 7, 8, 15, 21, 28],
    values: [4.3, 4.28, 4.2, 4.21, 4.1, 4.05, 3.9],
    expected: {
      slope: -0.014,
      low: -0.015384615384615365,
      high: -0.01125,
      tau: -0.9047619047619049,
      p: 0.002777777777777778,
    },
    carries: true,
  },
  {
    where: 'noise',
    at: upTo(8),
    values: [4.2, 4.25, 4.18, 4.22, 4.21, 4.19, 4.24, 4.23],
    expected: {
      slope: 0.0029166666666668633,
      low: -0.01,
      high: 0.015,
      tau: 0.14285714285714285,
      p: 0.7195436507936508,
    },
    carries: false,
  },
  {
    where: 'a line with one wild reading',
    at: upTo(10),
    values: [1, 2, 3, 4, 50, 6, 7, 8, 9, 10],
    expected: { slope: 1, low: 1, high: 1, tau: 0.7777777777777777, p: 0.0009463183421516755 },
    carries: true,
  },
  {
    where: 'twelve battery voltages',
    at: upTo(12),
    values: [12.65, 12.6, 12.62, 12.58, 12.55, 12.57, 12.5, 12.52, 12.48, 12.44, 12.46, 12.4],
    expected: {
      slope: -0.02,
      low: -0.02499999999999991,
      high: -0.017142857142857033,
      tau: -0.8787878787878787,
      p: 5.319397680508792e-6,
    },
    carries: true,
  },
] as const;

describe('the trend of readings against scipy', () => {
  it.each(BY_SCIPY)('$where', ({ at, values, expected, carries: sure }) => {
    const trend = trendOf(points(at, values));
    expect(trend?.slope).toBeCloseTo(expected.slope, 12);
    expect(trend?.leastSlope).toBeCloseTo(expected.low, 12);
    expect(trend?.mostSlope).toBeCloseTo(expected.high, 12);
    expect(trend?.tau).toBeCloseTo(expected.tau, 12);
    expect(trend?.pValue).toBeCloseTo(expected.p, 12);
    expect(trend !== null && carries(trend)).toBe(sure);
  });
});

describe("the EPA's example with ties (key EPAG9S)", () => {
  it('gives its score and, by the normal distribution, its probability', () => {
    const trend = trendOf(points(upTo(11), [10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15]));
    // S = 22 of 55 pairs; z = (22 − 1)/√155.33 = 1.685, of which 0.0460 lies above (tables of the normal distribution)
    expect((trend?.tau ?? 0) * 55).toBeCloseTo(22, 9);
    expect((trend?.pValue ?? 0) / 2).toBeCloseTo(0.046, 4);
  });
});

/** Kendall's table of the exact distribution, one-sided (key KENDALL; reprinted by Gilbert as table A18). */
const EXACT = [
  { n: 4, s: 6, p: 0.042 },
  { n: 5, s: 8, p: 0.042 },
  { n: 5, s: 10, p: 0.0083 },
  { n: 8, s: 16, p: 0.031 },
  { n: 10, s: 23, p: 0.023 },
] as const;

describe("Kendall's table for few readings", () => {
  it.each(EXACT)('n = $n, S = $s', ({ n, s, p }) => {
    const trend = trendOf(points(upTo(n), orderWithScore(n, s)));
    expect((trend?.tau ?? 0) * ((n * (n - 1)) / 2)).toBeCloseTo(s, 9);
    expect(Math.abs((trend?.pValue ?? 0) / 2 - p)).toBeLessThanOrEqual(0.0005);
  });
});

/** An order of 1 … n with a given score: the rising one with as many neighbours swapped as it takes. */
function orderWithScore(n: number, s: number): readonly number[] {
  const order = upTo(n).map((each) => each + 1);
  let swaps = ((n * (n - 1)) / 2 - s) / 2;
  for (let from = n - 1; swaps > 0; from -= 1) {
    for (let at = from; at > 0 && swaps > 0; at -= 1) {
      const [left = 0, right = 0] = [order[at - 1], order[at]];
      if (left > right) continue;
      order[at - 1] = right;
      order[at] = left;
      swaps -= 1;
    }
  }
  return order;
}
