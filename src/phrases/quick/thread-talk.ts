import { meaningOf } from '../threads/words.ts';
import type { AmountPiece, Line } from './line.ts';
import type { SizeRead } from './thread-words.ts';

/** Diameter, pitch and length; a tolerance beside a reading; a span over its threads. */
const MOST_FIGURES = 4;
/** No thread, pitch or bolt is more; a tyre is. */
const LARGEST_FIGURE = 200;
/** Past this a diameter is a bore's. */
const LARGEST_MM = 64;
/** The coarsest threads in use have a pitch of a quarter of their diameter. */
const STEEPEST = 0.3;
/** What may stand between a diameter and a pitch. */
const BETWEEN = new Set(
  'x by with and has have having at a male female innen außen pitch p steigung paso pas dia diameter durchmesser od id tpi threads over in m mm'.split(
    ' ',
  ),
);
/** Clock times, telephone numbers, firing orders. */
const NOT_SIZES = /^\d+ in \d+$|\d ?: ?\d|\d{5}|\d-\d+-\d/u;
/** Names of an inch thread: a whole inch or a number size, a dash, threads per inch. */
const NAMED = /^#?(?:[12]-\d{1,2}|(?:4|5|6|8|10|12)-(?:2[48]|3[26]|4[048]))\b/u;

/**
 * What two whole numbers without unit, label or name can be. A thread only when one of them is a pitch in mm and they are
 * multiplied; else a score, a wheel, a bolt circle or a count as much as a thread. Undefined for any other line.
 */
function wholePair({ amounts, words, text }: Line): 'thread' | 'doubt' | 'talk' | undefined {
  const [first, second, ...more] = amounts;
  if (first === undefined || second === undefined || more.length > 0) return undefined;
  if (!isWhole(first) || !isWhole(second) || first.after === '#') return undefined;
  if (words.some((word) => meaningOf(word) !== undefined || /^m\d*$/u.test(word))) return undefined;
  if (NAMED.test(text)) return undefined;
  const [small, large] = [Math.min(first.value, second.value), Math.max(first.value, second.value)];
  if (second.after === 'x' || second.after === '*' || words.includes('by'))
    return small <= 3 && large >= 6 && large <= 64 ? 'thread' : 'talk';
  return ['-', '/', ':', '+', '~'].includes(second.after) || large < 6 ? 'talk' : 'doubt';
}

const isWhole = ({ figures, unit }: AmountPiece): boolean => /^\d{1,3}$/u.test(figures) && unit === '';

/** Whether a line's figures are no thread's, however they may read: and whether they are only likely to be one. */
export function threadTalk(line: Line): 'thread' | 'doubt' | 'talk' {
  const { amounts, text } = line;
  const talk =
    NOT_SIZES.test(text) ||
    counted(line) ||
    !joined(line) ||
    amounts.length > MOST_FIGURES ||
    amounts.some(({ value }) => value > LARGEST_FIGURE);
  return talk ? 'talk' : (wholePair(line) ?? 'thread');
}

/** `2 x 1/8 npt`, `4 m8`: how many of them. */
export const counted = ({ text }: Line): boolean =>
  /^\d{1,2}(?: ?x ?| )(?:m ?\d|\d{1,2}\/\d|#)/u.test(text) && !/^[1-4] \d{1,2}\/\d/u.test(text);

/** Nothing but a joining word stands between the first number and the second. */
function joined({ pieces }: Line): boolean {
  const at = pieces.flatMap((piece, index) => (piece.is === 'amount' ? [index] : []));
  const [first, second] = at;
  if (first === undefined || second === undefined) return true;
  return pieces.slice(first + 1, second).every((piece) => piece.is !== 'amount' && BETWEEN.has(piece.text));
}

/** What no thread has: too steep, too large, or a size in inches beside a bare pitch in mm. */
export function strangeThread({ amounts }: Line, { diameterMm = 0, pitchMm = 0, read }: SizeRead): boolean {
  const bare = amounts.every(({ unit }) => unit === '');
  const mixed =
    bare &&
    (read.diameter?.mm ?? 0) !== Number(read.diameter?.text.replace(',', '.')) &&
    read.pitches[0]?.how === 'mm';
  return pitchMm > STEEPEST * diameterMm || diameterMm > LARGEST_MM || mixed;
}
