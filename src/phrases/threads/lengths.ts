import { INCH_MM } from '../../calc/units/definitions.ts';
import { UserError } from '../../core/user-error.ts';
import type { SpanItem } from './spans.ts';
import type { NumberToken, SizeUnit } from './tokens.ts';
import { SIZE_EXAMPLES, type TypedLength, type TypedPitch } from './typed.ts';

/** Common threads per inch of the families in use (ASME B1.1, BS 84, ISO 228-1, ASME B1.20.1). */
const TPI = new Set([
  4, 4.5, 5, 6, 7, 8, 9, 10, 11, 11.5, 12, 13, 14, 16, 18, 19, 20, 22, 24, 26, 27, 28, 32, 36, 40, 44, 48, 56,
  64, 72, 80,
]);
/** Pitches of ISO 261. */
const METRIC_PITCH = new Set([
  0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 4.5, 5,
  5.5, 6,
]);

export function isTpi(value: number): boolean {
  return TPI.has(value);
}

export function isMetricPitch(value: number): boolean {
  return METRIC_PITCH.has(value);
}

/**
 * A diameter in mm: bare numbers below one are inches, others mm.
 *
 * @throws UserError 'out-of-range' outside 1 to 200 mm.
 */
export function toDiameter(item: NumberToken): TypedLength {
  const inches =
    item.unit === 'in' || item.fraction !== undefined || (item.unit === undefined && item.value < 1);
  const scale = inches ? INCH_MM : 1;
  const mm = item.value * scale;
  if (!(mm >= 1 && mm <= 200)) {
    throw new UserError(
      'out-of-range',
      `A diameter of ${item.text} is no thread we know: it has to be between 1 and 200 mm. ${SIZE_EXAMPLES}`,
    );
  }
  return {
    mm,
    halfDigitMm: item.halfDigit * scale,
    plusMinusMm: item.plusMinus === undefined ? undefined : item.plusMinus * scale,
    inchName: item.fraction !== undefined,
    text: item.text,
  };
}

/** @throws UserError 'out-of-range' outside 0.1 to 12.7 mm. */
export function toPitch(item: NumberToken, unit: SizeUnit): TypedPitch {
  const mm = unit === 'tpi' ? INCH_MM / item.value : unit === 'in' ? item.value * INCH_MM : item.value;
  if (!(mm >= 0.1 && mm <= 12.7)) {
    throw new UserError(
      'out-of-range',
      `A pitch of ${item.text} is none: it has to be between 0.1 and 12.7 mm, or 2 and 254 threads per inch. ${SIZE_EXAMPLES}`,
    );
  }
  const share = unit === 'tpi' ? mm / item.value : unit === 'in' ? INCH_MM : 1;
  return {
    mm,
    how: unit === 'in' ? 'inch' : unit,
    plusMinusMm: item.plusMinus === undefined ? undefined : item.plusMinus * share,
    halfDigitMm: item.halfDigit * share,
    over: undefined,
    text: item.text,
  };
}

/** A pitch from a length over several threads; a bare length below one is in inches. */
export function toSpan({ length, pitches, text }: SpanItem): TypedPitch {
  const inches = length.unit === 'in' || (length.unit === undefined && length.value < 1.3 && pitches > 4);
  const scale = (inches ? INCH_MM : 1) / pitches;
  const mm = length.value * scale;
  if (!(mm >= 0.1 && mm <= 12.7)) {
    throw new UserError(
      'out-of-range',
      `${text} makes a pitch of ${mm.toPrecision(3)} mm, and there is none such. Type the length over the number of threads, like \`15/10\`.`,
    );
  }
  return {
    mm,
    how: 'span',
    plusMinusMm: length.plusMinus === undefined ? undefined : length.plusMinus * scale,
    halfDigitMm: length.halfDigit * scale,
    over: pitches,
    text,
  };
}
