import { INCH_MM } from '../../calc/units/definitions.ts';
import { type Choice, UserError } from '../../core/user-error.ts';
import { isMetricPitch, isTpi } from './lengths.ts';
import type { NumberToken, SizeUnit } from './tokens.ts';
import { SIZE_EXAMPLES } from './typed.ts';

/** Two numbers with their parts settled. */
export interface Pair {
  readonly diameter: NumberToken;
  readonly pitch: NumberToken;
  readonly unit: SizeUnit;
}

/** The coarsest pitch of ISO 261 up to 42 mm; a bare number above it is no pitch in mm. */
const COARSEST_MM = 4.5;
/** Bare numbers up to this can be a diameter in inches. */
const LARGEST_IN = 2.5;
const LARGEST_MM = 64;

/**
 * Which of two numbers is the pitch. Every way that gives a thread is a reading: one is taken, more are asked about.
 *
 * @throws UserError 'bad-input' when no way does, 'which-one' when several do.
 */
export function splitPair(first: NumberToken, second: NumberToken): Pair {
  const ways = [...waysToRead(first, second, true), ...waysToRead(second, first, false)].filter(
    isThreadShaped,
  );
  const [only, other] = ways;
  if (only === undefined) {
    throw new UserError(
      'bad-input',
      `No thread has a diameter and pitch of ${first.text} and ${second.text}. ${SIZE_EXAMPLES}`,
    );
  }
  if (other === undefined && !areSameNumber(first, second)) return only;
  throw new UserError('which-one', `${first.text} and ${second.text}: which is the pitch, and in what?`, {
    field: 'size',
    choices: [...new Map(ways.map(choiceOf).map((choice) => [choice.value, choice])).values()],
  });
}

function waysToRead(diameter: NumberToken, pitch: NumberToken, orderKept: boolean): readonly Pair[] {
  if (pitch.fraction !== undefined || diameter.unit === 'tpi') return [];
  if (pitch.unit !== undefined) return [{ diameter, pitch, unit: pitch.unit }];
  const asMm: Pair = { diameter, pitch, unit: 'mm' };
  const asTpi: Pair = { diameter, pitch, unit: 'tpi' };
  const usualTpi = isTpi(pitch.value) && pitch.value >= (diameter.unit === undefined ? 8 : 4);
  if (diameter.unit !== undefined) {
    return pitch.value <= COARSEST_MM ? [asMm] : usualTpi ? [asTpi] : [];
  }
  const ways: Pair[] = [];
  // 0.558 beside 18 is an inch size: as a pitch in mm it is none that exists.
  const inchSize = pitch.value < 1 && !isMetricPitch(pitch.value) && isTpi(diameter.value);
  if (pitch.value <= COARSEST_MM && diameter.value > pitch.value && !inchSize) ways.push(asMm);
  if (
    usualTpi &&
    (diameter.value > LARGEST_IN ? diameter.value < LARGEST_MM : inchesLikely(diameter, orderKept))
  ) {
    ways.push(asTpi);
  }
  return ways;
}

/** Below one a diameter is in inches, unless it is a metric pitch named last; up to 2.5 only when it is named first. */
function inchesLikely(diameter: NumberToken, orderKept: boolean): boolean {
  return orderKept || (diameter.value < 1 && !isMetricPitch(diameter.value));
}

/** A diameter of at least 1 mm and well above the pitch. */
function isThreadShaped({ diameter, pitch, unit }: Pair): boolean {
  const inches =
    diameter.unit === 'in' || (diameter.unit === undefined && unit === 'tpi' && diameter.value <= LARGEST_IN);
  const acrossMm =
    inches || (diameter.unit === undefined && diameter.value < 1) ? diameter.value * INCH_MM : diameter.value;
  const pitchMm =
    unit === 'tpi' ? INCH_MM / pitch.value : unit === 'in' ? pitch.value * INCH_MM : pitch.value;
  return acrossMm >= 1 && acrossMm > 1.5 * pitchMm;
}

function areSameNumber(first: NumberToken, second: NumberToken): boolean {
  return first.value === second.value && first.unit === undefined && second.unit === undefined;
}

function choiceOf({ diameter, pitch, unit }: Pair): Choice {
  const inches = diameter.value < 1 || (unit === 'tpi' && diameter.value <= LARGEST_IN);
  const across = diameter.unit !== undefined ? diameter.text : `${diameter.text} ${inches ? 'in' : 'mm'}`;
  const step = pitch.unit !== undefined ? pitch.text : `${pitch.text} ${unit}`;
  return { label: `${across} across, ${step}`, value: `${across} x ${step}` };
}
