import type { JsonObject } from '../../core/json.ts';
import type { Fact, Tone } from '../../core/reply.ts';
import type { together } from '../together.ts';
import { sayNumber } from '../units/say.ts';
import { lbPerHpHFromGPerKwh } from './fuel-units.ts';

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
export const fuelUseWords = (gPerKwh: number): string =>
  `${sayNumber(gPerKwh, 3)} g/kWh (${sayNumber(lbPerHpHFromGPerKwh(gPerKwh), 2)} lb/hp·h)`;
