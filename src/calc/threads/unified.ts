import { INCH_MM } from '../units/definitions.ts';
import { femaleCrest, maleCrest } from './crest.ts';
import type { Range, Thread } from './thread.ts';

export interface UnifiedRow {
  readonly id: string;
  readonly nominal: string;
  readonly majorIn: number;
  readonly tpi: number;
  readonly series: string;
  readonly source: readonly string[];
}

interface UnifiedSize {
  readonly majorIn: number;
  readonly tpi: number;
  readonly series: string;
}

/** Limits in inches, unrounded. */
export interface UnifiedLimits {
  readonly majorMin: number;
  readonly majorMax: number;
  readonly malePitchMin: number;
  readonly malePitchMax: number;
  readonly minorMin: number;
  readonly minorMax: number;
  readonly femalePitchMin: number;
  readonly femalePitchMax: number;
}

/** Length of engagement the tolerance is for: D for UNC, UNF and 8-UN, nine pitches otherwise (ASME B1.1). */
function engagementIn({ majorIn, tpi, series }: UnifiedSize): number {
  return series === 'UNC' || series === 'UNF' || (series === 'UN' && tpi === 8) ? majorIn : 9 / tpi;
}

/**
 * Tolerance on the minor diameter of a 2B thread, in: 0.25·P − 0.4·P² from 1/4 in up (0.15·P coarser than 4 tpi);
 * below that 0.05·P^(2/3) + 0.03·P/D − 0.002, not under the former and not over 0.394·P.
 */
function minorToleranceIn(majorIn: number, pitchIn: number): number {
  const large = pitchIn > 0.25 ? 0.15 * pitchIn : 0.25 * pitchIn - 0.4 * pitchIn ** 2;
  if (majorIn >= 0.25) return large;
  const small = 0.05 * pitchIn ** (2 / 3) + (0.03 * pitchIn) / majorIn - 0.002;
  return Math.min(Math.max(small, large), 0.394 * pitchIn);
}

/**
 * Limits of size for class 2A outside and 2B inside, in inches.
 *
 * T_d2 = 0.0015·∛D + 0.0015·√LE + 0.015·∛P²; allowance 0.3·T_d2; T_d = 0.06·∛P²; T_D2 = 1.3·T_d2.
 * Source: ASME B1.1 clause 8.3 (key B1.1F); the small-size minor tolerance from memory (key MEM). The standard prints
 * 2B minor diameters to 0.001 in from 1/4 in up; nothing is rounded here. Valid: uncoated, standard engagement.
 */
export function unifiedLimits(size: UnifiedSize): UnifiedLimits {
  const p = 1 / size.tpi;
  const d = size.majorIn;
  const pitchDiameter = d - 0.64951905 * p;
  const minor = d - 1.08253175 * p;
  const td2 = 0.0015 * Math.cbrt(d) + 0.0015 * Math.sqrt(engagementIn(size)) + 0.015 * p ** (2 / 3);
  const allowance = 0.3 * td2;
  return {
    majorMax: d - allowance,
    majorMin: d - allowance - 0.06 * p ** (2 / 3),
    malePitchMax: pitchDiameter - allowance,
    malePitchMin: pitchDiameter - allowance - td2,
    minorMin: minor,
    minorMax: minor + minorToleranceIn(d, p),
    femalePitchMin: pitchDiameter,
    femalePitchMax: pitchDiameter + 1.3 * td2,
  };
}

export function unifiedThread(row: UnifiedRow): Thread {
  const inches = unifiedLimits(row);
  const range = (minIn: number, maxIn: number): Range => ({
    minMm: minIn * INCH_MM,
    maxMm: maxIn * INCH_MM,
  });
  const limits = {
    major: range(inches.majorMin, inches.majorMax),
    malePitch: range(inches.malePitchMin, inches.malePitchMax),
    minor: range(inches.minorMin, inches.minorMax),
    femalePitch: range(inches.femalePitchMin, inches.femalePitchMax),
  };
  const majorMm = row.majorIn * INCH_MM;
  const pitchMm = INCH_MM / row.tpi;
  return {
    id: row.id,
    family: 'unified',
    series: row.series,
    nominal: row.nominal,
    pitchMm,
    tpi: row.tpi,
    formAngleDeg: 60,
    tapered: false,
    basic: {
      majorMm,
      pitchDiameterMm: majorMm - 0.64951905 * pitchMm,
      minorMm: majorMm - 1.08253175 * pitchMm,
    },
    classes: { male: '2A', female: '2B' },
    limits,
    crest: { male: maleCrest(limits.major, majorMm), female: femaleCrest(limits.minor) },
    sameAs: [],
    sources: [...row.source, 'B1.1F'],
  };
}
