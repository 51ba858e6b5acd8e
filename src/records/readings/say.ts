import { fromBase, toBase } from '../../calc/units/convert.ts';
import { sayFigure, sayNumber } from '../../calc/units/say.ts';
import { isUnitId, type UnitId, units } from '../../calc/units/table.ts';
import type { Conditions } from './reading.ts';

/** A value in a kind's unit, said in another of the same sort: "4.2 bar", "8 %", "6 turns", a lambda as "0.86". */
export function sayValue(value: number, unit: string, shownIn: string, figures = 4): string {
  if (!isUnitId(unit) || !isUnitId(shownIn)) return `${sayNumber(value, figures)} ${shownIn}`.trim();
  if (shownIn === 'lambda' || (unit === 'lambda' && shownIn === '1')) return sayNumber(value, 3);
  return sayFigure(figureIn(value, unit, shownIn), shownIn, figures);
}

/** A value in a kind's unit as a bare figure in another. */
export function figureIn(value: number, unit: string, shownIn: string): number {
  if (!isUnitId(unit) || !isUnitId(shownIn) || unit === shownIn) return value;
  if (units[unit].dimension !== units[shownIn].dimension) return value;
  return fromBase(toBase(value, unit), shownIn);
}

/** The sign that stands behind a figure. */
export const signOf = (shownIn: string): string => (isUnitId(shownIn) ? units[shownIn].sign : shownIn);

/** A change of a value, in the unit shown: no zero of a scale goes into it. */
export function sayChange(change: number, unit: string, shownIn: string): string {
  const size = Math.abs(figureIn(change, unit, shownIn) - figureIn(0, unit, shownIn));
  if (!isUnitId(shownIn) || shownIn === 'lambda')
    return `${sayNumber(size, 2)} ${isUnitId(shownIn) ? '' : shownIn}`.trim();
  return sayFigure(size, shownIn, 2);
}

/** A temperature typed in Fahrenheit is said in it. */
const FAHRENHEIT = /\d ?(?:°|deg\.? ?)?F(?![\p{L}\d])/iu;

/**
 * "2500 rpm, 92 °C, hot": empty when nothing was said.
 *
 * @param typed the line they were typed in, whose scale of temperature is kept.
 */
export function sayConditions(conditions: Conditions, typed = ''): string {
  const { speedRpm, temperatureC, boostKPa, place, fuel, states } = conditions;
  const parts = [
    place,
    speedRpm === undefined ? undefined : sayFigure(speedRpm, 'rpm'),
    temperatureC === undefined ? undefined : sayHeat(temperatureC, FAHRENHEIT.test(typed)),
    boostKPa === undefined ? undefined : `${sayFigure(fromBase(boostKPa, 'bar'), 'bar', 3)} boost`,
    fuel,
    ...states,
  ];
  return parts.filter((part) => part !== undefined).join(', ');
}

const sayHeat = (temperatureC: number, inFahrenheit: boolean): string =>
  inFahrenheit ? sayFigure(fromBase(temperatureC, 'degF'), 'degF', 3) : sayFigure(temperatureC, 'degC', 3);

/** The kind with a capital, as a sentence begins. */
export const capital = (name: string): string => `${name.charAt(0).toUpperCase()}${name.slice(1)}`;

/** The key a value of this unit goes by in typed results, with its unit. */
export function dataKey(unit: string): string {
  return isUnitId(unit) ? (KEYS[unit] ?? 'value') : 'value';
}

const KEYS: Partial<Record<UnitId, string>> = {
  kPa: 'pressureKPa',
  degC: 'temperatureC',
  V: 'voltageV',
  A: 'currentA',
  rpm: 'speedRpm',
  mm: 'lengthMm',
  km: 'distanceKm',
  lambda: 'lambda',
  '1': 'shareRatio',
  N: 'forceN',
  'N.m': 'torqueNm',
};
