import type { UnitId } from './table.ts';
import type { Dimension } from './unit.ts';

/** From a size in the base unit on, the units people use for it. */
type Step = readonly [from: number, units: readonly UnitId[]];
type Steps = readonly [Step, ...Step[]];

const USUAL: Readonly<Record<Dimension, Steps>> = {
  length: [
    [0, ['mm', 'um', 'thou']],
    [1, ['mm', 'in']],
    [1000, ['mm', 'm', 'in', 'ft']],
    [1e5, ['m', 'km', 'ft', 'mi']],
    [1e6, ['km', 'mi']],
  ],
  area: [
    [0, ['mm2', 'in2']],
    [1000, ['mm2', 'cm2', 'in2']],
  ],
  volume: [
    [0, ['cc', 'in3']],
    [0.1, ['cc', 'L', 'in3', 'usFlOz', 'impPt']],
    [2, ['L', 'usQt', 'usGal', 'impGal', 'in3']],
    [20, ['L', 'usGal', 'impGal']],
  ],
  angle: [[0, ['deg', 'rad', 'turn']]],
  time: [
    [0, ['ms', 'us']],
    [0.1, ['s', 'ms']],
    [60, ['s', 'min', 'h']],
    [86_400, ['h', 'day']],
  ],
  speed: [[0, ['km/h', 'mph', 'm/s']]],
  rotation: [[0, ['rpm', 'rad/s', 'Hz']]],
  mass: [
    [0, ['g', 'oz']],
    [1, ['kg', 'g', 'lb']],
    [20, ['kg', 'lb']],
  ],
  force: [
    [0, ['N', 'lbf', 'kgf']],
    [2000, ['kN', 'N', 'lbf', 'kgf']],
  ],
  'spring-rate': [[0, ['N/mm', 'lbf/in', 'kgf/mm']]],
  torque: [
    [0, ['N.m', 'lbf.in', 'lbf.ft']],
    [20, ['N.m', 'lbf.ft', 'kgf.m']],
  ],
  pressure: [
    [0, ['kPa', 'mbar', 'psi', 'inHg']],
    [100, ['kPa', 'bar', 'psi']],
    [5000, ['bar', 'MPa', 'psi']],
  ],
  power: [
    [0, ['W', 'kW', 'hp']],
    [1, ['kW', 'hp', 'PS']],
  ],
  energy: [[0, ['kJ', 'kWh']]],
  'specific-energy': [[0, ['MJ/kg', 'Btu/lb']]],
  temperature: [[0, ['degC', 'degF', 'K']]],
  'volume-flow': [
    [0, ['cc/min', 'L/h']],
    [2000, ['cc/min', 'L/min', 'L/h', 'usGph']],
    [1e5, ['L/min', 'm3/h', 'cfm']],
  ],
  'mass-flow': [
    [0, ['g/s', 'kg/h', 'lb/h']],
    [20, ['g/s', 'kg/h', 'lb/min']],
  ],
  density: [[0, ['kg/m3', 'g/cc', 'lb/usGal']]],
  viscosity: [[0, ['cSt', 'mm2/s']]],
  'dynamic-viscosity': [[0, ['cP', 'mPa.s']]],
  economy: [[0, ['L/100km', 'km/L', 'usMpg', 'impMpg']]],
  voltage: [
    [0, ['mV', 'V']],
    [1, ['V', 'mV']],
    [1000, ['kV', 'V']],
  ],
  current: [
    [0, ['mA', 'A']],
    [1, ['A', 'mA']],
  ],
  resistance: [
    [0, ['mohm', 'ohm']],
    [1, ['ohm', 'kohm']],
    [1e6, ['Mohm', 'kohm']],
  ],
  charge: [[0, ['Ah']]],
  ratio: [[0, ['1', 'percent']]],
  'air-fuel-ratio': [[0, ['AFR']]],
  lambda: [[0, ['lambda']]],
  'volume-per-turn': [[0, ['cc/turn']]],
};

/** The units a value of this size is usually said in, the crew's likeliest first. */
export function usualUnits(dimension: Dimension, base: number): readonly UnitId[] {
  const [first, ...larger] = USUAL[dimension];
  return (larger.findLast(([from]) => Math.abs(base) >= from) ?? first)[1];
}
