import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { stressArea } from './stress-area.ts';

/**
 * Assembly preload and torque at a coefficient of friction, by utilisation of the yield strength under tension and twist:
 * F_M = ν·R_p0.2·A_s/√(1 + 3·(3/2·d2/d_s·(P/(π·d2) + 1.155·μ))²), d_s = (d2 + d3)/2;
 * M_A = F_M·(0.159·P + 0.577·d2·μ + D_Km/2·μ).
 *
 * Source: VDI 2230 (key VDI2230); formula from memory, agrees with its table of fine threads. Valid: metric bolts 1 to
 * 100 mm, μ 0.04 to 0.4, ν 0.1 to 1, the same μ in thread and under the head. Not for: reduced shanks.
 * @throws UserError 'out-of-range' outside it.
 */
export function torqueByFriction(bolt: {
  readonly majorMm: number;
  readonly pitchMm: number;
  readonly yieldMpa: number;
  readonly friction: number;
  /** Mean diameter on which the head rubs. */
  readonly headMeanMm: number;
  readonly utilisationRatio?: number;
}): Calculation<{ readonly torqueNm: number; readonly clampN: number }> {
  const { majorMm, pitchMm, yieldMpa, friction, headMeanMm, utilisationRatio = 0.9 } = bolt;
  requireRange(
    { what: 'The coefficient of friction', value: friction, min: 0.04, max: 0.4, unit: '' },
    { what: 'The yield strength', value: yieldMpa, min: 100, max: 1500, unit: 'MPa' },
    { what: 'The utilisation', value: utilisationRatio, min: 0.1, max: 1, unit: '', shown: 'percent' },
    {
      what: 'The mean diameter under the head',
      value: headMeanMm,
      min: majorMm,
      max: 3 * majorMm,
      unit: 'mm',
    },
  );
  const { stressAreaMm2, pitchDiameterMm, rootDiameterMm } = stressArea({ majorMm, pitchMm }).value;
  const stressMm = (pitchDiameterMm + rootDiameterMm) / 2;
  const twist =
    1.5 * (pitchDiameterMm / stressMm) * (pitchMm / (Math.PI * pitchDiameterMm) + 1.155 * friction);
  const clampN = (utilisationRatio * yieldMpa * stressAreaMm2) / Math.sqrt(1 + 3 * twist ** 2);
  const armMm = 0.159 * pitchMm + 0.577 * pitchDiameterMm * friction + (headMeanMm / 2) * friction;
  return {
    value: { clampN, torqueNm: (clampN * armMm) / 1000 },
    assumptions: [
      `friction ${friction} in thread and under the head`,
      `${Math.round(utilisationRatio * 100)} % of the yield strength used, tension and twist together`,
    ],
    sources: ['VDI2230'],
    caveats: [],
  };
}

/**
 * Torque that turns a loaded screw: T = F·d_m/2·(tan λ + f/cos α)/(1 − f·tan λ/cos α) + F·f_c·d_c/2, d_m = (d + d_r)/2, α = 30°.
 *
 * Source: Shigley eq. 8-26 (key SHIGLEY). Valid: 60° threads, f 0.02 to 0.5.
 * @throws UserError 'out-of-range' outside it.
 */
export function torqueOfScrew(bolt: {
  readonly clampN: number;
  readonly majorMm: number;
  readonly rootMm: number;
  readonly pitchMm: number;
  readonly friction: number;
  /** Mean diameter under the head; 1.25·d where it is not known. */
  readonly headMeanMm?: number;
}): Calculation<{ readonly torqueNm: number }> {
  const { clampN, majorMm, rootMm, pitchMm, friction, headMeanMm = 1.25 * majorMm } = bolt;
  requireRange(
    { what: 'The clamp force', value: clampN, min: 1, max: 2e6, unit: 'N' },
    { what: 'The root diameter', value: rootMm, min: 0.5 * majorMm, max: majorMm, unit: 'mm' },
    { what: 'The coefficient of friction', value: friction, min: 0.02, max: 0.5, unit: '' },
  );
  const meanMm = (majorMm + rootMm) / 2;
  const lead = pitchMm / (Math.PI * meanMm);
  const wedge = friction / Math.cos(Math.PI / 6);
  const threadNmm = (clampN * meanMm * (lead + wedge)) / 2 / (1 - lead * wedge);
  return {
    value: { torqueNm: (threadNmm + (clampN * friction * headMeanMm) / 2) / 1000 },
    assumptions: [`friction ${friction} in thread and under the head`],
    sources: ['SHIGLEY'],
    caveats: [],
  };
}

export const byFrictionSheet: SumSheet = {
  title: 'Assembly preload and torque from the coefficient of friction',
  formula:
    'F_M = ν·R_p0.2·A_s/√(1 + 3·(3/2·d2/d_s·(P/(π·d2) + 1.155·μ))²); M_A = F_M·(0.159·P + 0.577·d2·μ + D_Km/2·μ)',
  symbols: {
    ν: 'share of the yield strength used, 0.9',
    'R_p0.2': 'yield strength, MPa',
    d_s: '(d2 + d3)/2, mm',
    μ: 'coefficient of friction in thread and under the head',
    D_Km: 'mean diameter under the head, mm',
  },
  sources: ['VDI2230', 'SHIGLEY'],
  range: 'μ 0.04 to 0.4; full shank',
};
