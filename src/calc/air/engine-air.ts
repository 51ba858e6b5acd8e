import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { KELVIN_AT_ZERO_C, R_DRY_AIR } from './constants.ts';

interface EngineAtSpeed {
  readonly displacementL: number;
  readonly speedRpm: number;
  /** Absolute pressure and temperature the volumetric efficiency is referred to: those in the manifold here. */
  readonly pressureKpa: number;
  readonly temperatureC: number;
}

const CONVENTION = 'four-stroke; VE is referred to the air in the manifold, not to the air outside';

/**
 * Air an engine breathes: ṁ = VE · p/(R·T) · V_d · N/2.
 *
 * Source: definition of volumetric efficiency, Heywood eq. 2.27a (key HEYWOOD). Valid: four-stroke, 0.02 to 30 L, 100 to
 * 20 000 rpm, VE 0.05 to 1.6. Not for: exhaust gas drawn back, fuel vapour taking the place of air (1 to 2 % with petrol).
 * @throws UserError 'out-of-range' outside it.
 */
export function engineAirFlow(engine: EngineAtSpeed & { readonly veRatio: number }): Calculation<{
  readonly massFlowGs: number;
  readonly volumeFlowM3h: number;
  readonly densityKgM3: number;
}> {
  const { displacementL, speedRpm, veRatio } = engine;
  requireRange({
    what: 'The volumetric efficiency',
    value: veRatio,
    min: 0.05,
    max: 1.6,
    unit: '',
    shown: 'percent',
  });
  const densityKgM3 = densityOf(engine);
  const litresPerSecond = veRatio * sweptLitresPerSecond(displacementL, speedRpm);
  return {
    value: { massFlowGs: litresPerSecond * densityKgM3, volumeFlowM3h: litresPerSecond * 3.6, densityKgM3 },
    assumptions: [CONVENTION],
    sources: ['HEYWOOD', 'ISO2533'],
    caveats: [],
  };
}

export const engineAirFlowSheet: SumSheet = {
  title: 'Air mass flow of an engine',
  formula: 'ṁ = VE · p/(R·T) · V_d · N/2',
  symbols: {
    VE: 'volumetric efficiency referred to the manifold, as a share',
    'p, T': 'absolute pressure and temperature in the manifold',
    V_d: 'displacement',
    N: 'crankshaft speed',
    R: '287.05287 J/(kg·K)',
  },
  sources: ['HEYWOOD', 'ISO2533'],
  range: 'four-stroke, 0.02 to 30 L, 100 to 20 000 rpm, VE 5 to 160 %',
};

/**
 * Volumetric efficiency from a measured air flow: VE = 2·ṁ/(ρ·V_d·N), ρ at the pressure and temperature given.
 *
 * Source: Heywood eq. 2.27a (key HEYWOOD). Valid: as engineAirFlow. Not for: two-strokes.
 * @throws UserError 'out-of-range' outside it.
 */
export function volumetricEfficiency(
  engine: EngineAtSpeed & { readonly massFlowGs: number },
): Calculation<{ readonly veRatio: number; readonly densityKgM3: number }> {
  const { displacementL, speedRpm, massFlowGs } = engine;
  requireRange({ what: 'The air flow', value: massFlowGs, min: 0.05, max: 10_000, unit: 'g/s' });
  const densityKgM3 = densityOf(engine);
  const veRatio = massFlowGs / (densityKgM3 * sweptLitresPerSecond(displacementL, speedRpm));
  return {
    value: { veRatio, densityKgM3 },
    assumptions: [CONVENTION],
    sources: ['HEYWOOD', 'ISO2533'],
    caveats:
      veRatio > 1.3
        ? ['Over 130 % is not breathing: check that the pressure is absolute and is the one in the manifold.']
        : [],
  };
}

export const volumetricEfficiencySheet: SumSheet = {
  title: 'Volumetric efficiency from air flow',
  formula: 'VE = 2·ṁ/(ρ·V_d·N)',
  symbols: {
    ṁ: 'air mass flow',
    ρ: 'density at the pressure and temperature referred to',
    V_d: 'displacement',
    N: 'crankshaft speed',
  },
  sources: ['HEYWOOD'],
  range: 'as the air mass flow',
};

/**
 * Air behind a measured fuel flow: ṁ_a = ṁ_f · λ · AFR_st, so that VE follows from an injector's flow and the sensor.
 *
 * Source: definition of λ (key HEYWOOD). Valid: λ 0.5 to 1.6, AFR_st 1.5 to 35. Not for: misfire or an air leak before the
 * sensor, both of which read lean and make the air look more than it is.
 * @throws UserError 'out-of-range' outside it.
 */
export function airFromFuel(burn: {
  readonly fuelFlowGs: number;
  readonly lambdaRatio: number;
  readonly stoichiometricAfr: number;
}): Calculation<{ readonly massFlowGs: number }> {
  const { fuelFlowGs, lambdaRatio, stoichiometricAfr } = burn;
  requireRange(
    { what: 'The fuel flow', value: fuelFlowGs, min: 0.005, max: 2000, unit: 'g/s' },
    { what: 'λ', value: lambdaRatio, min: 0.5, max: 1.6, unit: '' },
    { what: 'The stoichiometric air–fuel ratio', value: stoichiometricAfr, min: 1.5, max: 35, unit: ':1' },
  );
  return {
    value: { massFlowGs: fuelFlowGs * lambdaRatio * stoichiometricAfr },
    assumptions: [],
    sources: ['HEYWOOD'],
    caveats: [
      'A misfire or an air leak before the sensor reads lean and makes the air look more than it is.',
    ],
  };
}

export const airFromFuelSheet: SumSheet = {
  title: 'Air from measured fuel and λ',
  formula: 'ṁ_a = ṁ_f · λ · AFR_st',
  symbols: {
    ṁ_a: 'air flow',
    ṁ_f: 'fuel flow',
    λ: 'measured λ',
    AFR_st: 'stoichiometric air–fuel ratio by mass',
  },
  sources: ['HEYWOOD'],
  range: 'λ 0.5 to 1.6, AFR_st 1.5 to 35',
};

function densityOf({ pressureKpa, temperatureC }: EngineAtSpeed): number {
  requireRange(
    { what: 'The absolute pressure', value: pressureKpa, min: 10, max: 600, unit: 'kPa' },
    { what: 'The air temperature', value: temperatureC, min: -40, max: 300, unit: '°C' },
  );
  return (pressureKpa * 1000) / (R_DRY_AIR * (temperatureC + KELVIN_AT_ZERO_C));
}

/** A four-stroke takes its displacement in every second turn. */
function sweptLitresPerSecond(displacementL: number, speedRpm: number): number {
  requireRange(
    { what: 'The displacement', value: displacementL, min: 0.02, max: 30, unit: 'L' },
    { what: 'The speed', value: speedRpm, min: 100, max: 20_000, unit: 'rpm' },
  );
  return (displacementL * speedRpm) / 120;
}
