import type { Choice } from '../../core/user-error.ts';
import type { EndBook } from './book.ts';
import type { End } from './end.ts';
import { endLabel } from './end-data.ts';

const MOST = 25;

/** Kinds in the order in which they are offered: what is most often plumbed on a car first. Common practice. */
const ORDER: readonly string[] = [
  'jic37',
  'an37',
  'orb',
  'g',
  'npt',
  'banjo',
  'iso6149',
  'orfs',
  'sae45',
  'plain',
];

/** Known ends that have every word typed so far in their name or thread, the usual kinds first. */
export function suggestEnds(book: EndBook, typed: string): readonly Choice[] {
  const words = typed
    .toLowerCase()
    .replace(/\bjic-?(?=\d)/gu, 'jic -')
    .split(/\s+/u)
    .filter(Boolean);
  return book.ends
    .filter((end) => end.usual || words.length > 1)
    .filter((end) => words.every((word) => endLabel(end).toLowerCase().includes(word)))
    .toSorted((a, b) => rank(a) - rank(b))
    .slice(0, MOST)
    .map((end) => ({ label: endLabel(end), value: end.id }));
}

function rank({ system, seat }: End): number {
  const at = ORDER.indexOf(system);
  return (at < 0 ? ORDER.length : at) * 2 + (seat === 'none' ? 1 : 0);
}
