import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/**
 * How far a pressure has fallen: f = (p₀ − p₁)/p₀, and over another time, fₜ = 1 − (p₁/p₀)^(t/Δt).
 *
 * Source: arithmetic, and a leak that goes with the pressure (key DEFINITION). Valid: p₀ 10 to 30 000 kPa, p₁ 0 to p₀, 0.1 to 1440
 * minutes. Not for: a rail that warms up and rises first.
 * @throws UserError 'out-of-range' outside it.
 */
export function pressureFall(test: {
  readonly startKpa: number;
  readonly endKpa: number;
  readonly minutes: number;
  /** The time a limit is given for. */
  readonly overMinutes: number;
}): Calculation<{ readonly fallRatio: number; readonly overRatio: number }> {
  const { startKpa, endKpa, minutes, overMinutes } = test;
  requireRange(
    { what: 'The pressure at the start', value: startKpa, min: 10, max: 30_000, unit: 'kPa' },
    { what: 'The pressure at the end', value: endKpa, min: 0, max: startKpa, unit: 'kPa' },
    { what: 'The time between', value: minutes, min: 0.1, max: 1440, unit: 'min' },
  );
  const leftRatio = endKpa / startKpa;
  return {
    value: { fallRatio: 1 - leftRatio, overRatio: 1 - leftRatio ** (overMinutes / minutes) },
    assumptions:
      minutes === overMinutes ? [] : [`the leak goes with the pressure: worked out over ${overMinutes} min`],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

export const pressureFallSheet: SumSheet = {
  title: 'Fall of a pressure that should hold',
  formula: 'f = (p₀ − p₁)/p₀; fₜ = 1 − (p₁/p₀)^(t/Δt)',
  symbols: {
    f: 'fall',
    fₜ: 'fall over the time t',
    'p₀, p₁': 'pressure before and after, kPa',
    Δt: 'time between, min',
  },
  sources: ['DEFINITION'],
  range: 'same temperature before and after; limits are common practice',
};
