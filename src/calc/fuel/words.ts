import { sayNumber } from '../units/say.ts';
import { lbPerHpHFromGPerKwh } from './fuel-units.ts';

/** What is said wherever a fuel system is worked on (key COMMON). */
export const FUEL_CAUTION =
  'Fuel stands under pressure: let it off first, catch it, no flame, glasses on, extinguisher at hand; look for leaks before a start.';

export const milliseconds = (seconds: number): string => `${sayNumber(seconds * 1000, 3)} ms`;
export const fuelUseWords = (gPerKwh: number): string =>
  `${sayNumber(gPerKwh, 3)} g/kWh (${sayNumber(lbPerHpHFromGPerKwh(gPerKwh), 2)} lb/hp·h)`;
