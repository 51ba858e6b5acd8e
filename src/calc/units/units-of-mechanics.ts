import {
  ATMOSPHERE_KPA,
  GRAVITY,
  INCH_MM,
  MMH2O_KPA,
  MMHG_KPA,
  POUND_FORCE_N,
  POUND_KG,
} from './definitions.ts';
import { conventional, exact, type Unit } from './unit.ts';

const INCH_M = INCH_MM / 1000;
const FOOT_M = INCH_M * 12;
/** A pound-force over a square inch, in kPa. */
const PSI_KPA = POUND_FORCE_N / INCH_M ** 2 / 1000;

/** Base units: kg, N, N/mm, N·m, kPa, kW, kJ. Pressures say nothing of what they are measured from. */
export const mechanics = {
  kg: exact('mass', 'kg', 1, 'SI'),
  g: exact('mass', 'g', 1e-3, 'SI'),
  mg: exact('mass', 'mg', 1e-6, 'SI'),
  t: exact('mass', 't', 1000, 'SI'),
  lb: exact('mass', 'lb', POUND_KG, 'SP811'),
  oz: exact('mass', 'oz', POUND_KG / 16, 'SP811'),
  grain: exact('mass', 'grains', POUND_KG / 7000, 'SP811'),
  stone: exact('mass', 'stone', POUND_KG * 14, 'SP811'),
  shortTon: exact('mass', 'US tons', POUND_KG * 2000, 'SP811'),
  longTon: exact('mass', 'imp tons', POUND_KG * 2240, 'SP811'),

  N: exact('force', 'N', 1, 'SI'),
  daN: exact('force', 'daN', 10, 'SI'),
  kN: exact('force', 'kN', 1000, 'SI'),
  lbf: exact('force', 'lbf', POUND_FORCE_N, 'SP811'),
  kgf: exact('force', 'kgf', GRAVITY, 'CGPM3'),

  'N/mm': exact('spring-rate', 'N/mm', 1, 'SI'),
  'lbf/in': exact('spring-rate', 'lbf/in', POUND_FORCE_N / INCH_MM, 'SP811'),
  'kgf/mm': exact('spring-rate', 'kgf/mm', GRAVITY, 'CGPM3'),

  'N.m': exact('torque', 'N·m', 1, 'SI'),
  'N.cm': exact('torque', 'N·cm', 0.01, 'SI'),
  'N.mm': exact('torque', 'N·mm', 0.001, 'SI'),
  'cN.m': exact('torque', 'cN·m', 0.01, 'SI'),
  'daN.m': exact('torque', 'daN·m', 10, 'SI'),
  'kN.m': exact('torque', 'kN·m', 1000, 'SI'),
  'lbf.ft': exact('torque', 'lbf·ft', POUND_FORCE_N * FOOT_M, 'SP811'),
  'lbf.in': exact('torque', 'lbf·in', POUND_FORCE_N * INCH_M, 'SP811'),
  'ozf.in': exact('torque', 'ozf·in', (POUND_FORCE_N / 16) * INCH_M, 'SP811'),
  'kgf.m': exact('torque', 'kgf·m', GRAVITY, 'CGPM3'),
  'kgf.cm': exact('torque', 'kgf·cm', GRAVITY / 100, 'CGPM3'),

  kPa: exact('pressure', 'kPa', 1, 'SI'),
  Pa: exact('pressure', 'Pa', 1e-3, 'SI'),
  hPa: exact('pressure', 'hPa', 0.1, 'SI'),
  MPa: exact('pressure', 'MPa', 1000, 'SI'),
  bar: exact('pressure', 'bar', 100, 'SI'),
  mbar: exact('pressure', 'mbar', 0.1, 'SI'),
  psi: exact('pressure', 'psi', PSI_KPA, 'SP811'),
  ksi: exact('pressure', 'ksi', PSI_KPA * 1000, 'SP811'),
  atm: exact('pressure', 'atm', ATMOSPHERE_KPA, 'SI'),
  at: exact('pressure', 'kgf/cm²', GRAVITY * 10, 'CGPM3'),
  'kgf/mm2': exact('pressure', 'kgf/mm²', GRAVITY * 1000, 'CGPM3'),
  mmHg: conventional('pressure', 'mmHg', MMHG_KPA, 'SP811'),
  cmHg: conventional('pressure', 'cmHg', MMHG_KPA * 10, 'SP811'),
  inHg: conventional('pressure', 'inHg', MMHG_KPA * INCH_MM, 'SP811'),
  torr: exact('pressure', 'torr', ATMOSPHERE_KPA / 760, 'SP811'),
  mmH2O: conventional('pressure', 'mmH₂O', MMH2O_KPA, 'SP811'),
  inH2O: conventional('pressure', 'inH₂O', MMH2O_KPA * INCH_MM, 'SP811'),

  kW: exact('power', 'kW', 1, 'SI'),
  W: exact('power', 'W', 1e-3, 'SI'),
  MW: exact('power', 'MW', 1000, 'SI'),
  hp: exact('power', 'hp', (550 * POUND_FORCE_N * FOOT_M) / 1000, 'SP811'),
  PS: exact('power', 'PS', (75 * GRAVITY) / 1000, 'CGPM3'),

  kJ: exact('energy', 'kJ', 1, 'SI'),
  kWh: exact('energy', 'kWh', 3600, 'SI'),
} as const satisfies Record<string, Unit>;
