import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { STEEL_GPA } from './stretch.ts';

/** What is clamped: modulus, GPa, and the two figures of the stiffness formula. */
const CLAMPED = {
  steel: { modulusGpa: 207, a: 0.78715, b: 0.62873 },
  aluminium: { modulusGpa: 71, a: 0.7967, b: 0.63816 },
  'cast iron': { modulusGpa: 100, a: 0.77871, b: 0.61616 },
} as const;

export type Clamped = keyof typeof CLAMPED;

/**
 * Stiffness of bolt and clamped parts: k_b = A_s·E/l, k_m = E_m·d·A·exp(B·d/l).
 *
 * Source: Shigley eqs 8-17 and 8-23, table 8-8 (key SHIGLEY); the latter's figures from memory (key MEM). Valid: one clamped
 * material, thread over the whole grip, d/l 0.05 to 2. Not for: gaskets.
 * @throws UserError 'out-of-range' outside it.
 */
export function jointStiffness(joint: {
  readonly majorMm: number;
  readonly stressAreaMm2: number;
  readonly gripMm: number;
  readonly clamped: Clamped;
}): Calculation<{ readonly boltKnPerMm: number; readonly partsKnPerMm: number }> {
  const { majorMm, stressAreaMm2, gripMm, clamped } = joint;
  const { modulusGpa, a, b } = CLAMPED[clamped];
  requireRange(
    { what: 'The clamped length', value: gripMm, min: majorMm / 2, max: majorMm * 20, unit: 'mm' },
    { what: 'The stress area', value: stressAreaMm2, min: 0.5, max: 8000, unit: 'mm²' },
  );
  return {
    value: {
      boltKnPerMm: (stressAreaMm2 * STEEL_GPA) / gripMm,
      partsKnPerMm: modulusGpa * majorMm * a * Math.exp((b * majorMm) / gripMm),
    },
    assumptions: [
      `${clamped} clamped over ${Number(gripMm.toFixed(1))} mm, no gasket`,
      'steel bolt, thread over the whole grip',
    ],
    sources: ['SHIGLEY', 'MEM'],
    caveats: [],
  };
}

/**
 * Angle that adds clamp force once the parts are snug: φ = 360/P·ΔF·(1/k_b + 1/k_m).
 *
 * Source: Hooke's law on bolt and parts in series (key SHIGLEY). Valid: elastic, parts already in contact. An estimate:
 * coatings, bent flanges and gaskets take degrees of their own.
 * @throws UserError 'out-of-range' outside it.
 */
export function angleForClamp(joint: {
  readonly addedN: number;
  readonly pitchMm: number;
  readonly boltKnPerMm: number;
  readonly partsKnPerMm: number;
}): Calculation<{ readonly angleDeg: number }> {
  const { addedN, pitchMm, boltKnPerMm, partsKnPerMm } = joint;
  requireRange(
    { what: 'The added clamp force', value: addedN, min: 0, max: 2e6, unit: 'N' },
    { what: 'The pitch', value: pitchMm, min: 0.2, max: 8, unit: 'mm' },
  );
  const shortenedMm = (addedN / 1000) * (1 / boltKnPerMm + 1 / partsKnPerMm);
  return {
    value: { angleDeg: (360 / pitchMm) * shortenedMm },
    assumptions: ['parts snug before the angle is counted'],
    sources: ['SHIGLEY'],
    caveats: ['An angle from stiffness is an estimate to check a figure by, never a figure to tighten by.'],
  };
}

/** The inverse of angleForClamp: clamp force added by an angle. @throws UserError 'out-of-range' beyond 720°. */
export function clampOfAngle(joint: {
  readonly angleDeg: number;
  readonly pitchMm: number;
  readonly boltKnPerMm: number;
  readonly partsKnPerMm: number;
}): Calculation<{ readonly addedN: number }> {
  const { angleDeg, ...rest } = joint;
  requireRange({ what: 'The angle', value: angleDeg, min: 0, max: 720, unit: '°' });
  const perNewton = angleForClamp({ ...rest, addedN: 1 });
  return { ...perNewton, value: { addedN: angleDeg / perNewton.value.angleDeg } };
}

/**
 * What the bolt sees of a load on the joint: C = k_b/(k_b + k_m), σ = F_i/A_s + C·P/A_s.
 *
 * Source: Shigley section 8-7, example 8-3 (key SHIGLEY). Valid: while the parts stay clamped, (1 − C)·P < F_i.
 * @throws UserError 'out-of-range' when the load would part the joint.
 */
export function serviceStress(joint: {
  readonly clampN: number;
  readonly loadN: number;
  readonly stressAreaMm2: number;
  readonly boltKnPerMm: number;
  readonly partsKnPerMm: number;
}): Calculation<{ readonly boltShareRatio: number; readonly clampMpa: number; readonly serviceMpa: number }> {
  const { clampN, loadN, stressAreaMm2, boltKnPerMm, partsKnPerMm } = joint;
  const boltShareRatio = boltKnPerMm / (boltKnPerMm + partsKnPerMm);
  requireRange({
    what: 'The load on the joint',
    value: loadN,
    min: 0,
    max: Math.floor(clampN / (1 - boltShareRatio)),
    unit: 'N (more than that parts it)',
  });
  const clampMpa = clampN / stressAreaMm2;
  return {
    value: { boltShareRatio, clampMpa, serviceMpa: clampMpa + (boltShareRatio * loadN) / stressAreaMm2 },
    assumptions: ['load along the bolt'],
    sources: ['SHIGLEY'],
    caveats: [],
  };
}

export const jointSheet: SumSheet = {
  title: 'Bolt and clamped parts: angle, and what the bolt sees of a load',
  formula:
    'k_b = A_s·E/l; k_m = E_m·d·A·exp(B·d/l); φ = 360/P·ΔF·(1/k_b + 1/k_m); σ = F_i/A_s + k_b/(k_b + k_m)·P/A_s',
  symbols: {
    'k_b, k_m': 'stiffness of bolt and parts, kN/mm',
    l: 'clamped length, mm',
    'A, B': 'figures of the clamped material',
    φ: 'angle after snug, °',
    ΔF: 'clamp force added, N',
  },
  sources: ['SHIGLEY', 'MEM'],
  range: 'elastic, one material, no gasket, clamped length d/2 to 20·d; an estimate',
};
