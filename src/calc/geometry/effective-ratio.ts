import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/**
 * A number to compare boosted engines by: CR_eff = CR · (p_atm + p_boost)/p_atm.
 *
 * Source: common practice, no source (key COMMON). Valid: CR 3 to 25, boost 0 to 500 kPa. Not for: predicting knock: charge
 * temperature, fuel, chamber and spark decide that, and none of them is in it.
 * @throws UserError 'out-of-range' outside it.
 */
export function effectiveRatio(boosted: {
  readonly compressionRatio: number;
  readonly boostKpa: number;
  readonly atmosphereKpa: number;
}): Calculation<{ readonly effectiveRatio: number }> {
  const { compressionRatio, boostKpa, atmosphereKpa } = boosted;
  requireRange(
    { what: 'The compression ratio', value: compressionRatio, min: 3, max: 25, unit: '' },
    { what: 'The boost', value: boostKpa, min: 0, max: 500, unit: 'kPa' },
    { what: 'The atmospheric pressure', value: atmosphereKpa, min: 50, max: 110, unit: 'kPa' },
  );
  return {
    value: { effectiveRatio: (compressionRatio * (atmosphereKpa + boostKpa)) / atmosphereKpa },
    assumptions: ['common practice, no source: CR times absolute pressure ratio'],
    sources: ['COMMON'],
    caveats: [
      'It only compares one build with another; knock is decided by charge temperature, fuel and spark. Log knock on the engine.',
    ],
  };
}

export const effectiveRatioSheet: SumSheet = {
  title: 'Effective compression ratio with boost',
  formula: 'CR_eff = CR · (p_atm + p_boost)/p_atm',
  symbols: { CR: 'static compression ratio', p_atm: 'air pressure outside, kPa', p_boost: 'boost, kPa' },
  sources: ['COMMON'],
  range: 'a comparison number, common practice; says nothing of knock by itself',
};
