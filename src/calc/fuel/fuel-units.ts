import { toBase } from '../units/convert.ts';
import { POUND_KG } from '../units/definitions.ts';

/** Grams per second from cc/min, at the density of the fuel. */
export const gsFromCcMin = (flowCcMin: number, densityKgM3: number): number =>
  (flowCcMin * densityKgM3) / 60_000;

/** Cc/min from grams per second, at the density of the fuel. */
export const ccMinFromGs = (flowGs: number, densityKgM3: number): number => (flowGs * 60_000) / densityKgM3;

/** Density in kg/m³ at which a shortcut of so many cc/min to the pound per hour holds: 10.5 means 720. */
export const densityOfShortcut = (ccMinPerLbH: number): number => (POUND_KG * 1e6) / 60 / ccMinPerLbH;

/** G/kWh from lb/(hp·h), exact: the pound and the horsepower of 550 ft·lbf/s (key SP811). */
export const gPerKwhFromLbPerHpH = (bsfc: number): number => (bsfc * POUND_KG * 1000) / toBase(1, 'hp');

/** Lb/(hp·h) from g/kWh, exact. */
export const lbPerHpHFromGPerKwh = (bsfc: number): number => (bsfc * toBase(1, 'hp')) / (POUND_KG * 1000);
