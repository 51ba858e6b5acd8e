import { airDensity } from '../../calc/air/density.ts';
import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** The air in one cylinder and the fuel it is to get. */
export interface CylinderCharge {
  readonly cylinderL: number;
  /** Absolute, in the manifold. */
  readonly manifoldKpa: number;
  readonly chargeC: number;
  /** Volumetric efficiency, referred to the air in the manifold. */
  readonly veRatio: number;
  readonly lambdaRatio: number;
  readonly stoichiometricAfr: number;
}

/**
 * Fuel for one charge: m_a = VE·p·V/(R·T), m_f = m_a/(λ·AFR_st).
 *
 * Source: ideal gas and the definition of λ (keys HEYWOOD, ISO2533). Valid: cylinders of 0.02 to 5 L, VE 0.05 to 1.6, λ 0.5
 * to 1.6. Not for: exhaust gas left in the cylinder beyond what VE carries.
 * @throws UserError 'out-of-range' outside it.
 */
export function fuelForCharge(
  charge: CylinderCharge,
): Calculation<{ readonly airG: number; readonly fuelG: number }> {
  const { cylinderL, manifoldKpa, chargeC, veRatio, lambdaRatio, stoichiometricAfr } = charge;
  requireRange(
    { what: 'The cylinder', value: cylinderL, min: 0.02, max: 5, unit: 'L' },
    { what: 'The volumetric efficiency', value: veRatio, min: 0.05, max: 1.6, unit: '', shown: 'percent' },
    { what: 'λ', value: lambdaRatio, min: 0.5, max: 1.6, unit: '' },
    { what: 'The stoichiometric ratio', value: stoichiometricAfr, min: 0.5, max: 40, unit: ':1' },
  );
  const { densityKgM3 } = airDensity({ pressureKpa: manifoldKpa, temperatureC: chargeC }).value;
  const airG = veRatio * densityKgM3 * cylinderL;
  return {
    value: { airG, fuelG: airG / (lambdaRatio * stoichiometricAfr) },
    assumptions: [
      `VE ${Number((veRatio * 100).toFixed(1))} % referred to the manifold, ${Number(manifoldKpa.toFixed(1))} kPa absolute, charge at ${Number(chargeC.toFixed(1))} °C`,
    ],
    sources: ['HEYWOOD', 'ISO2533'],
    caveats: [],
  };
}

/**
 * Pulse that brings so much fuel: t = m_f/q_static + t_dead.
 *
 * Source: straight-line injector (keys HEYWOOD, COMMON). Valid: 0.1 mg to 1 g a shot. Not for: the curved part near the
 * smallest pulse.
 * @throws UserError 'out-of-range' outside it.
 */
export function pulseForFuel(shot: {
  readonly fuelG: number;
  readonly staticFlowGs: number;
  readonly deadTimeS: number;
}): Calculation<{ readonly effectiveS: number; readonly pulseS: number }> {
  const { fuelG, staticFlowGs, deadTimeS } = shot;
  requireRange(
    { what: 'The fuel of one shot', value: fuelG * 1000, min: 0.1, max: 1000, unit: 'mg' },
    { what: 'The injector', value: staticFlowGs, min: 0.1, max: 200, unit: 'g/s' },
    { what: 'The dead time', value: deadTimeS * 1000, min: 0, max: 10, unit: 'ms' },
  );
  const effectiveS = fuelG / staticFlowGs;
  return {
    value: { effectiveS, pulseS: effectiveS + deadTimeS },
    assumptions: [`dead time ${Number((deadTimeS * 1000).toFixed(3))} ms`],
    sources: ['HEYWOOD', 'COMMON'],
    caveats: [],
  };
}

export const injectorPulseSheet: SumSheet = {
  title: 'Pulse from the air in a cylinder',
  formula: 'm_f = VE·p·V/(R·T)/(λ·AFR_st); t = m_f/q_static + t_dead',
  symbols: {
    VE: 'volumetric efficiency referred to the manifold',
    'p, T': 'absolute pressure and temperature in the manifold',
    V: 'one cylinder, L',
    q_static: 'static flow, g/s',
    't, t_dead': 'pulse and dead time, s',
  },
  sources: ['HEYWOOD', 'ISO2533', 'COMMON'],
  range: 'cylinders of 0.02 to 5 L, λ 0.5 to 1.6, one shot per cycle',
};
