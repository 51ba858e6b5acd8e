import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

export interface BrakeFluid {
  readonly id: string;
  readonly dryC: number;
  readonly wetC: number;
}

export type BrakeVerdict = 'as new' | 'ageing' | 'change it now';

/**
 * What a measured boiling point says of brake fluid: at or above the dry limit as new, below the wet limit past use.
 *
 * Source: FMVSS 116, least equilibrium reflux boiling points dry and with 3.7 % water (key FMVSS116). Valid: 80 to 350 °C, by
 * a tester that boils a sample.
 * @throws UserError 'out-of-range' outside it.
 */
export function judgeBrakeFluid(
  fluid: BrakeFluid,
  { boilingC }: { readonly boilingC: number },
): Calculation<{ readonly verdict: BrakeVerdict }> {
  requireRange({ what: 'The boiling point', value: boilingC, min: 80, max: 350, unit: '°C' });
  const verdict = boilingC >= fluid.dryC ? 'as new' : boilingC >= fluid.wetC ? 'ageing' : 'change it now';
  return {
    value: { verdict },
    assumptions: ['measured by boiling a sample'],
    sources: ['FMVSS116'],
    caveats: BRAKE_CAUTION,
  };
}

/** Said with every answer about brake fluid. */
export const BRAKE_CAUTION: readonly string[] = [
  'Brakes are work for somebody qualified. Use the grade the maker names, never DOT 5 (silicone) in place of another, and only from a sealed bottle.',
];

export const brakeFluidSheet: SumSheet = {
  title: 'Brake fluid by its boiling point',
  formula: 'boiling point ≥ dry limit: as new; ≥ wet limit: ageing; below: change it',
  symbols: { 'dry limit': 'least of new fluid, °C', 'wet limit': 'least with 3.7 % water, °C' },
  sources: ['FMVSS116'],
  range: 'DOT 3, 4, 5 and 5.1',
};
