import { exact, type Unit } from './unit.ts';

/** Base units: V, A, ohm, Ah, and one for ratios. */
export const electricityAndRatio = {
  V: exact('voltage', 'V', 1, 'SI'),
  mV: exact('voltage', 'mV', 1e-3, 'SI'),
  kV: exact('voltage', 'kV', 1000, 'SI'),
  A: exact('current', 'A', 1, 'SI'),
  mA: exact('current', 'mA', 1e-3, 'SI'),
  uA: exact('current', 'µA', 1e-6, 'SI'),
  ohm: exact('resistance', 'Ω', 1, 'SI'),
  mohm: exact('resistance', 'mΩ', 1e-3, 'SI'),
  kohm: exact('resistance', 'kΩ', 1000, 'SI'),
  Mohm: exact('resistance', 'MΩ', 1e6, 'SI'),
  kA: exact('current', 'kA', 1000, 'SI'),
  mAh: exact('charge', 'mAh', 1e-3, 'SI'),
  Ah: exact('charge', 'Ah', 1, 'SI'),

  '1': exact('ratio', '', 1, 'SI'),
  percent: exact('ratio', '%', 0.01, 'SI'),
  permille: exact('ratio', '‰', 0.001, 'SI'),
  /** Air to fuel by mass. What it means in lambda depends on the fuel, so it converts into nothing here. */
  AFR: exact('air-fuel-ratio', 'AFR', 1, 'SI'),
  lambda: exact('lambda', 'λ', 1, 'SI'),
} as const satisfies Record<string, Unit>;
