import { INCH_MM } from '../units/definitions.ts';
import type { Reading } from './readings.ts';

/** A pitch as it was given: how, and the least it can be out by. */
export interface GivenPitch {
  readonly mm: number;
  readonly how: 'mm' | 'inch' | 'tpi' | 'span';
  readonly plusMinusMm: number | undefined;
  readonly halfDigitMm: number;
  /** Pitches a span covers. */
  readonly over: number | undefined;
}

/** Common practice, no source: how far out a reading is 95 times in 100 when nobody says. */
const CALIPER_MM = 0.05;
const BORE_JAWS_MM = 0.08;
const FRACTION_MM = INCH_MM / 64;
const SPAN_ENDS_MM = 0.1;
/** A length in whole millimetres was read off a rule, to a quarter of one. */
const RULE_MM = 0.25;
/** A thread gauge leaf that fits over some fifteen threads shows a difference of this share of the pitch. */
const GAUGE_RATIO = 0.016;
/** A pitch that is on no gauge was judged by eye or against a rule. */
const BY_EYE_RATIO = 0.08;

/** What a diameter could be out by, mm: what was said, else the instrument's usual error or half the last digit. */
export function diameterReading(
  given: { readonly mm: number; readonly plusMinusMm: number | undefined; readonly halfDigitMm: number },
  about: { readonly withinMm: number | undefined; readonly female: boolean; readonly inchName: boolean },
): Reading {
  const usual = about.inchName ? FRACTION_MM : about.female ? BORE_JAWS_MM : CALIPER_MM;
  return {
    mm: given.mm,
    plusMinusMm:
      given.plusMinusMm ??
      about.withinMm ??
      Math.max(usual, about.inchName ? 0 : Math.min(given.halfDigitMm, RULE_MM)),
  };
}

/**
 * What a pitch could be out by, mm.
 *
 * A span is out by 0.1 mm over its whole length, by a quarter when it was given in whole millimetres. A figure that is a standard pitch, or one rounded to the digits typed,
 * was read off a gauge; one with three decimals was worked out; any other was judged by eye.
 */
export function pitchReading(given: GivenPitch, standardPitchesMm: readonly number[]): Reading {
  const { mm, halfDigitMm } = given;
  if (given.plusMinusMm !== undefined) return { mm, plusMinusMm: given.plusMinusMm };
  if (given.how === 'span' && given.over !== undefined) {
    return {
      mm,
      plusMinusMm: Math.max(SPAN_ENDS_MM / given.over, Math.min(halfDigitMm, RULE_MM / given.over)),
    };
  }
  const gauge = GAUGE_RATIO * mm;
  if (standardPitchesMm.some((standard) => Math.abs(standard - mm) < 1e-6)) return { mm, plusMinusMm: gauge };
  if (standardPitchesMm.some((standard) => Math.abs(standard - mm) <= halfDigitMm)) {
    return { mm, plusMinusMm: Math.max(gauge, halfDigitMm) };
  }
  return { mm, plusMinusMm: halfDigitMm <= 0.0006 ? gauge : Math.max(BY_EYE_RATIO * mm, halfDigitMm) };
}

/** Two or more pitch readings of one thread taken together. */
export interface JoinedPitch extends Reading {
  /** False when they differ by more than they could be out by: stretched, damaged or miscounted. */
  readonly agree: boolean;
}

/** The weighted mean of readings that agree; of readings that do not, their middle with a ± that covers all of them. */
export function joinPitches(readings: readonly Reading[]): JoinedPitch | undefined {
  const [first] = readings;
  if (first === undefined) return undefined;
  const lowest = Math.min(...readings.map(({ mm }) => mm));
  const highest = Math.max(...readings.map(({ mm }) => mm));
  const reach = Math.hypot(...readings.map(({ plusMinusMm }) => plusMinusMm));
  if (readings.length > 1 && highest - lowest > reach) {
    return { mm: (lowest + highest) / 2, plusMinusMm: (highest - lowest) / 2 + reach, agree: false };
  }
  const weighted = readings.map(({ mm, plusMinusMm }) => ({
    mm,
    weight: 1 / Math.max(plusMinusMm, 1e-4) ** 2,
  }));
  const total = weighted.reduce((sum, { weight }) => sum + weight, 0);
  const mean = weighted.reduce((sum, { mm, weight }) => sum + mm * weight, 0) / total;
  return {
    mm: mean,
    plusMinusMm: readings.length === 1 ? first.plusMinusMm : 1 / Math.sqrt(total),
    agree: true,
  };
}
