import type { SumSheet } from '../../core/calculation.ts';

/** When something is to arrive, in days from today. */
export interface Arriving {
  /** Not before. */
  readonly least: number;
  /** As likely earlier as later. */
  readonly likely: number;
  /** Nine of ten by then. */
  readonly late: number;
}

/**
 * The day on which it is here when `share` of all such arrivals are earlier: straight lines from the least day at 0 over
 * the likely day at 0.5 to the late day at 0.9, and on at the same rate to 1. In whole days from today, never before today.
 *
 * Our own reading of three figures, no source (key COMMON). Valid: least ≤ likely ≤ late, 0 ≤ share < 1.
 */
export function arrivalDay({ least, likely, late }: Arriving, share: number): number {
  const day =
    share < 0.5 ? least + (likely - least) * (share / 0.5) : likely + (late - likely) * ((share - 0.5) / 0.4);
  return Math.max(0, Math.round(day));
}

export const arrivalSheet: SumSheet = {
  title: 'The day something arrives, as a range',
  formula: 'd(0) = least, d(0.5) = likely, d(0.9) = late, straight between and on to d(1)',
  symbols: {
    d: 'day by which this share of such arrivals is here',
    late: 'day by which nine of ten are here',
  },
  sources: ['COMMON'],
  range: 'least ≤ likely ≤ late; one arrival does not make another later',
};
