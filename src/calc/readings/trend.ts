import type { SumSheet } from '../../core/calculation.ts';

/** A value at a time, in any units. */
export interface Point {
  readonly at: number;
  readonly value: number;
}

/** What the readings of a series do over time. */
export interface Trend {
  /** Change of the value for one unit of time: the median over all pairs. */
  readonly slope: number;
  /** Between these the slope lies with 90 % confidence. */
  readonly leastSlope: number;
  readonly mostSlope: number;
  /** The value on the line at time 0. */
  readonly intercept: number;
  /** Kendall's tau-a, −1 to 1. */
  readonly tau: number;
  /** How likely readings without any trend would look at least this much like one, 0 to 1. */
  readonly pValue: number;
  readonly count: number;
}

/** The exact distribution of S is used up to this many readings, where none are equal. */
const EXACT_TO = 40;
/** The 95th percentile of the normal distribution. */
const NORMAL_95 = 1.6448536269514722;

/**
 * Trend by Theil and Sen: b = median((yⱼ − yᵢ)/(tⱼ − tᵢ)), a = median(yᵢ − b·tᵢ), with Kendall's test of
 * S = Σ sign(yⱼ − yᵢ)·sign(tⱼ − tᵢ) against no trend.
 *
 * P is exact for up to 40 readings without ties, else normal with continuity correction and Var(S) corrected for ties
 * in values; the slope's limits are the ranked pair slopes M₁ = (N − C)/2 and M₂ = (N + C)/2, C = 1.645·√Var(S).
 * Source: Theil 1950, Sen 1968, Kendall 1975 as in Gilbert 1987, 16.4 and 17.3 (keys SEN, KENDALL, GILBERT); compared
 * with keys SCIPY and EPAG9S. Valid: any times; up to some thousand readings. Not for: readings that hang on one another, curves that turn.
 * @returns null for fewer than three readings or when all were taken at one time.
 */
export function trendOf(points: readonly Point[]): Trend | null {
  const slopes: number[] = [];
  let s = 0;
  for (const [index, later] of points.entries()) {
    for (const earlier of points.slice(0, index)) {
      const [rise, run] = [later.value - earlier.value, later.at - earlier.at];
      if (run === 0) continue;
      slopes.push(rise / run);
      s += Math.sign(rise) * Math.sign(run);
    }
  }
  const count = points.length;
  if (count < 3 || slopes.length === 0) return null;
  slopes.sort((a, b) => a - b);
  const slope = middleOf(slopes);
  const ties = tieSizes(points.map(({ value }) => value));
  const sameTime = tieSizes(points.map(({ at }) => at));
  const variance = varianceOfS(count, ties, sameTime);
  const tied = ties.length > 0 || sameTime.length > 0;
  const reach = NORMAL_95 * Math.sqrt(variance);
  return {
    slope,
    leastSlope: slopes[Math.max(Math.round((slopes.length - reach) / 2) - 1, 0)] ?? slope,
    mostSlope: slopes[Math.min(Math.round((slopes.length + reach) / 2), slopes.length - 1)] ?? slope,
    intercept: middleOf(points.map(({ at, value }) => value - slope * at).toSorted((a, b) => a - b)),
    tau: s / ((count * (count - 1)) / 2),
    pValue: !tied && count <= EXACT_TO ? exactPValue(s, count) : normalPValue(s, variance),
    count,
  };
}

/** @param sorted rising, not empty. */
function middleOf(sorted: readonly number[]): number {
  const half = sorted.length / 2;
  const upper = sorted[Math.floor(half)] ?? Number.NaN;
  return Number.isInteger(half) ? (upper + (sorted[half - 1] ?? Number.NaN)) / 2 : upper;
}

/** How many share a value, for each value that more than one has. */
function tieSizes(values: readonly number[]): readonly number[] {
  return [...Map.groupBy(values, (value) => value).values()].flatMap(({ length }) =>
    length > 1 ? [length] : [],
  );
}

/** Kendall 1975: Var(S) with ties in either variable. */
function varianceOfS(n: number, ties: readonly number[], times: readonly number[]): number {
  const sum = (sizes: readonly number[], of: (size: number) => number): number =>
    sizes.reduce((total, size) => total + of(size), 0);
  const whole = (t: number): number => t * (t - 1) * (2 * t + 5);
  const triple = (t: number): number => t * (t - 1) * (t - 2);
  const pair = (t: number): number => t * (t - 1);
  return (
    (whole(n) - sum(ties, whole) - sum(times, whole)) / 18 +
    (sum(ties, triple) * sum(times, triple)) / (9 * triple(n)) +
    (sum(ties, pair) * sum(times, pair)) / (2 * pair(n))
  );
}

/** Both sides of the exact distribution: S counts n(n−1)/2 less twice the inversions of a random order. */
function exactPValue(s: number, n: number): number {
  const shares = inversionShares(n);
  const inversions = (shares.length - 1 - Math.abs(s)) / 2;
  const tail = shares.slice(0, inversions + 1).reduce((sum, share) => sum + share, 0);
  return Math.min(1, 2 * tail);
}

const worked = new Map<number, readonly number[]>();

/** Which share of all orders of n things has 0, 1, 2 … inversions; worked out once for each n. */
function inversionShares(n: number): readonly number[] {
  const known = worked.get(n);
  if (known !== undefined) return known;
  const smaller = n < 2 ? [1] : inversionShares(n - 1);
  const shares = new Array<number>(smaller.length + Math.max(n - 1, 0)).fill(0);
  for (const [inversions, share] of smaller.entries()) {
    for (let more = 0; more < n; more += 1) {
      shares[inversions + more] = (shares[inversions + more] ?? 0) + share / n;
    }
  }
  worked.set(n, shares);
  return shares;
}

function normalPValue(s: number, variance: number): number {
  if (s === 0 || variance <= 0) return 1;
  return 2 * upperTail((Math.abs(s) - 1) / Math.sqrt(variance));
}

/** The share of a normal distribution above z ≥ 0, to 1e-7: Abramowitz and Stegun, 26.2.17. */
function upperTail(z: number): number {
  const t = 1 / (1 + 0.2316419 * z);
  const polynomial =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * polynomial;
}

/** Fewer say nothing: with four readings even a perfect order comes by chance one time in twelve. */
const LEAST_READINGS = 5;
const SURE_BELOW = 0.05;

/** Whether a trend may be spoken of: enough readings, one chance in twenty at most, and a slope that is not nothing. */
export function carries({ count, pValue, slope, leastSlope, mostSlope }: Trend): boolean {
  const oneSided = leastSlope > 0 || mostSlope < 0;
  return count >= LEAST_READINGS && pValue <= SURE_BELOW && slope !== 0 && oneSided;
}

export const trendSheet: SumSheet = {
  title: 'Trend of a reading',
  formula: 'b = median((yⱼ − yᵢ)/(tⱼ − tᵢ)); S = Σ sign(yⱼ − yᵢ), i < j',
  symbols: {
    b: "slope (Theil and Sen), in the reading's unit for a unit of time",
    y: 'readings taken under like conditions',
    t: 'when they were taken',
    S: "Kendall's score, tested against no trend",
  },
  sources: ['SEN', 'KENDALL', 'GILBERT'],
  range: 'five readings or more; said when no trend would look like it one time in twenty at most',
};
