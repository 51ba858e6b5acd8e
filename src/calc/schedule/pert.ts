import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** How long something takes: hardly less, most likely, hardly more; all in one unit. */
export interface ThreePoints {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
}

/**
 * Mean and variance of a three-point estimate: μ = (a + 4m + b)/6, σ² = ((b − a)/6)².
 *
 * Source: Malcolm, Roseboom, Clark and Fazar 1959 (key MALCOLM). The variance is the usual rule, not that of the beta
 * distribution the mean belongs to. Unit as given, the variance in its square. Valid: 0 ≤ a ≤ m ≤ b.
 * @throws UserError 'out-of-range' when they are not in this order.
 */
export function threePointEstimate({ least, likely, most }: ThreePoints): Calculation<{
  readonly mean: number;
  readonly variance: number;
}> {
  requireRange(
    { what: 'The likely time', value: likely, min: least, max: most, unit: '' },
    { what: 'The least time', value: least, min: 0, max: Number.MAX_VALUE, unit: '' },
  );
  return {
    value: { mean: (least + 4 * likely + most) / 6, variance: ((most - least) / 6) ** 2 },
    assumptions: ['a beta distribution with its mode at the likely time'],
    sources: ['MALCOLM'],
    caveats: [],
  };
}

export const threePointSheet: SumSheet = {
  title: 'A time given as least, likely and most',
  formula: 'μ = (a + 4m + b)/6, σ² = ((b − a)/6)²',
  symbols: { a: 'least time', m: 'likely time', b: 'most time', μ: 'mean, same unit', 'σ²': 'variance' },
  sources: ['MALCOLM'],
  range: 'a ≤ m ≤ b; the variance is a rule of thumb',
};

/** Steps of the density when its area is added up, and of the table made of it. */
const FINE = 1024;
const COARSE = 256;

/** The shares of the span from least to most below which each 256th of such times lies. */
export type Quantiles = Float64Array;

/**
 * The beta distribution of a three-point estimate with its quantiles as a table: α = 1 + 4(m − a)/(b − a),
 * β = 1 + 4(b − m)/(b − a), so that its mean is (a + 4m + b)/6.
 *
 * Source: Clark 1962 (key CLARK). Valid: 0 ≤ position ≤ 1, position = (m − a)/(b − a). Error of the mean below 0.05 % of
 * the span.
 */
export function pertQuantiles(position: number): Quantiles {
  const [left, right] = [4 * position, 4 * (1 - position)];
  const area = new Float64Array(FINE + 1);
  for (let step = 1; step <= FINE; step += 1) {
    const x = (step - 0.5) / FINE;
    area[step] = (area[step - 1] ?? 0) + x ** left * (1 - x) ** right;
  }
  const all = area[FINE] ?? 1;
  let step = 0;
  /** Shares are asked for from small to large. */
  const quantile = (share: number): number => {
    const wanted = share * all;
    while ((area[step + 1] ?? all) < wanted) step += 1;
    const [below, above] = [area[step] ?? 0, area[step + 1] ?? all];
    return (step + (wanted - below) / (above - below)) / FINE;
  };
  const table = new Float64Array(COARSE + 1);
  const early = quantile(0.5 / COARSE);
  for (let at = 1; at < COARSE; at += 1) table[at] = quantile(at / COARSE);
  const late = quantile(1 - 0.5 / COARSE);
  // a straight line to the very end would make the tail twice as heavy: it goes through the middle of its piece instead
  table[0] = Math.max(0, 2 * early - (table[1] ?? 0));
  table[COARSE] = Math.min(1, 2 * late - (table[COARSE - 1] ?? 1));
  return table;
}

/** The time below which this share of them lies, 0 ≤ share < 1; straight between the places of the table. */
export function pertTime({ least, most }: ThreePoints, quantiles: Quantiles, share: number): number {
  const at = share * COARSE;
  const step = Math.floor(at);
  const below = quantiles[step] ?? 0;
  return least + (most - least) * (below + (at - step) * ((quantiles[step + 1] ?? 1) - below));
}

/** Where the likely time lies between least and most, 0 to 1; the middle when all three are the same. */
export function positionOf({ least, likely, most }: ThreePoints): number {
  return most > least ? (likely - least) / (most - least) : 0.5;
}
