import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

/**
 * Air through a measuring orifice in the wall of an air box: ṁ = C_d · A · √(2·Δp·ρ).
 *
 * Source: incompressible orifice equation (key ICTEXT). Valid: Δp up to 2 % of the pressure, where compressibility stays
 * under 1 %. Not for: pulsating flow without a box big enough to smooth it.
 * @throws UserError 'out-of-range' outside it.
 */
export function orificeAirFlow(orifice: {
  readonly diameterMm: number;
  readonly dischargeRatio: number;
  readonly dropKpa: number;
  readonly densityKgM3: number;
}): Calculation<{ readonly massFlowGs: number }> {
  const { diameterMm, dischargeRatio, dropKpa, densityKgM3 } = orifice;
  requireRange(
    { what: 'The orifice', value: diameterMm, min: 1, max: 500, unit: 'mm' },
    { what: 'The discharge coefficient', value: dischargeRatio, min: 0.3, max: 1, unit: '' },
    { what: 'The pressure drop', value: dropKpa, min: 0, max: 2, unit: 'kPa' },
    { what: 'The density', value: densityKgM3, min: 0.1, max: 10, unit: 'kg/m³' },
  );
  const areaM2 = (Math.PI / 4) * (diameterMm / 1000) ** 2;
  return {
    value: { massFlowGs: 1000 * dischargeRatio * areaM2 * Math.sqrt(2 * dropKpa * 1000 * densityKgM3) },
    assumptions: [`discharge coefficient ${sayNumber(dischargeRatio)}`],
    sources: ['ICTEXT'],
    caveats: [],
  };
}

export const orificeAirFlowSheet: SumSheet = {
  title: 'Air flow through a measuring orifice',
  formula: 'ṁ = C_d · A · √(2·Δp·ρ)',
  symbols: {
    C_d: 'discharge coefficient',
    A: 'area, m²',
    Δp: 'pressure drop, Pa',
    ρ: 'density of the air, kg/m³',
  },
  sources: ['ICTEXT'],
  range: 'drop up to 2 kPa',
};
