import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

/**
 * A gap or clearance as a share of a diameter: g = f·d, the same factor in mm/mm and in/in.
 *
 * Source: common practice, no source (key COMMON): rings 0.0040 to 0.0060 of the bore, plain bearings 0.00075 to 0.0012 of
 * the journal. Valid: factor 0.0002 to 0.02. The maker's figure outranks it.
 * @throws UserError 'out-of-range' outside it.
 */
export function clearanceByFactor(fit: {
  readonly diameterMm: number;
  readonly factorRatio: number;
}): Calculation<{ readonly clearanceMm: number }> {
  const { diameterMm, factorRatio } = fit;
  requireRange(
    { what: 'The diameter', value: diameterMm, min: 5, max: 400, unit: 'mm' },
    { what: 'The factor', value: factorRatio, min: 0.0002, max: 0.02, unit: '' },
  );
  return {
    value: { clearanceMm: diameterMm * factorRatio },
    assumptions: [`${sayNumber(factorRatio)} of the diameter: common practice, no source`],
    sources: ['COMMON'],
    caveats: ['The figure of the maker of the ring, bearing or piston outranks this one.'],
  };
}

export const clearanceByFactorSheet: SumSheet = {
  title: 'Gap or clearance as a share of a diameter',
  formula: 'g = f·d',
  symbols: { g: 'gap or diametral clearance, mm', f: 'factor, mm/mm', d: 'bore or journal, mm' },
  sources: ['COMMON'],
  range: 'factor 0.0002 to 0.02; common practice',
};

/**
 * Growth of a part as it warms: Δd = α·d·ΔT.
 *
 * Source: linear expansion; aluminium–silicon piston alloys 18 to 23 ·10⁻⁶ 1/K (key MEM). Valid: α 1 to 40 ·10⁻⁶ 1/K,
 * ΔT −300 to 600 K. Not for: a piston's shape, which is not round and not evenly warm.
 * @throws UserError 'out-of-range' outside it.
 */
export function thermalGrowth(part: {
  readonly diameterMm: number;
  readonly expansionPerK: number;
  readonly riseK: number;
}): Calculation<{ readonly growthMm: number }> {
  const { diameterMm, expansionPerK, riseK } = part;
  requireRange(
    { what: 'The diameter', value: diameterMm, min: 1, max: 1000, unit: 'mm' },
    { what: 'The expansion', value: expansionPerK, min: 1e-6, max: 40e-6, unit: '1/K' },
    { what: 'The rise in temperature', value: riseK, min: -300, max: 600, unit: 'K' },
  );
  return {
    value: { growthMm: diameterMm * expansionPerK * riseK },
    assumptions: [`expansion ${(expansionPerK * 1e6).toFixed(1)}·10⁻⁶ 1/K`],
    sources: ['MEM'],
    caveats: [],
  };
}

export const thermalGrowthSheet: SumSheet = {
  title: 'Thermal growth of a diameter',
  formula: 'Δd = α·d·ΔT',
  symbols: { Δd: 'growth, mm', α: 'linear expansion, 1/K', d: 'diameter, mm', ΔT: 'rise, K' },
  sources: ['MEM'],
  range: 'evenly warm, round parts',
};
