import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/**
 * Pressure across the injector: Δp = p_rail − p_manifold, and with a 1:1 referenced regulator p_rail = p_base + p_manifold.
 *
 * All gauge pressures; a manifold below the atmosphere is negative. Source: definition (key ORIFICE). Valid: base 50 to
 * 2000 kPa, manifold −100 to 500 kPa. Not for: a pump that cannot hold the pressure.
 * @throws UserError 'out-of-range' outside it, or when nothing is left across the injector.
 */
export function pressureAcrossInjector(rail: {
  /** At the rail with no boost and no vacuum. */
  readonly baseKpa: number;
  readonly manifoldKpa: number;
  /** Whether the regulator follows the manifold, 1:1. */
  readonly referenced: boolean;
}): Calculation<{ readonly railKpa: number; readonly acrossKpa: number }> {
  const { baseKpa, manifoldKpa, referenced } = rail;
  requireRange(
    { what: 'The base pressure', value: baseKpa, min: 50, max: 2000, unit: 'kPa' },
    { what: 'The manifold pressure', value: manifoldKpa, min: -100, max: 500, unit: 'kPa gauge' },
  );
  const railKpa = referenced ? baseKpa + manifoldKpa : baseKpa;
  const acrossKpa = railKpa - manifoldKpa;
  requireRange({
    what: 'The pressure across the injector',
    value: acrossKpa,
    min: 10,
    max: 2200,
    unit: 'kPa',
  });
  return {
    value: { railKpa, acrossKpa },
    assumptions: [
      referenced
        ? 'regulator follows the manifold 1:1'
        : 'regulator not connected to the manifold: the rail stays where it is',
    ],
    sources: ['ORIFICE'],
    caveats:
      !referenced && manifoldKpa > 0
        ? ['Without manifold reference the flow falls as boost rises, when most is needed.']
        : [],
  };
}

export const pressureAcrossSheet: SumSheet = {
  title: 'Rail pressure and pressure across the injector',
  formula: 'Δp = p_rail − p_manifold; referenced 1:1: p_rail = p_base + p_manifold',
  symbols: {
    p_rail: 'rail, kPa gauge',
    p_manifold: 'manifold, kPa gauge',
    p_base: 'rail at no boost, kPa gauge',
  },
  sources: ['ORIFICE'],
  range: 'base 50 to 2000 kPa, manifold −100 to 500 kPa gauge',
};

/**
 * Injector flow at another pressure: q₂ = q₁·√(Δp₂/Δp₁).
 *
 * Source: orifice equation (Bernoulli with a constant discharge coefficient; key ORIFICE). Valid: 10 to 2200 kPa across the
 * injector. Not for: an injector that no longer opens, which many do not above 6 to 8 bar; a caveat says so.
 * @throws UserError 'out-of-range' outside it.
 */
export function flowAtPressure(injector: {
  readonly flowCcMin: number;
  readonly ratedKpa: number;
  readonly acrossKpa: number;
}): Calculation<{ readonly flowCcMin: number }> {
  const { flowCcMin, ratedKpa, acrossKpa } = injector;
  requireRange(flowLimits(flowCcMin), pressureLimits(ratedKpa), pressureLimits(acrossKpa));
  return {
    value: { flowCcMin: flowCcMin * Math.sqrt(acrossKpa / ratedKpa) },
    assumptions: [],
    sources: ['ORIFICE'],
    caveats: highPressure(acrossKpa),
  };
}

/**
 * Pressure across an injector for a wanted flow: Δp₂ = Δp₁·(q₂/q₁)², the inverse of flowAtPressure.
 *
 * @throws UserError 'out-of-range' as flowAtPressure, or when the pressure would be outside it.
 */
export function pressureForFlow(injector: {
  readonly flowCcMin: number;
  readonly ratedKpa: number;
  readonly wantedCcMin: number;
}): Calculation<{ readonly acrossKpa: number }> {
  const { flowCcMin, ratedKpa, wantedCcMin } = injector;
  requireRange(flowLimits(flowCcMin), flowLimits(wantedCcMin), pressureLimits(ratedKpa));
  const acrossKpa = ratedKpa * (wantedCcMin / flowCcMin) ** 2;
  requireRange({ what: 'The pressure that this needs', value: acrossKpa, min: 10, max: 2200, unit: 'kPa' });
  return { value: { acrossKpa }, assumptions: [], sources: ['ORIFICE'], caveats: highPressure(acrossKpa) };
}

/**
 * Flow with a fluid of another density, as between a flow bench and the tank: q₂ = q₁·√(ρ₁/ρ₂), by mass √(ρ₂/ρ₁).
 *
 * Source: as flowAtPressure (key ORIFICE). Valid: 400 to 1300 kg/m³. Not for: differences of viscosity.
 * @throws UserError 'out-of-range' outside it.
 */
export function flowOfFluid(injector: {
  readonly flowCcMin: number;
  readonly testDensityKgM3: number;
  readonly fuelDensityKgM3: number;
}): Calculation<{ readonly flowCcMin: number; readonly massRatio: number }> {
  const { flowCcMin, testDensityKgM3, fuelDensityKgM3 } = injector;
  requireRange(
    flowLimits(flowCcMin),
    { what: 'The density on the bench', value: testDensityKgM3, min: 400, max: 1300, unit: 'kg/m³' },
    { what: 'The density of the fuel', value: fuelDensityKgM3, min: 400, max: 1300, unit: 'kg/m³' },
  );
  const massRatio = Math.sqrt(fuelDensityKgM3 / testDensityKgM3);
  return {
    value: { flowCcMin: flowCcMin / massRatio, massRatio },
    assumptions: ['density only, viscosity left out'],
    sources: ['ORIFICE'],
    caveats: [],
  };
}

export const flowAtPressureSheet: SumSheet = {
  title: 'Injector flow at another pressure or with another fluid',
  formula: 'q₂ = q₁·√(Δp₂/Δp₁)·√(ρ₁/ρ₂)',
  symbols: { q: 'static flow, cc/min', Δp: 'pressure across the injector, kPa', ρ: 'density, kg/m³' },
  sources: ['ORIFICE'],
  range: '10 to 2200 kPa across the injector; above about 600 kPa some no longer open',
};

const flowLimits = (value: number) => ({ what: 'The flow', value, min: 10, max: 10_000, unit: 'cc/min' });
const pressureLimits = (value: number) => ({
  what: 'The pressure across the injector',
  value,
  min: 10,
  max: 2200,
  unit: 'kPa',
});

const highPressure = (acrossKpa: number): readonly string[] =>
  acrossKpa > 600
    ? ['Above about 6 bar across it an injector may not open at low voltage: ask for its limit.']
    : [];
