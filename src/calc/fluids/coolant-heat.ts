import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/**
 * Heat that coolant carries: P = ρ·Q·c·ΔT.
 *
 * Source: balance of energy (key DEFINITION). Valid: 0.1 to 1000 L/min, 0.1 to 80 K.
 * @throws UserError 'out-of-range' outside it.
 */
export function coolantHeat(flow: {
  readonly flowLMin: number;
  readonly riseK: number;
  readonly densityKgM3: number;
  readonly heatKjKgK: number;
}): Calculation<{ readonly powerKw: number }> {
  const { flowLMin, riseK, densityKgM3, heatKjKgK } = flow;
  requireRange(
    { what: 'The flow', value: flowLMin, min: 0.1, max: 1000, unit: 'L/min' },
    { what: 'The rise', value: riseK, min: 0.1, max: 80, unit: 'K' },
    { what: 'The density', value: densityKgM3, min: 700, max: 1200, unit: 'kg/m³' },
    { what: 'The specific heat', value: heatKjKgK, min: 1, max: 4.3, unit: 'kJ/(kg·K)' },
  );
  return {
    value: { powerKw: ((densityKgM3 * flowLMin) / 60_000) * heatKjKgK * riseK },
    assumptions: [`${densityKgM3} kg/m³ and ${heatKjKgK} kJ/(kg·K)`],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

export const coolantHeatSheet: SumSheet = {
  title: 'Heat carried by coolant or oil',
  formula: 'P = ρ·Q·c·ΔT',
  symbols: { P: 'heat, kW', Q: 'flow, L/min', c: 'specific heat, kJ/(kg·K)', ΔT: 'rise, K' },
  sources: ['DEFINITION'],
  range: 'any liquid that does not boil',
};
