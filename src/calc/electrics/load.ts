import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

/**
 * Current and resistance of a load: I = P/U, R = U²/P.
 *
 * Source: Ohm's law (key DEFINITION). Valid: 0.5 to 60 V, 0.01 W to 20 kW. Not for: a lamp's first instant, ten times as much.
 * @throws UserError 'out-of-range' outside it.
 */
export function loadCurrent(load: {
  readonly powerW: number;
  readonly supplyV: number;
}): Calculation<{ readonly currentA: number; readonly resistanceOhm: number }> {
  const { powerW, supplyV } = load;
  requireRange(
    { what: 'The power', value: powerW, min: 0.01, max: 20_000, unit: 'W' },
    { what: 'The voltage', value: supplyV, min: 0.5, max: 60, unit: 'V' },
  );
  return {
    value: { currentA: powerW / supplyV, resistanceOhm: supplyV ** 2 / powerW },
    assumptions: [`${sayNumber(supplyV)} V at the load`],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

/**
 * Current through a winding once it has settled: I = U/R. An injector of 12 Ω or more is driven so.
 *
 * Source: Ohm's law (key DEFINITION). Valid: 0.5 to 60 V, 0.05 to 100 000 Ω.
 * @throws UserError 'out-of-range' outside it.
 */
export function windingCurrent(winding: {
  readonly supplyV: number;
  readonly resistanceOhm: number;
}): Calculation<{ readonly currentA: number; readonly powerW: number }> {
  const { supplyV, resistanceOhm } = winding;
  requireRange(
    { what: 'The voltage', value: supplyV, min: 0.5, max: 60, unit: 'V' },
    { what: 'The resistance', value: resistanceOhm, min: 0.05, max: 100_000, unit: 'Ω' },
  );
  return {
    value: { currentA: supplyV / resistanceOhm, powerW: supplyV ** 2 / resistanceOhm },
    assumptions: ['settled, winding at the temperature it was measured at'],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

export const loadCurrentSheet: SumSheet = {
  title: 'Current of a load or a winding',
  formula: 'I = P/U; I = U/R; R = U²/P',
  symbols: { I: 'current, A', P: 'power, W', U: 'voltage, V', R: 'resistance, Ω' },
  sources: ['DEFINITION'],
  range: '0.5 to 60 V; the first instant not in it',
};
