import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { GRAVITY } from '../units/definitions.ts';
import { KELVIN_AT_ZERO_C, R_DRY_AIR, STANDARD_PRESSURE_KPA } from './constants.ts';

const SEA_LEVEL_K = 288.15;
const LAPSE_K_PER_M = 0.0065;
const EARTH_RADIUS_M = 6_356_766;
const SEA_LEVEL_DENSITY = (STANDARD_PRESSURE_KPA * 1000) / (R_DRY_AIR * SEA_LEVEL_K);

export interface Atmosphere {
  readonly pressureKpa: number;
  readonly temperatureC: number;
  readonly densityKgM3: number;
  /** Density as a share of that at sea level. */
  readonly densityRatio: number;
  readonly geopotentialM: number;
}

/**
 * Pressure, temperature and density of the standard atmosphere at a height.
 *
 * T = 288.15 − 0.0065·h; p = 101.325 kPa · (T/288.15)^(g/(0.0065·R)); ρ = p/(R·T), h the geopotential height in m. A height
 * by tape or map is geometric: h = r·z/(r + z), r = 6 356 766 m.
 * Source: ISO 2533 (key ISO2533). Valid: −610 m to 11 000 m. Not for: the weather of the day, which moves the pressure by
 * ±4 % and the temperature far more.
 * @throws UserError 'out-of-range' outside those heights.
 */
export function standardAtmosphere(place: {
  readonly altitudeM: number;
  readonly measured?: 'geometric' | 'geopotential';
}): Calculation<Atmosphere> {
  const { altitudeM, measured = 'geometric' } = place;
  requireRange({ what: 'The height', value: altitudeM, min: -610, max: 11_000, unit: 'm' });
  const geopotentialM =
    measured === 'geometric' ? (EARTH_RADIUS_M * altitudeM) / (EARTH_RADIUS_M + altitudeM) : altitudeM;
  const kelvin = SEA_LEVEL_K - LAPSE_K_PER_M * geopotentialM;
  const pressureKpa =
    STANDARD_PRESSURE_KPA * (kelvin / SEA_LEVEL_K) ** (GRAVITY / (LAPSE_K_PER_M * R_DRY_AIR));
  const densityKgM3 = (pressureKpa * 1000) / (R_DRY_AIR * kelvin);
  return {
    value: {
      pressureKpa,
      temperatureC: kelvin - KELVIN_AT_ZERO_C,
      densityKgM3,
      densityRatio: densityKgM3 / SEA_LEVEL_DENSITY,
      geopotentialM,
    },
    assumptions: ['the standard day; a barometer beside the car outranks it'],
    sources: ['ISO2533'],
    caveats: [],
  };
}

export const standardAtmosphereSheet: SumSheet = {
  title: 'Standard atmosphere at a height',
  formula: 'T = 288.15 − 0.0065·h; p = 101.325·(T/288.15)^5.25588; ρ = p/(R·T)',
  symbols: {
    h: 'geopotential height, m',
    T: 'temperature, K',
    p: 'pressure, kPa',
    R: 'gas constant of dry air, 287.05287 J/(kg·K)',
    ρ: 'density, kg/m³',
  },
  sources: ['ISO2533'],
  range: '−610 m to 11 000 m; a standard day, not the weather',
};
