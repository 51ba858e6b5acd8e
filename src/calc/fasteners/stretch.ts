import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** Young's modulus of steel, GPa (key SHIGLEY: 205 to 207). */
export const STEEL_GPA = 205;

/**
 * Elastic stretch of a bolt: δ = F·L/(A·E).
 *
 * Source: Hooke's law (key SHIGLEY). Valid: to the proof load; one section over the whole length L.
 * @throws UserError 'out-of-range' outside 1 to 2000 mm, 0.5 to 8000 mm², 40 to 250 GPa.
 */
export function boltStretch(bolt: {
  readonly clampN: number;
  readonly lengthMm: number;
  readonly areaMm2: number;
  readonly modulusGpa?: number;
}): Calculation<{ readonly stretchMm: number }> {
  const { clampN, lengthMm, areaMm2, modulusGpa = STEEL_GPA } = bolt;
  requireRange(
    { what: 'The clamp force', value: clampN, min: 0, max: 2e6, unit: 'N' },
    { what: 'The length', value: lengthMm, min: 1, max: 2000, unit: 'mm' },
    { what: 'The area', value: areaMm2, min: 0.5, max: 8000, unit: 'mm²' },
    { what: "Young's modulus", value: modulusGpa, min: 40, max: 250, unit: 'GPa' },
  );
  return {
    value: { stretchMm: (clampN * lengthMm) / (areaMm2 * modulusGpa * 1000) },
    assumptions: [`Young's modulus ${modulusGpa} GPa`, 'one section over the whole length'],
    sources: ['SHIGLEY'],
    caveats: [],
  };
}

/**
 * How far a bolt moves along when it is turned: s = P·φ/360.
 *
 * Source: geometry of the helix (key GEOMETRY). The most a bolt can stretch by it: the joint gives way by its share.
 * @throws UserError 'out-of-range' outside 0 to 3600°.
 */
export function advanceOfAngle(turn: {
  readonly angleDeg: number;
  readonly pitchMm: number;
}): Calculation<{ readonly advanceMm: number }> {
  const { angleDeg, pitchMm } = turn;
  requireRange(
    { what: 'The angle', value: angleDeg, min: 0, max: 3600, unit: '°' },
    { what: 'The pitch', value: pitchMm, min: 0.2, max: 8, unit: 'mm' },
  );
  return {
    value: { advanceMm: (pitchMm * angleDeg) / 360 },
    assumptions: [],
    sources: ['GEOMETRY'],
    caveats: [],
  };
}

export const boltStretchSheet: SumSheet = {
  title: 'Stretch of a bolt, and travel for an angle',
  formula: 'δ = F·L/(A·E); s = P·φ/360',
  symbols: {
    F: 'clamp force, N',
    'L, A': 'length, mm, and section, mm²',
    E: "Young's modulus, 205 GPa for steel",
    φ: 'angle, °',
  },
  sources: ['SHIGLEY', 'GEOMETRY'],
  range: 'elastic, one section over the length',
};
