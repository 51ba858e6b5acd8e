import { INCH_MM } from '../units/definitions.ts';
import { femaleCrest, maleCrest } from './crest.ts';
import type { CrestBand, Range, Thread } from './thread.ts';

/** Parallel pipe thread that seals elsewhere (ISO 228-1), as published, mm. */
export interface Iso228Row {
  readonly id: string;
  readonly nominal: string;
  readonly tpi: number;
  readonly majorMm: number;
  readonly pitchDiameterMm: number;
  readonly minorMm: number;
  readonly majorToleranceMm: number;
  readonly pitchToleranceAMm: number;
  readonly pitchToleranceBMm: number;
  readonly minorToleranceMm: number;
  readonly sameAs: readonly string[];
}

/** Taper pipe thread that seals on the thread (ISO 7-1), mm. */
export interface Iso7Row {
  readonly id: string;
  readonly nominal: string;
  readonly tpi: number;
  readonly gaugeMajorMm: number;
  readonly gaugeLengthMm: number;
  readonly gaugeToleranceMm: number;
  readonly beyondGaugeMm: number;
  readonly sameAs: readonly string[];
}

/** American taper pipe thread (ASME B1.20.1), inches. */
export interface NptRow {
  readonly id: string;
  readonly nominal: string;
  readonly tpi: number;
  readonly pipeOdIn: number;
  readonly e0In: number;
  readonly e1In: number;
  readonly l2In: number;
}

/** Diameter gained per unit of length along a 1:16 taper (ISO 7-1, ASME B1.20.1). */
export const PIPE_TAPER = 1 / 16;

/** A taper crest is rubbed or cut short less often than it is simply read at another place along the thread. */
const TAPER_TAIL_SHARE = 0.05;
const TAPER_TAIL_MM = 0.06;

/**
 * Limits of a G thread, class B outside, mm: published deviations from the basic diameters.
 *
 * Source: ISO 228-1 (key THREADLIB-G). Class A halves the male pitch tolerance and nothing else.
 */
export function iso228Thread(row: Iso228Row): Thread {
  const major: Range = { minMm: row.majorMm - row.majorToleranceMm, maxMm: row.majorMm };
  const minor: Range = { minMm: row.minorMm, maxMm: row.minorMm + row.minorToleranceMm };
  return {
    id: row.id,
    family: 'bsp-parallel',
    series: 'G',
    nominal: row.nominal,
    pitchMm: INCH_MM / row.tpi,
    tpi: row.tpi,
    formAngleDeg: 55,
    tapered: false,
    basic: { majorMm: row.majorMm, pitchDiameterMm: row.pitchDiameterMm, minorMm: row.minorMm },
    classes: { male: 'B', female: 'one class' },
    limits: {
      major,
      malePitch: { minMm: row.pitchDiameterMm - row.pitchToleranceBMm, maxMm: row.pitchDiameterMm },
      minor,
      femalePitch: { minMm: row.pitchDiameterMm, maxMm: row.pitchDiameterMm + row.pitchToleranceAMm },
    },
    crest: { male: maleCrest(major, row.majorMm), female: femaleCrest(minor) },
    sameAs: row.sameAs,
    sources: ['THREADLIB-G'],
  };
}

/**
 * Crest diameters along an R thread, mm: from the small end (gauge diameter − gauge length/16) to the end of the
 * useful thread (gauge diameter + length beyond/16); inside, the gauge plane lies at the face within its tolerance.
 *
 * Source: ISO 7-1 (keys PEAL, JISB0203; gauge lengths to 0.01 mm from memory). Depth 0.640327·p.
 */
export function iso7Thread(row: Iso7Row): Thread {
  const pitchMm = INCH_MM / row.tpi;
  const depthMm = 0.640327 * pitchMm;
  const minorMm = row.gaugeMajorMm - 2 * depthMm;
  const slackMm = row.gaugeToleranceMm * PIPE_TAPER;
  const major: Range = {
    minMm: row.gaugeMajorMm - row.gaugeLengthMm * PIPE_TAPER,
    maxMm: row.gaugeMajorMm + row.beyondGaugeMm * PIPE_TAPER,
  };
  const minor: Range = { minMm: minorMm - slackMm, maxMm: minorMm + slackMm };
  return {
    id: row.id,
    family: 'bsp-taper',
    series: 'R',
    nominal: row.nominal,
    pitchMm,
    tpi: row.tpi,
    formAngleDeg: 55,
    tapered: true,
    basic: { majorMm: row.gaugeMajorMm, pitchDiameterMm: row.gaugeMajorMm - depthMm, minorMm },
    classes: { male: 'along the useful thread', female: 'at the face' },
    limits: { major, malePitch: undefined, minor, femalePitch: undefined },
    crest: { male: taperCrest(major, major.maxMm), female: taperCrest(minor, minor.maxMm) },
    sameAs: row.sameAs,
    sources: ['PEAL', 'JISB0203', 'MEM'],
  };
}

/**
 * Crest diameters along an NPT thread, mm: from the small end (E0 + 0.8·p) to the pipe's outside diameter; a solid
 * fitting may carry the theoretical crest further, to E2 + 0.8·p. Inside, at the face: E1 − 0.8·p less one turn, to
 * one turn more with the crests cut as short as allowed.
 *
 * Source: ASME B1.20.1 (keys MH27-1861, MH27-1862); limits of crest truncation from memory (key MEM).
 */
export function nptThread(row: NptRow): Thread {
  const p = 1 / row.tpi;
  const height = 0.8 * p;
  const turnIn = p * PIPE_TAPER;
  const e2In = row.e0In + row.l2In * PIPE_TAPER;
  const faceMinorIn = row.e1In - height;
  const major: Range = { minMm: (row.e0In + height) * INCH_MM, maxMm: row.pipeOdIn * INCH_MM };
  const minor: Range = {
    minMm: (faceMinorIn - turnIn) * INCH_MM,
    maxMm: (faceMinorIn + turnIn + 2 * truncationSpreadIn(row.tpi)) * INCH_MM,
  };
  return {
    id: row.id,
    family: 'npt',
    series: 'NPT',
    nominal: row.nominal,
    pitchMm: p * INCH_MM,
    tpi: row.tpi,
    formAngleDeg: 60,
    tapered: true,
    basic: {
      majorMm: (row.e1In + height) * INCH_MM,
      pitchDiameterMm: row.e1In * INCH_MM,
      minorMm: faceMinorIn * INCH_MM,
    },
    classes: { male: 'small end to pipe outside', female: 'at the face' },
    limits: { major, malePitch: undefined, minor, femalePitch: undefined },
    crest: {
      male: taperCrest(major, (e2In + height) * INCH_MM),
      female: taperCrest(minor, minor.maxMm),
    },
    sameAs: [],
    sources: ['MH27-1861', 'MH27-1862', 'MEM'],
  };
}

/** Longest less shortest permitted crest truncation, in (ASME B1.20.1, from memory). */
function truncationSpreadIn(tpi: number): number {
  if (tpi >= 27) return 0.0024;
  if (tpi >= 18) return 0.0031;
  if (tpi >= 14) return 0.0032;
  return 0.0034;
}

function taperCrest(range: Range, reachMm: number): CrestBand {
  return {
    ...range,
    below: { toMm: range.minMm - TAPER_TAIL_MM, share: TAPER_TAIL_SHARE },
    above: {
      toMm: Math.max(reachMm, range.maxMm + TAPER_TAIL_MM),
      share: TAPER_TAIL_SHARE,
    },
  };
}
