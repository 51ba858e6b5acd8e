import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';
import { KELVIN_AT_ZERO_C, R_DRY_AIR, R_VAPOUR } from './constants.ts';

export interface AirDensity {
  readonly densityKgM3: number;
  readonly vapourKpa: number;
  readonly dryKpa: number;
}

/**
 * Density of air, dry or moist: ρ = p_d/(R·T) + p_v/(R_v·T), p_v = RH·p_sat, p_sat = 610.94·e^(17.625·t/(t + 243.04)) Pa.
 *
 * Source: ideal gas law with ISO 2533's R (key ISO2533); Magnus form of Alduchov & Eskridge (key AE96). Valid: 10 to
 * 600 kPa absolute and −40 to 300 °C dry, up to 60 °C with a humidity. Not for: compressibility, under 0.3 % in that range.
 * @throws UserError 'out-of-range' outside it, or when the vapour alone would exceed the pressure.
 */
export function airDensity(air: {
  readonly pressureKpa: number;
  readonly temperatureC: number;
  /** Relative humidity, 0 to 1; 0 when left out. */
  readonly humidityRatio?: number;
}): Calculation<AirDensity> {
  const { pressureKpa, temperatureC, humidityRatio = 0 } = air;
  requireRange(
    { what: 'The absolute pressure', value: pressureKpa, min: 10, max: 600, unit: 'kPa' },
    {
      what: 'The air temperature',
      value: temperatureC,
      min: -40,
      max: humidityRatio > 0 ? 60 : 300,
      unit: '°C',
    },
    { what: 'The relative humidity', value: humidityRatio, min: 0, max: 1, unit: '', shown: 'percent' },
  );
  const kelvin = temperatureC + KELVIN_AT_ZERO_C;
  const saturationKpa = 0.61094 * Math.exp((17.625 * temperatureC) / (temperatureC + 243.04));
  const vapourKpa = humidityRatio === 0 ? 0 : humidityRatio * saturationKpa;
  const dryKpa = pressureKpa - vapourKpa;
  requireRange({ what: 'The dry part of the pressure', value: dryKpa, min: 0, max: 600, unit: 'kPa' });
  return {
    value: {
      densityKgM3: (dryKpa * 1000) / (R_DRY_AIR * kelvin) + (vapourKpa * 1000) / (R_VAPOUR * kelvin),
      vapourKpa,
      dryKpa,
    },
    assumptions: humidityRatio === 0 ? ['dry air; at 30 °C and full humidity it is 1.6 % lighter'] : [],
    sources: humidityRatio === 0 ? ['ISO2533'] : ['ISO2533', 'AE96'],
    caveats: [],
  };
}

export const airDensitySheet: SumSheet = {
  title: 'Density of dry or moist air',
  formula: 'ρ = (p − p_v)/(R·T) + p_v/(R_v·T); p_v = RH·610.94·e^(17.625·t/(t + 243.04))',
  symbols: {
    p: 'absolute pressure, Pa',
    p_v: 'partial pressure of water vapour, Pa',
    RH: 'relative humidity, 0 to 1',
    't, T': 'temperature, °C and K',
    'R, R_v': 'gas constants, 287.05287 and 461.5 J/(kg·K)',
  },
  sources: ['ISO2533', 'AE96'],
  range: '10 to 600 kPa absolute, −40 to 300 °C dry, to 60 °C moist',
};

/**
 * Density after air was squeezed: ρ₂ = ρ₁·p₂/p₁ at the same temperature, ρ₂ = ρ₁·(p₂/p₁)^(1/κ) without loss or heat.
 *
 * The two bounds between which every boosted charge lies: perfectly cooled, and ideally compressed with no cooler.
 * Source: ideal gas (key YF14). Valid: pressures above 0. Not for: a real compressor, which heats more.
 * @throws UserError 'out-of-range' for a pressure or density that is not above 0.
 */
export function compressedDensity(charge: {
  readonly densityKgM3: number;
  readonly fromKpa: number;
  readonly toKpa: number;
  readonly process: 'isothermal' | 'isentropic';
  readonly gammaRatio?: number;
}): Calculation<{ readonly densityKgM3: number; readonly gainRatio: number }> {
  const { densityKgM3, fromKpa, toKpa, process, gammaRatio = 1.4 } = charge;
  requireRange(
    { what: 'The density', value: densityKgM3, min: 0.01, max: 20, unit: 'kg/m³' },
    { what: 'The first pressure', value: fromKpa, min: 1, max: 2000, unit: 'kPa' },
    { what: 'The second pressure', value: toKpa, min: 1, max: 2000, unit: 'kPa' },
    { what: 'κ', value: gammaRatio, min: 1.01, max: 1.67, unit: '' },
  );
  const gain = (toKpa / fromKpa) ** (process === 'isothermal' ? 1 : 1 / gammaRatio);
  return {
    value: { densityKgM3: densityKgM3 * gain, gainRatio: gain - 1 },
    assumptions: [
      process === 'isothermal'
        ? 'the air is cooled back to where it started'
        : `κ = ${sayNumber(gammaRatio)}, no heat lost`,
    ],
    sources: ['YF14'],
    caveats: [],
  };
}

export const compressedDensitySheet: SumSheet = {
  title: 'Density of squeezed air, cooled or not',
  formula: 'ρ₂ = ρ₁·p₂/p₁ (cooled); ρ₂ = ρ₁·(p₂/p₁)^(1/κ) (no heat lost)',
  symbols: {
    'ρ₁, ρ₂': 'density, kg/m³',
    'p₁, p₂': 'absolute pressure, kPa',
    κ: 'ratio of specific heats, 1.4',
  },
  sources: ['YF14'],
  range: 'ideal gas; the bounds of a boosted charge, not a compressor',
};
