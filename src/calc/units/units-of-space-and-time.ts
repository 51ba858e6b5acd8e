import { INCH_MM, MILE_KM } from './definitions.ts';
import { exact, reciprocal, type Unit } from './unit.ts';

/** Base units: mm, mm², degree, second, km/h, rpm. */
export const spaceAndTime = {
  mm: exact('length', 'mm', 1, 'SI'),
  um: exact('length', 'µm', 1e-3, 'SI'),
  cm: exact('length', 'cm', 10, 'SI'),
  m: exact('length', 'm', 1000, 'SI'),
  km: exact('length', 'km', 1e6, 'SI'),
  in: exact('length', 'in', INCH_MM, 'SP811'),
  thou: exact('length', 'thou', INCH_MM / 1000, 'SP811'),
  tenthThou: exact('length', 'tenths of a thou', INCH_MM / 10_000, 'SP811'),
  ft: exact('length', 'ft', INCH_MM * 12, 'SP811'),
  yd: exact('length', 'yd', INCH_MM * 36, 'SP811'),
  mi: exact('length', 'mi', MILE_KM * 1e6, 'SP811'),
  tenthMm: exact('length', 'tenths of a mm', 0.1, 'SI'),
  hundredthMm: exact('length', 'hundredths of a mm', 0.01, 'SI'),
  tpi: reciprocal('length', 'tpi', INCH_MM, 'SP811'),

  mm2: exact('area', 'mm²', 1, 'SI'),
  cm2: exact('area', 'cm²', 100, 'SI'),
  m2: exact('area', 'm²', 1e6, 'SI'),
  in2: exact('area', 'in²', INCH_MM ** 2, 'SP811'),
  ft2: exact('area', 'ft²', (INCH_MM * 12) ** 2, 'SP811'),
  kcmil: exact('area', 'kcmil', 1000 * (Math.PI / 4) * (INCH_MM / 1000) ** 2, 'SP811'),
  AWG: {
    dimension: 'area',
    sign: 'AWG',
    scale: { kind: 'wire-gauge' },
    standing: 'exact',
    source: 'B258',
  },

  deg: exact('angle', '°', 1, 'SI'),
  arcmin: exact('angle', '′', 1 / 60, 'SI'),
  arcsec: exact('angle', '″', 1 / 3600, 'SI'),
  rad: exact('angle', 'rad', 180 / Math.PI, 'SI'),
  gon: exact('angle', 'gon', 0.9, 'SI'),
  turn: exact('angle', 'turns', 360, 'SI'),

  s: exact('time', 's', 1, 'SI'),
  ms: exact('time', 'ms', 1e-3, 'SI'),
  us: exact('time', 'µs', 1e-6, 'SI'),
  min: exact('time', 'min', 60, 'SI'),
  h: exact('time', 'h', 3600, 'SI'),
  day: exact('time', 'days', 86_400, 'SI'),
  week: exact('time', 'weeks', 604_800, 'SI'),

  'km/h': exact('speed', 'km/h', 1, 'SI'),
  'm/s': exact('speed', 'm/s', 3.6, 'SI'),
  mph: exact('speed', 'mph', MILE_KM, 'SP811'),
  'ft/s': exact('speed', 'ft/s', (INCH_MM * 12 * 3.6) / 1000, 'SP811'),
  'ft/min': exact('speed', 'ft/min', (INCH_MM * 12 * 0.06) / 1000, 'SP811'),

  rpm: exact('rotation', 'rpm', 1, 'SI'),
  'rad/s': exact('rotation', 'rad/s', 30 / Math.PI, 'SI'),
  Hz: exact('rotation', 'turns/s', 60, 'SI'),
} as const satisfies Record<string, Unit>;
