import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

export interface Matching {
  readonly meanCcMin: number;
  /** (largest − smallest)/mean. */
  readonly spreadRatio: number;
  /** Each against the mean, above 0 rich. */
  readonly offRatios: readonly number[];
  /** What each cylinder's fuel would be multiplied by to make them equal. */
  readonly trimRatios: readonly number[];
  /** Counted from 1, in the order given: the cylinder that leans and the one that runs rich. */
  readonly leanest: number;
  readonly richest: number;
}

/** Spreads up to which a set is called matched, and up to which it can be used. */
export interface MatchLimits {
  readonly matchedRatio: number;
  readonly usableRatio: number;
}

/**
 * A set of injectors from bench flows: spread = (max − min)/mean, trim_i = mean/q_i, λ_i = λ·mean/q_i.
 *
 * Source: definitions; limits are common practice (key COMMON). Valid: 2 to 32 flows measured with the same fluid and
 * pressure. Not for: short pulses, where injectors of equal static flow still differ by their dead times.
 * @throws UserError 'bad-input' for one flow alone, 'out-of-range' outside 1 to 10 000.
 */
export function matchInjectors(
  flowsCcMin: readonly number[],
  { matchedRatio, usableRatio }: MatchLimits,
): Calculation<Matching> {
  if (flowsCcMin.length < 2 || flowsCcMin.length > 32) {
    throw new UserError('bad-input', 'A set is two to 32 flows, one for each cylinder in order.');
  }
  for (const value of flowsCcMin)
    requireRange({ what: 'A flow', value, min: 1, max: 10_000, unit: 'cc/min' });
  const meanCcMin = flowsCcMin.reduce((sum, flow) => sum + flow, 0) / flowsCcMin.length;
  const [least, most] = [Math.min(...flowsCcMin), Math.max(...flowsCcMin)];
  const spreadRatio = (most - least) / meanCcMin;
  return {
    value: {
      meanCcMin,
      spreadRatio,
      offRatios: flowsCcMin.map((flow) => flow / meanCcMin - 1),
      trimRatios: flowsCcMin.map((flow) => meanCcMin / flow),
      leanest: flowsCcMin.indexOf(least) + 1,
      richest: flowsCcMin.indexOf(most) + 1,
    },
    assumptions: [
      'measured fully open, same fluid, same pressure',
      `matched within ${sayNumber(matchedRatio * 100)} %, usable within ${sayNumber(usableRatio * 100)} %, common practice`,
    ],
    sources: ['COMMON'],
    caveats:
      spreadRatio > usableRatio
        ? [
            'One λ sensor for all cylinders shows the mean: the leanest can knock while the reading looks right.',
          ]
        : [],
  };
}

export const matchInjectorsSheet: SumSheet = {
  title: 'Matching a set of injectors from bench flows',
  formula: 'spread = (max − min)/mean; trim_i = mean/q_i',
  symbols: { q_i: 'flow of each injector, cc/min', trim_i: 'multiplier of that cylinder' },
  sources: ['COMMON'],
  range: '2 to 32 flows with one fluid at one pressure',
};
