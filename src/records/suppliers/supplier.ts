import type { Closure } from '../../core/working-days.ts';

/** Somebody parts are ordered from, or who does work on them. */
export interface Supplier {
  readonly id: number;
  readonly name: string;
  /** Whose public holidays it keeps: `DE/BY`, `GB/ENG`; null while nobody has said, and then the crew's own count. */
  readonly country: string | null;
  /** How long it takes from order to door, in its working days. */
  readonly leadDays: number | null;
  readonly note: string | null;
  readonly shutdowns: readonly Shutdown[];
}

/** A time in which a supplier is shut. */
export interface Shutdown extends Closure {
  readonly id: number;
  readonly supplierId: number;
}

/**
 * Names that could be the one meant: equal but for case and spaces first, else those that begin alike or are at most
 * two edits away.
 */
export function likeNames(typed: string, names: readonly string[]): readonly string[] {
  const wanted = plain(typed);
  const same = names.filter((name) => plain(name) === wanted);
  if (same.length > 0) return same;
  return names.filter((name) => {
    const known = plain(name);
    if (wanted.length < 3) return false;
    return known.startsWith(wanted) || wanted.startsWith(known) || editDistance(known, wanted) <= 2;
  });
}

/** Names compare without case, accents or the space around and between words; a times sign is an x. */
export function plain(name: string): string {
  // most names are plain already but for their capitals, and thousands of them are compared with what is typed
  const letters = PLAIN_LETTERS.test(name)
    ? name
    : name.normalize('NFKD').replace(/\p{M}/gu, '').replaceAll('×', 'x');
  const lower = letters.toLowerCase();
  return SPACED.test(lower) ? lower.replace(/\s+/g, ' ').trim() : lower;
}

const PLAIN_LETTERS = /^[ -~]*$/;
const SPACED = /^\s|\s$|\s\s|[^\S ]/;

/** Levenshtein distance, by the two-row method. */
export function editDistance(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const replaced = (above[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1);
      current.push(Math.min(replaced, (above[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1));
    }
    above = current;
  }
  return above[b.length] ?? 0;
}
