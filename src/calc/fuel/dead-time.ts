import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { type Injection, shotPeriod } from './injector-duty.ts';
import { type CurvePoint, onCurve } from './typed-curve.ts';

/**
 * Dead time at a battery voltage, from a typed table: straight between its points, nothing beyond them.
 *
 * Dead times depend on the injector, the pressure and the driver; there is no formula. Source: the maker's table, as typed.
 * Valid: between the first and last point. Not for: another fuel pressure than the table's.
 * @throws UserError 'bad-input' or 'out-of-range' for a table of one point, or a voltage that it does not reach.
 */
export function deadTimeAt(
  /** `at` in V, `value` in s. */
  table: readonly CurvePoint[],
  voltageV: number,
): Calculation<{ readonly deadTimeS: number }> {
  for (const { at, value } of table) {
    requireRange(
      { what: 'A voltage of the table', value: at, min: 4, max: 20, unit: 'V' },
      { what: 'A dead time of the table', value: value * 1000, min: 0, max: 10, unit: 'ms' },
    );
  }
  const deadTimeS = onCurve(table, voltageV, { what: 'The dead times', unit: 'V' });
  return {
    value: { deadTimeS },
    assumptions: [`dead time ${ms(deadTimeS)} at ${voltageV} V, straight between the points typed`],
    sources: ['TYPED'],
    caveats: [],
  };
}

/**
 * What an injector delivers in a pulse: t_eff = t − t_dead, q = q_static·t_eff/T.
 *
 * Source: straight-line injector (keys HEYWOOD, COMMON). Valid: pulses longer than the dead time; very short ones deliver
 * less evenly than the line. Not for: the curved part near the smallest pulse.
 * @throws UserError 'out-of-range' when the pulse does not outlast the dead time.
 */
export function deliveredFlow(shot: {
  readonly pulseS: number;
  readonly deadTimeS: number;
  readonly speedRpm: number;
  readonly staticFlowCcMin: number;
  readonly injection: Injection;
}): Calculation<{
  readonly effectiveS: number;
  readonly effectiveDutyRatio: number;
  readonly meanFlowCcMin: number;
}> {
  const { pulseS, deadTimeS, speedRpm, staticFlowCcMin, injection } = shot;
  const effectiveS = effectivePulse(pulseS, deadTimeS);
  requireRange({ what: 'The injector', value: staticFlowCcMin, min: 10, max: 10_000, unit: 'cc/min' });
  const effectiveDutyRatio = Math.min(1, effectiveS / shotPeriod(speedRpm, injection));
  return {
    value: { effectiveS, effectiveDutyRatio, meanFlowCcMin: staticFlowCcMin * effectiveDutyRatio },
    assumptions: [`dead time ${ms(deadTimeS)}`],
    sources: ['HEYWOOD', 'COMMON'],
    caveats: [],
  };
}

/**
 * By how much the fuel is out when the dead time has changed and the controller does not know: e = (t_d1 − t_d2)/(t − t_d1).
 *
 * Below 0 lean. Source and limits: as deliveredFlow (keys HEYWOOD, COMMON).
 * @throws UserError 'out-of-range' when the pulse does not outlast the dead time.
 */
export function deadTimeError(shot: {
  readonly pulseS: number;
  /** What the controller reckons with. */
  readonly assumedDeadTimeS: number;
  readonly trueDeadTimeS: number;
}): Calculation<{ readonly errorRatio: number }> {
  const { pulseS, assumedDeadTimeS, trueDeadTimeS } = shot;
  const effectiveS = effectivePulse(pulseS, assumedDeadTimeS);
  requireRange({ what: 'The true dead time', value: trueDeadTimeS * 1000, min: 0, max: 10, unit: 'ms' });
  return {
    value: { errorRatio: Math.max(-1, (assumedDeadTimeS - trueDeadTimeS) / effectiveS) },
    assumptions: [],
    sources: ['HEYWOOD', 'COMMON'],
    caveats: [],
  };
}

export const deadTimeSheet: SumSheet = {
  title: 'Dead time, delivered flow and error of a wrong dead time',
  formula: 'q = q_static·(t − t_dead)/T; e = (t_d1 − t_d2)/(t − t_d1)',
  symbols: {
    t: 'pulse, s',
    t_dead: 'dead time at the battery voltage, s',
    T: 'time between shots, s',
    'q, q_static': 'mean and static flow, cc/min',
  },
  sources: ['HEYWOOD', 'COMMON', 'TYPED'],
  range: 'pulses longer than the dead time; the curved part near the smallest pulse is not modelled',
};

function effectivePulse(pulseS: number, deadTimeS: number): number {
  requireRange(
    { what: 'The dead time', value: deadTimeS * 1000, min: 0, max: 10, unit: 'ms' },
    { what: 'The pulse', value: pulseS * 1000, min: deadTimeS * 1000 + 0.001, max: 200, unit: 'ms' },
  );
  return pulseS - deadTimeS;
}

const ms = (seconds: number): string => `${Number((seconds * 1000).toFixed(3))} ms`;
