import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

interface Cylinders {
  readonly boreMm: number;
  readonly strokeMm: number;
  readonly cylinders: number;
}

/** Area of a bore in mm². */
export const boreAreaMm2 = (boreMm: number): number => (Math.PI / 4) * boreMm ** 2;

/**
 * Displacement: V_d = π/4 · B² · S · n.
 *
 * Source: geometry. Valid: bore and stroke 10 to 400 mm, 1 to 24 cylinders.
 * @throws UserError 'out-of-range' outside it.
 */
export function displacement(
  engine: Cylinders,
): Calculation<{ readonly displacementL: number; readonly perCylinderL: number }> {
  const { boreMm, strokeMm, cylinders } = engine;
  requireRange(
    { what: 'The bore', value: boreMm, min: 10, max: 400, unit: 'mm' },
    { what: 'The stroke', value: strokeMm, min: 10, max: 400, unit: 'mm' },
    { what: 'The number of cylinders', value: cylinders, min: 1, max: 24, unit: '' },
  );
  const perCylinderL = (boreAreaMm2(boreMm) * strokeMm) / 1e6;
  return {
    value: { displacementL: perCylinderL * cylinders, perCylinderL },
    assumptions: [],
    sources: ['GEOMETRY'],
    caveats: [],
  };
}

/**
 * Displacement after boring out: the bore grows by the oversize, which is said on the diameter.
 *
 * Source: geometry. Valid: oversize 0 to 10 mm, else as displacement. Not for: whether the wall is thick enough, which
 * only measuring it tells.
 * @throws UserError 'out-of-range' outside it.
 */
export function overbore(
  engine: Cylinders & { readonly oversizeMm: number },
): Calculation<{ readonly displacementL: number; readonly gainL: number }> {
  const { oversizeMm } = engine;
  requireRange({ what: 'The oversize', value: oversizeMm, min: 0, max: 10, unit: 'mm' });
  const before = displacement(engine).value.displacementL;
  const after = displacement({ ...engine, boreMm: engine.boreMm + oversizeMm }).value.displacementL;
  return {
    value: { displacementL: after, gainL: after - before },
    assumptions: [`oversize ${sayNumber(oversizeMm)} mm on the diameter`],
    sources: ['GEOMETRY'],
    caveats: ['Have the wall measured before boring: what is left is not to be told from outside.'],
  };
}

/**
 * Bore for a displacement at a ratio of stroke to bore: B = (4·V_d/(π·n·k))^(1/3), S = k·B.
 *
 * Source: geometry. Valid: 0.02 to 30 L, 1 to 24 cylinders, k 0.3 to 3.
 * @throws UserError 'out-of-range' outside it.
 */
export function boreForDisplacement(wanted: {
  readonly displacementL: number;
  readonly cylinders: number;
  /** Stroke over bore; 1 is a square engine. */
  readonly strokeRatio: number;
}): Calculation<{ readonly boreMm: number; readonly strokeMm: number }> {
  const { displacementL, cylinders, strokeRatio } = wanted;
  requireRange(
    { what: 'The displacement', value: displacementL, min: 0.02, max: 30, unit: 'L' },
    { what: 'The number of cylinders', value: cylinders, min: 1, max: 24, unit: '' },
    { what: 'Stroke over bore', value: strokeRatio, min: 0.3, max: 3, unit: '' },
  );
  const boreMm = Math.cbrt((4e6 * displacementL) / (Math.PI * cylinders * strokeRatio));
  return {
    value: { boreMm, strokeMm: boreMm * strokeRatio },
    assumptions: [],
    sources: ['GEOMETRY'],
    caveats: [],
  };
}

export const displacementSheet: SumSheet = {
  title: 'Displacement, boring out, and bore for a displacement',
  formula: 'V_d = π/4 · B² · S · n',
  symbols: { V_d: 'displacement', B: 'bore', S: 'stroke', n: 'number of cylinders' },
  sources: ['GEOMETRY'],
  range: 'bore and stroke 10 to 400 mm, 1 to 24 cylinders',
};
