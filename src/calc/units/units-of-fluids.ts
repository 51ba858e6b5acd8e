import {
  BTU_PER_POUND_KJ_KG,
  IMPERIAL_GALLON_L,
  INCH_MM,
  MILE_KM,
  POUND_KG,
  US_GALLON_L,
} from './definitions.ts';
import { exact, reciprocal, type Unit } from './unit.ts';

const CUBIC_INCH_L = INCH_MM ** 3 / 1e6;
const CUBIC_FOOT_L = CUBIC_INCH_L * 12 ** 3;
const POUND_G = POUND_KG * 1000;

/** Base units: L, cc/min, g/s, kg/m³, mm²/s, mPa·s, L/100 km, MJ/kg, °C. */
export const fluids = {
  L: exact('volume', 'L', 1, 'SI'),
  dL: exact('volume', 'dL', 0.1, 'SI'),
  cL: exact('volume', 'cL', 0.01, 'SI'),
  mL: exact('volume', 'mL', 1e-3, 'SI'),
  cc: exact('volume', 'cc', 1e-3, 'SI'),
  mm3: exact('volume', 'mm³', 1e-6, 'SI'),
  m3: exact('volume', 'm³', 1000, 'SI'),
  in3: exact('volume', 'in³', CUBIC_INCH_L, 'SP811'),
  ft3: exact('volume', 'ft³', CUBIC_FOOT_L, 'SP811'),
  usGal: exact('volume', 'US gal', US_GALLON_L, 'HB44'),
  usQt: exact('volume', 'US qt', US_GALLON_L / 4, 'HB44'),
  usPt: exact('volume', 'US pt', US_GALLON_L / 8, 'HB44'),
  usFlOz: exact('volume', 'US fl oz', US_GALLON_L / 128, 'HB44'),
  impGal: exact('volume', 'imp gal', IMPERIAL_GALLON_L, 'WMA1985'),
  impQt: exact('volume', 'imp qt', IMPERIAL_GALLON_L / 4, 'WMA1985'),
  impPt: exact('volume', 'imp pt', IMPERIAL_GALLON_L / 8, 'WMA1985'),
  impFlOz: exact('volume', 'imp fl oz', IMPERIAL_GALLON_L / 160, 'WMA1985'),

  'cc/min': exact('volume-flow', 'cc/min', 1, 'SI'),
  'cc/h': exact('volume-flow', 'cc/h', 1 / 60, 'SI'),
  'cc/s': exact('volume-flow', 'cc/s', 60, 'SI'),
  'L/h': exact('volume-flow', 'L/h', 1000 / 60, 'SI'),
  'L/min': exact('volume-flow', 'L/min', 1000, 'SI'),
  'L/s': exact('volume-flow', 'L/s', 60_000, 'SI'),
  'm3/h': exact('volume-flow', 'm³/h', 1e6 / 60, 'SI'),
  'm3/min': exact('volume-flow', 'm³/min', 1e6, 'SI'),
  'm3/s': exact('volume-flow', 'm³/s', 6e7, 'SI'),
  cfm: exact('volume-flow', 'ft³/min', CUBIC_FOOT_L * 1000, 'SP811'),
  usGph: exact('volume-flow', 'US gal/h', (US_GALLON_L * 1000) / 60, 'HB44'),
  usGpm: exact('volume-flow', 'US gal/min', US_GALLON_L * 1000, 'HB44'),
  impGph: exact('volume-flow', 'imp gal/h', (IMPERIAL_GALLON_L * 1000) / 60, 'WMA1985'),
  impGpm: exact('volume-flow', 'imp gal/min', IMPERIAL_GALLON_L * 1000, 'WMA1985'),

  'g/s': exact('mass-flow', 'g/s', 1, 'SI'),
  'g/min': exact('mass-flow', 'g/min', 1 / 60, 'SI'),
  'kg/h': exact('mass-flow', 'kg/h', 1000 / 3600, 'SI'),
  'kg/min': exact('mass-flow', 'kg/min', 1000 / 60, 'SI'),
  'kg/s': exact('mass-flow', 'kg/s', 1000, 'SI'),
  'lb/h': exact('mass-flow', 'lb/h', POUND_G / 3600, 'SP811'),
  'lb/s': exact('mass-flow', 'lb/s', POUND_G, 'SP811'),
  'lb/min': exact('mass-flow', 'lb/min', POUND_G / 60, 'SP811'),

  'kg/m3': exact('density', 'kg/m³', 1, 'SI'),
  'g/cc': exact('density', 'g/cm³', 1000, 'SI'),
  'lb/usGal': exact('density', 'lb/US gal', (POUND_KG / US_GALLON_L) * 1000, 'HB44'),

  'mm2/s': exact('viscosity', 'mm²/s', 1, 'SI'),
  cSt: exact('viscosity', 'cSt', 1, 'SI'),
  St: exact('viscosity', 'St', 100, 'SI'),
  'm2/s': exact('viscosity', 'm²/s', 1e6, 'SI'),
  'mPa.s': exact('dynamic-viscosity', 'mPa·s', 1, 'SI'),
  cP: exact('dynamic-viscosity', 'cP', 1, 'SI'),
  'Pa.s': exact('dynamic-viscosity', 'Pa·s', 1000, 'SI'),

  'L/100km': exact('economy', 'L/100 km', 1, 'SI'),
  'km/L': reciprocal('economy', 'km/L', 100, 'SI'),
  usMpg: reciprocal('economy', 'US mpg', (100 * US_GALLON_L) / MILE_KM, 'HB44'),
  impMpg: reciprocal('economy', 'imp mpg', (100 * IMPERIAL_GALLON_L) / MILE_KM, 'WMA1985'),

  'MJ/kg': exact('specific-energy', 'MJ/kg', 1, 'SI'),
  'Btu/lb': exact('specific-energy', 'Btu/lb', BTU_PER_POUND_KJ_KG / 1000, 'SP811'),

  'cc/turn': exact('volume-per-turn', 'cc/turn', 1, 'SI'),

  degC: exact('temperature', '°C', 1, 'SI'),
  degF: {
    dimension: 'temperature',
    sign: '°F',
    scale: { kind: 'offset', factor: 5 / 9, zero: 32 },
    standing: 'exact',
    source: 'SP811',
  },
  K: {
    dimension: 'temperature',
    sign: 'K',
    scale: { kind: 'offset', factor: 1, zero: 273.15 },
    standing: 'exact',
    source: 'SI',
  },
  degR: {
    dimension: 'temperature',
    sign: '°R',
    scale: { kind: 'offset', factor: 5 / 9, zero: 491.67 },
    standing: 'exact',
    source: 'SP811',
  },
} as const satisfies Record<string, Unit>;
