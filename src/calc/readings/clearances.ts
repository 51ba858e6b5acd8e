import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';
import type { Standing } from './limit.ts';

/** What a clearance should lie between: lengths somebody gave, or shares of the hole or shaft. */
export type ClearanceLimit =
  | { readonly kind: 'length'; readonly minMm: number; readonly maxMm: number }
  | { readonly kind: 'share'; readonly minRatio: number; readonly maxRatio: number };

export interface ClearanceFound {
  readonly holeMm: number;
  readonly shaftMm: number;
  readonly clearanceMm: number;
  /** Of the shaft. */
  readonly shareRatio: number;
  readonly minMm: number;
  readonly maxMm: number;
  readonly standing: Standing;
}

/** A tenth of the last digit a micrometer shows: what stands on a limit is within it. */
const SLACK_MM = 0.0001;

/**
 * Measured clearances of a row of pairs: c = D − d, each against a limit.
 *
 * Source: definition (key DEFINITION). Valid: 2 to 16 holes or one for all, 5 to 400 mm across, measured at the same temperature.
 * Not for: parts out of round or tapered: measure each across both ways and take the tightest.
 * @throws UserError 'bad-input' for rows of different length, 'out-of-range' outside it, or for a shaft larger than its hole by
 * more than 0.5 mm.
 */
export function measuredClearances(fit: {
  readonly holesMm: readonly number[];
  readonly shaftsMm: readonly number[];
  readonly limit: ClearanceLimit;
}): Calculation<readonly ClearanceFound[]> {
  const { holesMm, shaftsMm, limit } = fit;
  const count = Math.max(holesMm.length, shaftsMm.length);
  if (![1, count].includes(holesMm.length) || ![1, count].includes(shaftsMm.length) || count > 16) {
    throw new UserError(
      'bad-input',
      `There are ${holesMm.length} and ${shaftsMm.length} measurements: give one of each for every place in order, at most 16, or one for all.`,
    );
  }
  const rows = Array.from({ length: count }, (_, index) => {
    const holeMm = holesMm[index] ?? holesMm[0] ?? Number.NaN;
    const shaftMm = shaftsMm[index] ?? shaftsMm[0] ?? Number.NaN;
    requireRange(
      { what: 'A bore', value: holeMm, min: 5, max: 400, unit: 'mm' },
      { what: 'A journal or piston', value: shaftMm, min: 5, max: 400, unit: 'mm' },
      { what: 'A clearance', value: holeMm - shaftMm, min: -0.5, max: 5, unit: 'mm' },
    );
    return judged(holeMm, shaftMm, limit);
  });
  return {
    value: rows,
    assumptions: ['all measured at one temperature'],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

function judged(holeMm: number, shaftMm: number, limit: ClearanceLimit): ClearanceFound {
  const clearanceMm = holeMm - shaftMm;
  const [minMm, maxMm] =
    limit.kind === 'length'
      ? [limit.minMm, limit.maxMm]
      : [limit.minRatio * shaftMm, limit.maxRatio * shaftMm];
  const standing = clearanceMm < minMm - SLACK_MM ? 'low' : clearanceMm > maxMm + SLACK_MM ? 'high' : 'ok';
  return { holeMm, shaftMm, clearanceMm, shareRatio: clearanceMm / shaftMm, minMm, maxMm, standing };
}

export const measuredClearancesSheet: SumSheet = {
  title: 'Measured clearance of bearings and pistons',
  formula: 'c = D − d',
  symbols: { c: 'diametral clearance, mm', D: 'bore, mm', d: 'journal or piston, mm' },
  sources: ['DEFINITION'],
  range: 'round parts at one temperature; usual limits are shares of the journal or piston, common practice',
};
