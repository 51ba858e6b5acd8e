import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';

/** What a cylinder's compression points to. `shared` is a gasket burnt through between two neighbours. */
export type WetFinding = 'sound' | 'rings' | 'valves or gasket' | 'shared';

export interface WetCylinder {
  readonly riseRatio: number;
  readonly finding: WetFinding;
}

/** Oil seals and fills: a wet reading this far below the dry one was not taken alike. */
const FALLS = 0.05;

/**
 * A compression test dry and with a spoon of oil in each cylinder: rise r = p_wet/p_dry − 1.
 *
 * A weak cylinder whose reading rises with oil leaks past its rings; one that does not, at a valve, its seat or the gasket;
 * two weak neighbours in a row that do not, most likely through the gasket between them.
 * Source: common practice, no source (key COMMON), the rise of 10 % with it. Valid: as many wet as dry readings, dry ones above
 * 0. Not for: engines whose cylinders lie so that the oil does not reach the rings all round (flat engines).
 * @throws UserError 'bad-input' for another count; 'out-of-range' for a dry reading of nothing.
 */
export function compareWet(test: {
  readonly dryKpa: readonly number[];
  readonly wetKpa: readonly number[];
  /** Below the best dry reading by more than this, a cylinder is weak. */
  readonly limitRatio: number;
  readonly riseRatio: number;
}): Calculation<readonly WetCylinder[]> {
  const { dryKpa, wetKpa, limitRatio, riseRatio } = test;
  if (wetKpa.length !== dryKpa.length) {
    throw new UserError(
      'bad-input',
      `There are ${dryKpa.length} dry readings and ${wetKpa.length} wet ones: give one of each for every cylinder, in order.`,
    );
  }
  for (const value of dryKpa) requireRange({ what: 'A dry reading', value, min: 1, max: 4000, unit: 'kPa' });
  const best = Math.max(...dryKpa);
  const weak = dryKpa.map((each) => (best - each) / best > limitRatio);
  const rises = dryKpa.map((each, index) => (wetKpa[index] ?? each) / each - 1);
  const tight = (index: number): boolean => weak[index] === true && (rises[index] ?? 0) < riseRatio;
  return {
    value: rises.map((rise, index) => ({ riseRatio: rise, finding: findingAt(index) })),
    assumptions: [
      `a rise of ${Math.round(riseRatio * 100)} % with a spoon of oil points to the rings (common practice)`,
    ],
    sources: ['COMMON'],
    caveats: rises.some((rise) => rise < -FALLS)
      ? [
          'A reading that falls with oil is a slip, or the battery fading: charge it and take that cylinder again.',
        ]
      : [],
  };

  function findingAt(index: number): WetFinding {
    if (weak[index] !== true) return 'sound';
    if (!tight(index)) return 'rings';
    return tight(index - 1) || tight(index + 1) ? 'shared' : 'valves or gasket';
  }
}

export const compareWetSheet: SumSheet = {
  title: 'Wet against dry compression',
  formula: 'r = p_wet/p_dry − 1',
  symbols: { r: 'rise with a spoon of oil', 'p_wet, p_dry': 'readings of one cylinder' },
  sources: ['COMMON'],
  range: 'common practice; a rise of 10 % points to the rings; not for flat engines',
};
