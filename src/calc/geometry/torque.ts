import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

const KW_PER_NM_RPM = (2 * Math.PI) / 60_000;

export type Cycle = 'four-stroke' | 'two-stroke';

/** Angle of one cycle, rad. */
const ANGLE: Readonly<Record<Cycle, number>> = { 'four-stroke': 4 * Math.PI, 'two-stroke': 2 * Math.PI };

/**
 * Brake mean effective pressure: bmep = 4π·T/V_d, of a two-stroke 2π·T/V_d.
 *
 * Source: Heywood eqs 2.19 and 2.20 (key HEYWOOD). Valid: 0.02 to 30 L, 0.1 to 5000 N·m.
 * @throws UserError 'out-of-range' outside it.
 */
export function meanEffectivePressure(engine: {
  readonly torqueNm: number;
  readonly displacementL: number;
  readonly cycle?: Cycle;
}): Calculation<{ readonly bmepKpa: number }> {
  const { torqueNm, displacementL, cycle = 'four-stroke' } = engine;
  requireRange(
    { what: 'The torque', value: torqueNm, min: 0.1, max: 5000, unit: 'N·m' },
    { what: 'The displacement', value: displacementL, min: 0.02, max: 30, unit: 'L' },
  );
  return {
    value: { bmepKpa: (ANGLE[cycle] * torqueNm) / displacementL },
    assumptions: [cycle],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

/**
 * Torque at a mean effective pressure: T = bmep·V_d/(4π), of a two-stroke over 2π, the inverse of meanEffectivePressure.
 *
 * Source and limits: as there (key HEYWOOD). Valid: 10 to 8000 kPa.
 * @throws UserError 'out-of-range' outside it.
 */
export function torqueForMeanPressure(engine: {
  readonly bmepKpa: number;
  readonly displacementL: number;
  readonly cycle?: Cycle;
}): Calculation<{ readonly torqueNm: number }> {
  const { bmepKpa, displacementL, cycle = 'four-stroke' } = engine;
  requireRange(
    { what: 'The mean effective pressure', value: bmepKpa, min: 10, max: 8000, unit: 'kPa' },
    { what: 'The displacement', value: displacementL, min: 0.02, max: 30, unit: 'L' },
  );
  return {
    value: { torqueNm: (bmepKpa * displacementL) / ANGLE[cycle] },
    assumptions: [cycle],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

export const meanEffectivePressureSheet: SumSheet = {
  title: 'Brake mean effective pressure',
  formula: 'bmep = 4π·T/V_d, of a two-stroke 2π·T/V_d',
  symbols: { bmep: 'kPa with N·m and L', T: 'torque, N·m', V_d: 'displacement, L' },
  sources: ['HEYWOOD'],
  range: '0.02 to 30 L, 0.1 to 5000 N·m',
};

/**
 * Power of a torque at a speed: P = T·2π·N.
 *
 * Source: definition (key DEFINITION). Valid: 0.1 to 5000 N·m, 1 to 25 000 rpm.
 * @throws UserError 'out-of-range' outside it.
 */
export function powerOfTorque(shaft: {
  readonly torqueNm: number;
  readonly speedRpm: number;
}): Calculation<{ readonly powerKw: number }> {
  const { torqueNm, speedRpm } = shaft;
  requireRange(
    { what: 'The torque', value: torqueNm, min: 0.1, max: 5000, unit: 'N·m' },
    { what: 'The speed', value: speedRpm, min: 1, max: 25_000, unit: 'rpm' },
  );
  return {
    value: { powerKw: torqueNm * speedRpm * KW_PER_NM_RPM },
    assumptions: [],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

/**
 * Torque of a power at a speed: T = P/(2π·N).
 *
 * Source: definition (key DEFINITION). Valid: 0.1 to 5000 kW, 1 to 25 000 rpm.
 * @throws UserError 'out-of-range' outside it.
 */
export function torqueOfPower(shaft: {
  readonly powerKw: number;
  readonly speedRpm: number;
}): Calculation<{ readonly torqueNm: number }> {
  const { powerKw, speedRpm } = shaft;
  requireRange(
    { what: 'The power', value: powerKw, min: 0.1, max: 5000, unit: 'kW' },
    { what: 'The speed', value: speedRpm, min: 1, max: 25_000, unit: 'rpm' },
  );
  return {
    value: { torqueNm: powerKw / (speedRpm * KW_PER_NM_RPM) },
    assumptions: [],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

export const powerOfTorqueSheet: SumSheet = {
  title: 'Power from torque and torque from power',
  formula: 'P = 2π·T·N',
  symbols: { P: 'power', T: 'torque', N: 'speed, 1/s' },
  sources: ['DEFINITION'],
  range: 'any rotating shaft',
};
