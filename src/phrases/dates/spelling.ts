import type { Meaning } from './meanings.ts';
import { fold, type WordBook } from './words.ts';

/** Words in their own right that lie one letter from a word of the grammar: they are never its misspelling. */
const OWN_WORDS = new Set(
  'sundry match marsh starch seeks weeds yours wagen lagen sagen tragen leute beute sorgen borgen wache kochen mourning yearly marches dates daisy weekly monthly nightly tags tagged waste mouth mouths earlier august1 later might'.split(
    ' ',
  ),
);

/**
 * What a typed word means. An unknown word of four letters or more is taken for the one word it misses by a single
 * letter too many, too few, changed or swapped; when several lie as near, it stays unknown.
 */
export function meaningsOf(typed: string, book: WordBook): readonly Meaning[] {
  const word = fold(typed);
  const exact = book.meanings.get(word);
  if (exact !== undefined) return exact;
  if (word.length < 4 || word.length > 20 || OWN_WORDS.has(word)) return [];
  const near = book.forgiving
    .filter((known) => isOneSlip(word, known))
    .map((known) => book.meanings.get(known) ?? []);
  const kinds = new Set(near.map(kindOf));
  return kinds.size === 1 ? (near.toSorted((a, b) => b.length - a.length)[0] ?? []) : [];
}

/** Two spellings of one weekday are as good as one, also where the one occurs in the name of a feast. */
function kindOf(meanings: readonly Meaning[]): string {
  const words = meanings.filter(({ is }) => is !== 'name');
  return JSON.stringify(words.length > 0 ? words : meanings);
}

/** One letter inserted, left out, changed or swapped with its neighbour. In four letters a changed one is a new word. */
export function isOneSlip(typed: string, known: string): boolean {
  const longer = typed.length > known.length ? typed : known;
  const shorter = typed.length > known.length ? known : typed;
  if (longer.length - shorter.length > 1) return false;
  let start = 0;
  while (start < shorter.length && longer[start] === shorter[start]) start++;
  if (longer.length > shorter.length) return longer.slice(start + 1) === shorter.slice(start);
  if (longer.slice(start + 1) === shorter.slice(start + 1)) return typed.length > 4;
  return (
    longer[start] === shorter[start + 1] &&
    longer[start + 1] === shorter[start] &&
    longer.slice(start + 2) === shorter.slice(start + 2)
  );
}
