import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

export interface CellCorrection {
  /** What the cell is to be multiplied by now, after the limit. */
  readonly multiplierRatio: number;
  /** What would bring it there in one go. */
  readonly fullMultiplierRatio: number;
  /** Whether the limit held it back. */
  readonly limited: boolean;
  /** Steps of the limit until it is there, if each reading says the same. */
  readonly steps: number;
}

/** What makes a sensor say lean or rich without the mixture being so. */
export const SENSOR_CAUTIONS: readonly string[] = [
  'Change nothing on a cold engine: warm-up enrichment is in the reading.',
  'The sensor needs its heater on for about half a minute, and a hot exhaust.',
  'Air drawn in before the sensor (joint, slip fit, air pump) reads lean.',
  'A misfire reads lean however rich it is: unburnt fuel leaves its oxygen behind.',
];

/**
 * What a cell of the fuel table is multiplied by to get from a measured λ to a wanted one: k = λ_measured/λ_wanted.
 *
 * A fuel table is taken as proportional to the fuel injected; the stoichiometric ratio cancels. Limited to a step so that
 * one bad reading cannot spoil a cell. Source: definition of λ (key HEYWOOD); the limit is common practice. Valid: λ 0.5 to
 * 1.6 on both sides. Not for: transients, or a loop that is correcting at the same time.
 * @throws UserError 'out-of-range' outside it.
 */
export function cellCorrection(reading: {
  readonly measuredLambdaRatio: number;
  readonly wantedLambdaRatio: number;
  /** Largest change in one go: 0.1 is 10 % either way. */
  readonly limitRatio: number;
}): Calculation<CellCorrection> {
  const { measuredLambdaRatio, wantedLambdaRatio, limitRatio } = reading;
  requireRange(
    { what: 'The measured λ', value: measuredLambdaRatio, min: 0.5, max: 1.6, unit: '' },
    { what: 'The wanted λ', value: wantedLambdaRatio, min: 0.5, max: 1.6, unit: '' },
    { what: 'The limit of one step', value: limitRatio * 100, min: 0.5, max: 50, unit: '%' },
  );
  const full = measuredLambdaRatio / wantedLambdaRatio;
  const multiplierRatio = Math.min(1 + limitRatio, Math.max(1 - limitRatio, full));
  const limited = multiplierRatio !== full;
  return {
    value: {
      multiplierRatio,
      fullMultiplierRatio: full,
      limited,
      steps: full === 1 ? 0 : Math.max(1, Math.ceil(Math.log(full) / Math.log(multiplierRatio) - 1e-9)),
    },
    assumptions: [
      'no other correction (closed loop, warm-up, air temperature) acts on the cell',
      `at most ${Number((limitRatio * 100).toFixed(1))} % in one step`,
    ],
    sources: ['HEYWOOD', 'COMMON'],
    caveats: SENSOR_CAUTIONS,
  };
}

export const cellCorrectionSheet: SumSheet = {
  title: 'Correction of a cell of the fuel table from λ',
  formula: 'k = λ_measured/λ_wanted, held within 1 ± limit',
  symbols: { k: 'multiplier of the cell', limit: 'largest change in one step' },
  sources: ['HEYWOOD', 'COMMON'],
  range: 'λ 0.5 to 1.6, warm engine, steady running, no misfire, no closed loop at work',
};
