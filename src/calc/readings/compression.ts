import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { STANDARD_PRESSURE_KPA } from '../air/constants.ts';
import { requireRange } from '../require-range.ts';

/** A compression test: how even the cylinders are. Cylinders count from 1. */
export interface CompressionSpread {
  /** (highest − lowest)/highest. */
  readonly spreadRatio: number;
  readonly meanKpa: number;
  readonly weakest: number;
  readonly strongest: number;
  readonly withinLimit: boolean;
  /** Each below the highest, as a share of it. */
  readonly belowRatios: readonly number[];
}

/**
 * Spread of a compression test: s = (p_max − p_min)/p_max, against a limit.
 *
 * Source: arithmetic; a limit of 10 % is common practice, no source, and some service handbooks take 25 % (key COMMON). Valid:
 * 2 to 16 readings of 50 to 4000 kPa, taken alike: warm, throttle open, all plugs out, a charged battery. Not for: whether
 * the engine is good as such; worn evenly, it reads evenly.
 * @throws UserError 'bad-input' for another count, 'out-of-range' outside it.
 */
export function compressionSpread(test: {
  readonly readingsKpa: readonly number[];
  readonly limitRatio: number;
}): Calculation<CompressionSpread> {
  const { readingsKpa, limitRatio } = test;
  if (readingsKpa.length < 2 || readingsKpa.length > 16) {
    throw new UserError(
      'bad-input',
      'A compression test is two to 16 readings, one for each cylinder in order.',
    );
  }
  for (const value of readingsKpa) requireRange({ what: 'A reading', value, min: 0, max: 4000, unit: 'kPa' });
  requireRange({ what: 'The limit', value: limitRatio, min: 0.01, max: 0.5, unit: '', shown: 'percent' });
  const most = Math.max(...readingsKpa);
  requireRange({ what: 'The best reading', value: most, min: 50, max: 4000, unit: 'kPa' });
  const least = Math.min(...readingsKpa);
  const spreadRatio = (most - least) / most;
  return {
    value: {
      spreadRatio,
      meanKpa: readingsKpa.reduce((sum, each) => sum + each, 0) / readingsKpa.length,
      weakest: readingsKpa.indexOf(least) + 1,
      strongest: readingsKpa.indexOf(most) + 1,
      withinLimit: spreadRatio <= limitRatio,
      belowRatios: readingsKpa.map((each) => (most - each) / most),
    },
    assumptions: ['all taken alike: warm, throttle wide open, all plugs out, battery charged'],
    sources: ['COMMON'],
    caveats: [],
  };
}

export const compressionSpreadSheet: SumSheet = {
  title: 'Spread of a compression test',
  formula: 's = (p_max − p_min)/p_max',
  symbols: { s: 'spread', 'p_max, p_min': 'highest and lowest cylinder, by gauge' },
  sources: ['COMMON'],
  range: '2 to 16 cylinders taken alike; a limit of 10 % is common practice, some handbooks take 25 %',
};

/**
 * What a compression gauge would read under another air pressure: p₂ = (p₁ + p_a1)·p_a2/p_a1 − p_a2.
 *
 * Source: ideal compression at a fixed ratio, first order; absolute pressures go with the air outside (key DEFINITION).
 * Valid: readings of 0 to 4000 kPa by gauge, air of 50 to 110 kPa. Not for: another temperature or cranking speed.
 * @throws UserError 'out-of-range' outside it.
 */
export function compressionAtBarometer(test: {
  readonly readingKpa: number;
  readonly fromKpa: number;
  readonly toKpa: number;
}): Calculation<{ readonly expectedKpa: number }> {
  const { readingKpa, fromKpa, toKpa } = test;
  requireRange(
    { what: 'The reading', value: readingKpa, min: 0, max: 4000, unit: 'kPa' },
    { what: 'The air pressure', value: fromKpa, min: 50, max: 110, unit: 'kPa' },
    { what: 'The air pressure', value: toKpa, min: 50, max: 110, unit: 'kPa' },
  );
  return {
    value: { expectedKpa: ((readingKpa + fromKpa) * toKpa) / fromKpa - toKpa },
    assumptions: ['a reading goes with the absolute air pressure; same temperature and cranking speed'],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

/** The same at sea level, where makers give theirs. @throws UserError as compressionAtBarometer. */
export const compressionAtSeaLevel = (
  readingKpa: number,
  atmosphereKpa: number,
): Calculation<{ readonly expectedKpa: number }> =>
  compressionAtBarometer({ readingKpa, fromKpa: atmosphereKpa, toKpa: STANDARD_PRESSURE_KPA });

export const compressionAtBarometerSheet: SumSheet = {
  title: 'Compression under another air pressure',
  formula: 'p₂ = (p₁ + p_a1)·p_a2/p_a1 − p_a2',
  symbols: { 'p₁, p₂': 'gauge readings, kPa', 'p_a1, p_a2': 'air pressure, kPa absolute' },
  sources: ['DEFINITION'],
  range: 'first order; same temperature and cranking speed; air of 50 to 110 kPa',
};
