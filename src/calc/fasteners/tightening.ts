import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

const SCATTER =
  'A torque wrench on the same bolt gives a clamp force 25 to 35 % up or down: most of the torque is friction.';

const nutFactorRange = (value: number) =>
  ({ what: 'The nut factor', value, min: 0.05, max: 0.5, unit: '' }) as const;
const diameterRange = (value: number) =>
  ({ what: 'The diameter', value, min: 1, max: 100, unit: 'mm' }) as const;

/**
 * Tightening torque for a share of the proof load: F = share·A_s·S_p, T = K·F·d.
 *
 * Source: Shigley eqs 8-27 and 8-31, table 8-15 (key SHIGLEY): share 0.75 for what comes apart again, 0.90 for what stays.
 * Valid: K 0.05 to 0.5, share 0.05 to 0.95, d 1 to 100 mm. Not for: bolts tightened past yield, prevailing-torque nuts.
 * @throws UserError 'out-of-range' outside it.
 */
export function torqueForShare(bolt: {
  readonly majorMm: number;
  readonly stressAreaMm2: number;
  readonly proofMpa: number;
  readonly shareRatio: number;
  readonly nutFactor: number;
}): Calculation<{ readonly torqueNm: number; readonly clampN: number }> {
  const { majorMm, stressAreaMm2, proofMpa, shareRatio, nutFactor } = bolt;
  requireRange(
    diameterRange(majorMm),
    { what: 'The stress area', value: stressAreaMm2, min: 0.5, max: 8000, unit: 'mm²' },
    { what: 'The stress under proof load', value: proofMpa, min: 100, max: 1500, unit: 'MPa' },
    { what: 'The clamp share', value: shareRatio, min: 0.05, max: 0.95, unit: '', shown: 'percent' },
    nutFactorRange(nutFactor),
  );
  const clampN = shareRatio * stressAreaMm2 * proofMpa;
  return {
    value: { clampN, torqueNm: (nutFactor * clampN * majorMm) / 1000 },
    assumptions: [
      `clamped to ${Math.round(shareRatio * 100)} % of the proof load`,
      `nut factor K ${nutFactor}`,
    ],
    sources: ['SHIGLEY'],
    caveats: [SCATTER],
  };
}

/**
 * Clamp force of a torque: F = T/(K·d), the inverse of torqueForShare.
 *
 * Source and limits: as there (key SHIGLEY). Valid: 0.1 to 5000 N·m.
 * @throws UserError 'out-of-range' outside it.
 */
export function clampOfTorque(bolt: {
  readonly torqueNm: number;
  readonly majorMm: number;
  readonly nutFactor: number;
}): Calculation<{ readonly clampN: number }> {
  const { torqueNm, majorMm, nutFactor } = bolt;
  requireRange(
    { what: 'The torque', value: torqueNm, min: 0.1, max: 5000, unit: 'N·m' },
    diameterRange(majorMm),
    nutFactorRange(nutFactor),
  );
  return {
    value: { clampN: (torqueNm * 1000) / (nutFactor * majorMm) },
    assumptions: [`nut factor K ${nutFactor}`],
    sources: ['SHIGLEY'],
    caveats: [SCATTER],
  };
}

/**
 * Torque for the same clamp force with other lubrication: T2 = T1·K2/K1.
 *
 * Source: T = K·F·d (key SHIGLEY). Valid: as clampOfTorque.
 * @throws UserError 'out-of-range' outside it.
 */
export function torqueAfterChange(change: {
  readonly torqueNm: number;
  readonly fromNutFactor: number;
  readonly toNutFactor: number;
}): Calculation<{ readonly torqueNm: number }> {
  const { torqueNm, fromNutFactor, toNutFactor } = change;
  requireRange(
    { what: 'The torque', value: torqueNm, min: 0.1, max: 5000, unit: 'N·m' },
    nutFactorRange(fromNutFactor),
    nutFactorRange(toNutFactor),
  );
  return {
    value: { torqueNm: (torqueNm * toNutFactor) / fromNutFactor },
    assumptions: [`nut factor K ${fromNutFactor} before, ${toNutFactor} now`],
    sources: ['SHIGLEY'],
    caveats: [SCATTER],
  };
}

export const tighteningSheet: SumSheet = {
  title: 'Tightening torque, and clamp force of a torque',
  formula: 'F = share·A_s·S_p; T = K·F·d; T2 = T1·K2/K1',
  symbols: {
    F: 'clamp force, N',
    share: '0.75 for what comes apart again, 0.90 for what stays',
    K: 'nut factor: 0.20 dry, 0.18 oiled, 0.12 with an anti-seize compound',
    d: 'nominal diameter, mm',
  },
  sources: ['SHIGLEY'],
  range: 'K 0.05 to 0.5, share to 0.95; not for bolts tightened past yield',
};
