import { meaningOf } from '../threads/words.ts';
import type { AmountPiece, Line } from './line.ts';

/** Names of an inch thread: a whole inch or a number size, a dash, threads per inch. */
const NAMED = /^#?(?:[12]-\d{1,2}|(?:4|5|6|8|10|12)-(?:2[48]|3[26]|4[048]))\b/u;

/**
 * What two whole numbers without unit, label or name can be. A thread only when one of them is a pitch in mm and they are
 * multiplied; else a score, a wheel, a bolt circle or a count as much as a thread. Undefined for any other line.
 */
export function wholePair({ amounts, words, text }: Line): 'thread' | 'doubt' | 'talk' | undefined {
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
