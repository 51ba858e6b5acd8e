import type { SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** How hard an engine may be driven at a point of its running in. */
export interface CeilingPoint {
  /** Distance, hours or days from the first start. */
  readonly at: number;
  /** A share of the engine's limit speed. */
  readonly speedRatio: number | null;
  /** Where the limit speed is not known. */
  readonly speedRpm: number | null;
  /** A share of the boost it is to make in the end. */
  readonly boostRatio: number | null;
  readonly load: string;
}

export interface CeilingNow {
  readonly speedRatio: number | null;
  readonly speedRpm: number | null;
  readonly boostRatio: number | null;
  readonly load: string;
  /** The next point; null when the last is reached. */
  readonly until: CeilingPoint | null;
}

/**
 * The ceiling at a point between two of a plan: y = y₀ + (y₁ − y₀)·(x − x₀)/(x₁ − x₀) for speed and boost; the load is that
 * of the point before.
 *
 * Source: definition of a straight line (key DEFINITION); that ceilings rise in one is a convention of this plan. Valid:
 * points rising by `at`; before the first and after the last, theirs.
 * @returns null for a plan without ceilings.
 */
export function ceilingAt(points: readonly CeilingPoint[], at: number): CeilingNow | null {
  const before = points.findLast((point) => point.at <= at) ?? points[0];
  if (before === undefined) return null;
  const until = points.find((point) => point.at > at) ?? null;
  const share = until === null || until === before ? 0 : (at - before.at) / (until.at - before.at);
  const between = (from: number | null, to: number | null | undefined): number | null =>
    from === null || to === null || to === undefined ? from : from + (to - from) * Math.max(0, share);
  return {
    speedRatio: between(before.speedRatio, until?.speedRatio),
    speedRpm: between(before.speedRpm, until?.speedRpm),
    boostRatio: between(before.boostRatio, until?.boostRatio),
    load: before.load,
    until,
  };
}

/**
 * A share of the limit speed: n = f·n_max.
 *
 * Source: definition (key DEFINITION). Valid: limits of 500 to 25 000 rpm, shares 0 to 1.
 * @throws UserError 'out-of-range' outside it.
 */
export function shareOfSpeed({
  limitRpm,
  ratio,
}: {
  readonly limitRpm: number;
  readonly ratio: number;
}): number {
  requireRange(
    { what: 'The limit speed', value: limitRpm, min: 500, max: 25_000, unit: 'rpm' },
    { what: 'The share', value: ratio, min: 0, max: 1, unit: '', shown: 'percent' },
  );
  return limitRpm * ratio;
}

/** Down to what a needle shows, never up: nobody is to be allowed more for rounding. */
export const roundedDown = (rpm: number, step = 50): number => Math.floor(rpm / step + 1e-9) * step;

export const ceilingSheet: SumSheet = {
  title: 'How hard an engine may be driven while it is run in',
  formula: 'y = y₀ + (y₁ − y₀)·(x − x₀)/(x₁ − x₀); n = f·n_max',
  symbols: {
    x: 'distance, hours or days from the first start',
    y: 'share of limit speed or of boost',
    n: 'speed, rpm, rounded down to 50',
  },
  sources: ['DEFINITION', 'COMMON'],
  range: 'between the points of a plan; a straight line from one to the next is the convention here',
};
