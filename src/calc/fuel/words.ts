import type { JsonObject } from '../../core/json.ts';
import type { Fact, Tone } from '../../core/reply.ts';
import type { together } from '../together.ts';
import { sayIn, sayNumber } from '../units/say.ts';
import { gsFromCcMin, lbPerHpHFromGPerKwh } from './fuel-units.ts';

/** An answer in words and as data, without its subject. */
export interface FuelAnswer {
  readonly result: string;
  readonly tone?: Tone;
  readonly certainty?: string;
  readonly working: readonly string[];
  readonly facts?: readonly Fact[];
  readonly calculation: ReturnType<typeof together>;
  readonly data: JsonObject;
}

/** What is said wherever a fuel system is worked on (key COMMON). */
export const FUEL_CAUTION =
  'Fuel stands under pressure: let it off first, catch it, no flame, glasses on, extinguisher at hand; look for leaks before a start.';

export const percent = (ratio: number): string => `${sayNumber(ratio * 100, 3)} %`;
export const milliseconds = (seconds: number): string => `${sayNumber(seconds * 1000, 3)} ms`;
export const powerWords = (kw: number): string => `${sayIn(kw, 'hp', 3)} (${sayIn(kw, 'kW', 3)})`;
export const pressureWords = (kPa: number): string => `${sayIn(kPa, 'bar', 3)} (${sayIn(kPa, 'psi', 3)})`;
export const litresHour = (ccMin: number): string => sayIn(ccMin, 'L/h', 3);
export const fuelUseWords = (gPerKwh: number): string =>
  `${sayNumber(gPerKwh, 3)} g/kWh (${sayNumber(lbPerHpHFromGPerKwh(gPerKwh), 2)} lb/hp·h)`;
/** Cc/min and pounds an hour, at the density of the fuel. */
export const injectorWords = (ccMin: number, densityKgM3: number): string =>
  `${sayIn(ccMin, 'cc/min', 3)} (${sayIn(gsFromCcMin(ccMin, densityKgM3), 'lb/h', 3)})`;
