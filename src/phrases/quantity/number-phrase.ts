import { isInchFraction, readDecimal } from './decimal.ts';

/** A number as typed, with whatever else it could mean. */
export interface NumberPhrase {
  readonly value: number;
  /** Half of the last digit, the least it can be out by; of a fraction or a word nothing. */
  readonly halfDigit: number;
  readonly orElse?: number;
  readonly grouped?: number;
  /** Written as a fraction of an inch is. */
  readonly inchFraction: boolean;
  /** Written so that it should be said back first. */
  readonly doubtful: boolean;
  /** Both numbers of a fraction without a whole part. */
  readonly parts?: readonly [top: number, bottom: number];
}

const COUNTS = [
  'zero null zéro cero',
  'one a an ein eine einen einem un une uno una',
  'two zwei deux dos due',
  'three drei trois tres tre',
  'four vier quatre cuatro quattro',
  'five fünf cinq cinco cinque',
  'six sechs sei',
  'seven sieben sept siete sette',
  'eight acht huit ocho otto',
  'nine neun neuf nueve nove',
  'ten zehn dix diez dieci',
  'eleven elf onze once undici',
  'twelve zwölf douze doce dodici',
];

const WORDS: ReadonlyMap<string, number> = new Map([
  ...COUNTS.flatMap((words, value) => words.split(' ').map((word): [string, number] => [word, value])),
  ...Object.entries({
    'half a': 0.5,
    'half an': 0.5,
    'half of an': 0.5,
    half: 0.5,
    'ein halber': 0.5,
    'eine halbe': 0.5,
    halbe: 0.5,
    halber: 0.5,
    halbes: 0.5,
    demi: 0.5,
    'un demi': 0.5,
    'une demi': 0.5,
    medio: 0.5,
    media: 0.5,
    mezzo: 0.5,
    mezza: 0.5,
    'a quarter of a': 0.25,
    'a quarter of an': 0.25,
    'a quarter': 0.25,
    quarter: 0.25,
    'quarter of a': 0.25,
    'eine viertel': 0.25,
    viertel: 0.25,
    'three quarters of a': 0.75,
    'three quarters of an': 0.75,
    'three quarter': 0.75,
    dreiviertel: 0.75,
    'one and a half': 1.5,
    anderthalb: 1.5,
    eineinhalb: 1.5,
    'two and a half': 2.5,
    zweieinhalb: 2.5,
  }),
]);

const longestFirst = [...WORDS.keys()].toSorted((a, b) => b.length - a.length);
/** What a number in words looks like in a pattern; it has to be followed by a space and a letter. */
export const NUMBER_WORD = `(?:${longestFirst.join('|')})(?= ?[\\p{L}"])(?= |-)`;

/**
 * Reads a number in figures, as a fraction, mixed (`1 1/16`, `1-1/16`), or in words up to twelve.
 *
 * @returns null for what is no number, `NaN` in `value` for a division by zero.
 */
export function readNumberPhrase(text: string): NumberPhrase | null {
  const word = WORDS.get(text.toLowerCase());
  if (word !== undefined) return { value: word, halfDigit: 0, inchFraction: false, doubtful: false };
  const fraction =
    /^(?:(?<whole>\d+)(?<joint> |-| - |\.))?(?<top>\d+) ?\/ ?(?<bottom>\d+)(?:ths?|rds?)?$/iu.exec(text);
  if (fraction?.groups !== undefined) return readFraction(fraction.groups);
  const decimal = readDecimal(text);
  if (decimal !== null) return { ...decimal, inchFraction: false, doubtful: false };
  const single = text.replace(/([.,])\1+/gu, '$1');
  const repaired = single === text ? null : readDecimal(single);
  if (repaired === null) return null;
  return { value: repaired.value, halfDigit: repaired.halfDigit, inchFraction: false, doubtful: true };
}

function readFraction(groups: Record<string, string | undefined>): NumberPhrase {
  const { whole, joint, top, bottom } = groups;
  const [above, below] = [Number(top), Number(bottom)];
  const none = below === 0;
  return {
    value: none ? Number.NaN : Number(whole ?? 0) + above / below,
    halfDigit: 0,
    inchFraction: isInchFraction(above, below),
    doubtful: joint === '.' || (whole !== undefined && above >= below && !none),
    ...(whole === undefined ? { parts: [above, below] as const } : {}),
  };
}
