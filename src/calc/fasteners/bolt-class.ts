import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';

/** What a class or grade promises over a span of diameters. */
export interface BoltClass {
  /** As it stands on the head: `10.9`, `grade 8`, `A2-70`. */
  readonly id: string;
  readonly standard: string;
  readonly overMm: number;
  readonly toMm: number;
  readonly tensileMpa: number;
  /** R_p0.2, or the yield strength. */
  readonly yieldMpa: number;
  /** Stress under proof load; the standard of stainless bolts has none. */
  readonly proofMpa: number | undefined;
  readonly source: readonly string[];
}

/** @throws UserError 'out-of-range' when the class is not made in that diameter, with the span that is. */
export function classFor(id: string, majorMm: number, classes: readonly BoltClass[]): BoltClass {
  const rows = classes.filter((row) => row.id === id);
  const found = rows.find((row) => majorMm > row.overMm && majorMm <= row.toMm);
  if (found !== undefined) return found;
  const least = Math.min(...rows.map(({ overMm }) => overMm));
  const most = Math.max(...rows.map(({ toMm }) => toMm));
  throw new UserError(
    'out-of-range',
    `${rows[0]?.standard ?? 'No standard'} has ${id} for more than ${least} mm up to ${most} mm only; this bolt is ${Number(majorMm.toFixed(3))} mm. Take another class, or the maker's figure.`,
  );
}

/**
 * Load a bolt carries at a stress: F = A_s·S, for proof load and least breaking load.
 *
 * Source: ISO 898-1 tables 4 to 7, SAE J429 (keys ISO898, J429). Valid: 0.5 to 8000 mm², 10 to 2000 MPa.
 * @throws UserError 'out-of-range' outside it.
 */
export function loadAtStress(bolt: {
  readonly stressAreaMm2: number;
  readonly stressMpa: number;
}): Calculation<{ readonly loadN: number }> {
  const { stressAreaMm2, stressMpa } = bolt;
  requireRange(
    { what: 'The stress area', value: stressAreaMm2, min: 0.5, max: 8000, unit: 'mm²' },
    { what: 'The stress', value: stressMpa, min: 10, max: 2000, unit: 'MPa' },
  );
  return { value: { loadN: stressAreaMm2 * stressMpa }, assumptions: [], sources: ['ISO898'], caveats: [] };
}

export const loadAtStressSheet: SumSheet = {
  title: 'Proof load and breaking load',
  formula: 'F_p = A_s·S_p; F_m = A_s·R_m',
  symbols: {
    A_s: 'stress area, mm²',
    S_p: 'stress under proof load, MPa',
    R_m: 'least tensile strength, MPa',
  },
  sources: ['ISO898', 'J429'],
  range: 'classes of ISO 898-1, grades of SAE J429, stainless classes of ISO 3506-1 (without a proof load)',
};
