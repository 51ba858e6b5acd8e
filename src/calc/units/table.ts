import type { Dimension, Unit } from './unit.ts';
import { electricityAndRatio } from './units-of-electricity-and-ratio.ts';
import { fluids } from './units-of-fluids.ts';
import { mechanics } from './units-of-mechanics.ts';
import { spaceAndTime } from './units-of-space-and-time.ts';

const table = { ...spaceAndTime, ...mechanics, ...fluids, ...electricityAndRatio };

/** The name a unit goes by in code and data. */
export type UnitId = keyof typeof table;

/** Every unit there is, with its definition. */
export const units: Readonly<Record<UnitId, Unit>> = table;

export const unitIds: readonly UnitId[] = Object.keys(table).filter(isUnitId);

export function isUnitId(name: string): name is UnitId {
  return Object.hasOwn(table, name);
}

/** What `calc` works in, per dimension, and what a person calls the dimension. */
export const dimensions: Readonly<Record<Dimension, { readonly base: UnitId; readonly called: string }>> = {
  length: { base: 'mm', called: 'a length' },
  area: { base: 'mm2', called: 'an area' },
  volume: { base: 'L', called: 'a volume' },
  angle: { base: 'deg', called: 'an angle' },
  time: { base: 's', called: 'a time' },
  speed: { base: 'km/h', called: 'a road speed' },
  rotation: { base: 'rpm', called: 'a speed of turning' },
  mass: { base: 'kg', called: 'a mass' },
  force: { base: 'N', called: 'a force' },
  'spring-rate': { base: 'N/mm', called: 'a spring rate' },
  torque: { base: 'N.m', called: 'a torque' },
  pressure: { base: 'kPa', called: 'a pressure' },
  power: { base: 'kW', called: 'a power' },
  energy: { base: 'kJ', called: 'an energy' },
  'specific-energy': { base: 'MJ/kg', called: 'a heating value' },
  temperature: { base: 'degC', called: 'a temperature' },
  'volume-flow': { base: 'cc/min', called: 'a flow by volume' },
  'mass-flow': { base: 'g/s', called: 'a flow by mass' },
  density: { base: 'kg/m3', called: 'a density' },
  viscosity: { base: 'mm2/s', called: 'a kinematic viscosity' },
  'dynamic-viscosity': { base: 'mPa.s', called: 'a dynamic viscosity' },
  economy: { base: 'L/100km', called: 'a fuel consumption' },
  voltage: { base: 'V', called: 'a voltage' },
  current: { base: 'A', called: 'a current' },
  resistance: { base: 'ohm', called: 'a resistance' },
  charge: { base: 'Ah', called: 'a charge' },
  ratio: { base: '1', called: 'a ratio' },
  'air-fuel-ratio': { base: 'AFR', called: 'an air-fuel ratio' },
  lambda: { base: 'lambda', called: 'a lambda' },
  'volume-per-turn': { base: 'cc/turn', called: 'a volume per turn' },
};
