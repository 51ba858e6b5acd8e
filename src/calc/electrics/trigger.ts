import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/**
 * Frequency of a trigger wheel: f = z·N, missing teeth counted as if they were there; 360°/z for each.
 *
 * Source: kinematics (key DEFINITION). Valid: 1 to 720 positions, up to 25 000 rpm.
 * @throws UserError 'out-of-range' outside it.
 */
export function triggerFrequency(wheel: {
  readonly positions: number;
  readonly speedRpm: number;
}): Calculation<{ readonly frequencyHz: number; readonly angleDeg: number }> {
  const { positions, speedRpm } = wheel;
  requireRange(
    { what: 'The number of tooth positions', value: positions, min: 1, max: 720, unit: '' },
    { what: 'The speed', value: speedRpm, min: 0, max: 25_000, unit: 'rpm' },
  );
  return {
    value: { frequencyHz: (positions * speedRpm) / 60, angleDeg: 360 / positions },
    assumptions: ['missing teeth counted as if they were there'],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

export const triggerFrequencySheet: SumSheet = {
  title: 'Frequency of a trigger wheel',
  formula: 'f = z·N',
  symbols: { f: 'tooth frequency, Hz', z: 'tooth positions per turn', N: 'turns per second' },
  sources: ['DEFINITION'],
  range: '1 to 720 positions, to 25 000 rpm',
};
