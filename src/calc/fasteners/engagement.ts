import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** Shear strength over tensile strength of the tapped metal; common practice 0.55 to 0.65. */
const SHEAR_SHARE = 0.6;
/** cot 60°, for the flanks of the thread. */
const FLANK = 0.57735;

/**
 * Length of thread at which the bolt breaks before the tapped hole strips:
 * L = A_s·R_m/(π/P·d_min·(P/2 + 0.57735·(d_min − D2_max))·0.6·R_m,hole).
 *
 * Source: shear area of the female thread, FED-STD-H28/2B, ASME B1.1 appendix B (key H28, from memory); the 0.6 is common
 * practice. Valid: at the limits of 6g/6H or 2A/2B, tapped metal 80 to 700 MPa. Not for: inserts, chamfered first turns.
 * @throws UserError 'out-of-range' outside it.
 */
export function engagementLength(hole: {
  readonly majorMm: number;
  readonly pitchMm: number;
  readonly leastMajorMm: number;
  readonly mostPitchDiameterMm: number;
  readonly stressAreaMm2: number;
  readonly boltTensileMpa: number;
  readonly holeTensileMpa: number;
}): Calculation<{ readonly engagementMm: number; readonly diametersRatio: number; readonly turns: number }> {
  const {
    majorMm,
    pitchMm,
    leastMajorMm,
    mostPitchDiameterMm,
    stressAreaMm2,
    boltTensileMpa,
    holeTensileMpa,
  } = hole;
  requireRange(
    { what: 'The strength of the tapped metal', value: holeTensileMpa, min: 80, max: 700, unit: 'MPa' },
    { what: 'The strength of the bolt', value: boltTensileMpa, min: 200, max: 1500, unit: 'MPa' },
  );
  const perMm =
    (Math.PI / pitchMm) * leastMajorMm * (pitchMm / 2 + FLANK * (leastMajorMm - mostPitchDiameterMm));
  const engagementMm = (stressAreaMm2 * boltTensileMpa) / (perMm * SHEAR_SHARE * holeTensileMpa);
  return {
    value: { engagementMm, diametersRatio: engagementMm / majorMm, turns: engagementMm / pitchMm },
    assumptions: [
      `tapped metal of ${Math.round(holeTensileMpa)} MPa, shearing at ${SHEAR_SHARE} of that`,
      'full threads only: chamfers and the point of the bolt come on top',
    ],
    sources: ['H28', 'COMMON'],
    caveats: [
      'Aluminium threads strip at once and without warning: oil or coolant may follow. Doubtful threads get an insert.',
    ],
  };
}

export const engagementLengthSheet: SumSheet = {
  title: 'Thread engagement in a softer metal',
  formula: 'L = A_s·R_m/(π/P·d_min·(P/2 + 0.57735·(d_min − D2_max))·0.6·R_m,hole)',
  symbols: {
    d_min: 'least major diameter of the bolt, mm',
    D2_max: 'greatest pitch diameter of the hole, mm',
    R_m: 'tensile strength of the bolt, MPa',
    'R_m,hole': 'tensile strength of the tapped metal, MPa',
  },
  sources: ['H28', 'COMMON'],
  range: 'limits of 6g/6H or 2A/2B; tapped metal 80 to 700 MPa; no inserts',
};
