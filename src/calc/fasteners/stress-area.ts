import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { isoBasic } from '../threads/iso-metric.ts';

export interface StressArea {
  readonly stressAreaMm2: number;
  readonly pitchDiameterMm: number;
  /** Root of the male thread, d3. */
  readonly rootDiameterMm: number;
}

/**
 * Tensile stress area of a 60° thread: A_s = π/4·((d2 + d3)/2)², d2 = d − 0.649519·P, d3 = d − 1.226869·P.
 *
 * Source: ISO 898-1 clause 9 (key ISO898). Valid: metric threads 1 to 100 mm. Unified threads take d3 = d − 1.299038·P, as
 * ASME B1.1 has it (key SHIGLEY): `sharp`. Not for: reduced shanks, which break there first.
 * @throws UserError 'out-of-range' outside it, or when no core would be left.
 */
export function stressArea(bolt: {
  readonly majorMm: number;
  readonly pitchMm: number;
  /** Root of the Unified table, sharp instead of rounded. */
  readonly sharp?: boolean;
}): Calculation<StressArea> {
  const { majorMm, pitchMm, sharp = false } = bolt;
  requireRange(
    { what: 'The diameter', value: majorMm, min: 1, max: 100, unit: 'mm' },
    { what: 'The pitch', value: pitchMm, min: 0.2, max: 8, unit: 'mm' },
  );
  const { pitchDiameterMm } = isoBasic({ nominalMm: majorMm, pitchMm });
  const rootDiameterMm = majorMm - (sharp ? 1.299038 : 1.226869) * pitchMm;
  return {
    value: {
      stressAreaMm2: (Math.PI / 4) * ((pitchDiameterMm + rootDiameterMm) / 2) ** 2,
      pitchDiameterMm,
      rootDiameterMm,
    },
    assumptions: ['full shank, no thinner than the thread'],
    sources: [sharp ? 'SHIGLEY' : 'ISO898'],
    caveats: [],
  };
}

export const stressAreaSheet: SumSheet = {
  title: 'Tensile stress area of a bolt',
  formula: 'A_s = π/4·((d2 + d3)/2)²; d2 = d − 0.649519·P; d3 = d − 1.226869·P (Unified: 1.299038·P)',
  symbols: { 'd, P': 'diameter and pitch, mm', 'd2, d3': 'pitch and root diameter, mm', A_s: 'mm²' },
  sources: ['ISO898', 'SHIGLEY'],
  range: '60° threads, 1 to 100 mm',
};
