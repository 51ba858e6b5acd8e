import { INCH_MM } from '../units/definitions.ts';
import { femaleCrest, maleCrest } from './crest.ts';
import type { Range, Thread } from './thread.ts';

export interface WhitworthRow {
  readonly id: string;
  readonly nominal: string;
  readonly majorIn: number;
  readonly tpi: number;
  readonly series: string;
  readonly source: readonly string[];
}

/**
 * Limits of size of the Whitworth form, free class outside and the one minor tolerance inside, in inches.
 *
 * With T = 0.002·∛D + 0.003·√L + 0.005·√p and L = D: effective −1.5·T, major −(1.5·T + 0.01·√p); minor of the nut
 * +0.2·p + 0.004 (26 tpi and finer), 0.005 (22 and 24), 0.007 (20 and coarser); depth 0.640327·p.
 * Source: BS 84, form from key WHITF, tolerances from memory (key MEM). Valid: 1/4 to 1 in. No British Standard
 * covers the 26 tpi brass thread: there the limits are approximate.
 */
export function whitworthLimits(size: { readonly majorIn: number; readonly tpi: number }): {
  major: readonly [number, number];
  malePitch: readonly [number, number];
  minor: readonly [number, number];
} {
  const { majorIn, tpi } = size;
  const p = 1 / tpi;
  const free = 1.5 * (0.002 * Math.cbrt(majorIn) + 0.003 * Math.sqrt(majorIn) + 0.005 * Math.sqrt(p));
  const effective = majorIn - 0.640327 * p;
  const minor = majorIn - 1.280654 * p;
  const minorExtra = tpi >= 26 ? 0.004 : tpi >= 22 ? 0.005 : 0.007;
  return {
    major: [majorIn - free - 0.01 * Math.sqrt(p), majorIn],
    malePitch: [effective - free, effective],
    minor: [minor, minor + 0.2 * p + minorExtra],
  };
}

export function whitworthThread(row: WhitworthRow): Thread {
  const inches = whitworthLimits(row);
  const range = ([minIn, maxIn]: readonly [number, number]): Range => ({
    minMm: minIn * INCH_MM,
    maxMm: maxIn * INCH_MM,
  });
  const major = range(inches.major);
  const minor = range(inches.minor);
  const majorMm = row.majorIn * INCH_MM;
  const pitchMm = INCH_MM / row.tpi;
  return {
    id: row.id,
    family: 'whitworth',
    series: row.series,
    nominal: row.nominal,
    pitchMm,
    tpi: row.tpi,
    formAngleDeg: 55,
    tapered: false,
    basic: {
      majorMm,
      pitchDiameterMm: majorMm - 0.640327 * pitchMm,
      minorMm: majorMm - 1.280654 * pitchMm,
    },
    classes: { male: 'free', female: 'normal' },
    limits: { major, malePitch: range(inches.malePitch), minor, femalePitch: undefined },
    crest: { male: maleCrest(major, majorMm), female: femaleCrest(minor) },
    sameAs: [],
    sources: [...row.source, 'WHITF', 'MEM'],
  };
}
