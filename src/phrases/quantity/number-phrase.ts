import { isInchFraction, readDecimal } from './decimal.ts';

/** A number as typed, with whatever else it could mean. */
export interface NumberPhrase {
  readonly value: number;
  readonly orElse?: number;
  /** Written as a fraction of an inch is. */
  readonly inchFraction: boolean;
  /** Written so that it should be said back first. */
  readonly doubtful: boolean;
}

const WORDS: ReadonlyMap<string, number> = new Map([
  ['half a', 0.5],
  ['half an', 0.5],
  ['half', 0.5],
  ['a quarter of a', 0.25],
  ['a', 1],
  ['an', 1],
  ...'zero one two three four five six seven eight nine ten eleven twelve'
    .split(' ')
    .map((word, value): [string, number] => [word, value]),
]);

/**
 * Reads a number in figures, as a fraction, mixed (`1 1/16`, `1-1/16`), or in words up to twelve.
 *
 * @returns null for what is no number, `NaN` in `value` for a division by zero.
 */
export function readNumberPhrase(text: string): NumberPhrase | null {
  const word = WORDS.get(text);
  if (word !== undefined) return { value: word, inchFraction: false, doubtful: false };
  const fraction = /^(?:(?<whole>\d+)(?<joint> |-| - |\.))?(?<top>\d+) ?\/ ?(?<bottom>\d+)(?:ths?)?$/u.exec(
    text,
  );
  if (fraction?.groups !== undefined) {
    const { whole, joint, top, bottom } = fraction.groups;
    if (Number(bottom) === 0) return { value: Number.NaN, inchFraction: false, doubtful: false };
    return {
      value: Number(whole ?? 0) + Number(top) / Number(bottom),
      inchFraction: isInchFraction(Number(top), Number(bottom)),
      doubtful: joint === '.',
    };
  }
  const decimal = readDecimal(text);
  if (decimal !== null) {
    return {
      value: decimal.value,
      inchFraction: false,
      doubtful: false,
      ...(decimal.orElse === undefined ? {} : { orElse: decimal.orElse }),
    };
  }
  const single = text.replace(/([.,])\1+/gu, '$1');
  const repaired = single === text ? null : readDecimal(single);
  return repaired === null ? null : { value: repaired.value, inchFraction: false, doubtful: true };
}
