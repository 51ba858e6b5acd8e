import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** One shot per working cycle of two turns, or one per turn. */
export type Injection = 'sequential' | 'each-turn';

/** Seconds between two shots. */
export function shotPeriod(speedRpm: number, injection: Injection): number {
  requireRange({ what: 'The speed', value: speedRpm, min: 50, max: 20_000, unit: 'rpm' });
  return (injection === 'sequential' ? 120 : 60) / speedRpm;
}

/**
 * Injector duty from pulse width and speed: T = 120/n (one shot in two turns) or 60/n (one each turn), D = t/T.
 *
 * Source: kinematics of the four-stroke cycle (key HEYWOOD). Valid: 50 to 20 000 rpm, pulse 0 to 0.2 s. Not for: engines
 * with more than one shot per cycle.
 * @throws UserError 'out-of-range' outside it.
 */
export function injectorDuty(running: {
  readonly pulseS: number;
  readonly speedRpm: number;
  readonly injection: Injection;
}): Calculation<{ readonly periodS: number; readonly dutyRatio: number }> {
  const { pulseS, speedRpm, injection } = running;
  requireRange({ what: 'The pulse', value: pulseS * 1000, min: 0, max: 200, unit: 'ms' });
  const periodS = shotPeriod(speedRpm, injection);
  const dutyRatio = pulseS / periodS;
  return {
    value: { periodS, dutyRatio },
    assumptions: [shotWords(injection)],
    sources: ['HEYWOOD'],
    caveats: tooOpen(dutyRatio),
  };
}

/**
 * Longest pulse at a duty limit: t = D·T, the inverse of injectorDuty.
 *
 * @throws UserError 'out-of-range' as injectorDuty, or for a duty outside 0.05 to 1.
 */
export function longestPulse(running: {
  readonly dutyRatio: number;
  readonly speedRpm: number;
  readonly injection: Injection;
}): Calculation<{ readonly periodS: number; readonly pulseS: number }> {
  const { dutyRatio, speedRpm, injection } = running;
  requireRange({ what: 'The duty', value: dutyRatio * 100, min: 5, max: 100, unit: '%' });
  const periodS = shotPeriod(speedRpm, injection);
  return {
    value: { periodS, pulseS: dutyRatio * periodS },
    assumptions: [shotWords(injection)],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

export const injectorDutySheet: SumSheet = {
  title: 'Injector duty and longest pulse',
  formula: 'D = t/T; T = 120/n, or 60/n with a shot each turn',
  symbols: { t: 'pulse, s', n: 'speed, rpm', T: 'time between shots, s', D: 'duty' },
  sources: ['HEYWOOD'],
  range: '50 to 20 000 rpm, four-stroke',
};

const shotWords = (injection: Injection): string =>
  injection === 'sequential' ? 'four-stroke, one shot in two turns' : 'four-stroke, one shot each turn';

function tooOpen(dutyRatio: number): readonly string[] {
  if (dutyRatio > 1) return ['Over 100 %: the injector never closes and the engine runs lean. Ease off.'];
  return dutyRatio > 0.9
    ? ['Above 90 % an injector may not close between shots; nothing is left for a cold or hot day.']
    : [];
}
