import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { fromBase, toBase } from '../units/convert.ts';
import { sayFigure } from '../units/say.ts';
import { dimensions, type UnitId, units } from '../units/table.ts';

/** What a reading should stay between, in any unit; an end that is missing is open. */
export interface Limit {
  readonly min?: number;
  readonly max?: number;
  readonly unit: UnitId;
}

export type Standing = 'ok' | 'low' | 'high';

/** The same limit in the base unit of its dimension, in which readings are kept. */
export function limitInBase({ min, max, unit }: Limit): Limit {
  return {
    ...(min === undefined ? {} : { min: toBase(min, unit) }),
    ...(max === undefined ? {} : { max: toBase(max, unit) }),
    unit: dimensions[units[unit].dimension].base,
  };
}

/** What lies within a millionth of an end stands on it: 9.6 V is not below 9.6 V for having been typed in mV. */
const ON_THE_LINE = 1e-6;

/**
 * Whether a reading keeps within a limit: lo ≤ x ≤ hi, both ends included.
 *
 * Source: definition (key DEFINITION). Valid: any finite reading in the base unit of the limit's dimension.
 */
export function judgeReading(reading: number, limit: Limit): Calculation<{ readonly standing: Standing }> {
  const { min, max } = limitInBase(limit);
  const slack = ON_THE_LINE * Math.max(Math.abs(min ?? 0), Math.abs(max ?? 0));
  const low = min !== undefined && reading < min - slack;
  const high = max !== undefined && reading > max + slack;
  return {
    value: { standing: low ? 'low' : high ? 'high' : 'ok' },
    assumptions: [],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

/** "0.85 to 0.9", "at least 10 psi", "at most 5 %", in the limit's own unit or another of its dimension. */
export function sayLimit(limit: Limit, unit: UnitId = limit.unit): string {
  const said = (figure: number): string =>
    sayFigure(unit === limit.unit ? figure : fromBase(toBase(figure, limit.unit), unit), unit, 3);
  if (limit.min === undefined) return limit.max === undefined ? 'no limit' : `at most ${said(limit.max)}`;
  return limit.max === undefined ? `at least ${said(limit.min)}` : `${said(limit.min)} to ${said(limit.max)}`;
}

export const limitSheet: SumSheet = {
  title: 'A reading against its limits',
  formula: 'lo ≤ x ≤ hi',
  symbols: { x: 'the reading', lo: 'least', hi: 'most, both included' },
  sources: ['DEFINITION'],
  range: "the maker's figure outranks the crew's, and both outrank common practice",
};
