import type { Guide } from '../../calc/guide/guide.ts';
import { editDistance, plain } from '../suppliers/supplier.ts';

/** Everything a guide is called, folded, its own id among it. */
export const phrasesOf = ({ id, name, words }: Guide): readonly string[] => [
  id,
  folded(id),
  folded(name),
  ...words.map(folded),
];

/** Small letters without apostrophes, signs and accents; ä, ö, ü and ß as ae, oe, ue and ss. */
export function folded(text: string): string {
  const german = text
    .toLowerCase()
    .normalize('NFC')
    .replace(/[äöüß]/g, (letter) => ({ ä: 'ae', ö: 'oe', ü: 'ue', ß: 'ss' })[letter] ?? letter);
  return plain(german.replace(/['’`´]/g, '').replace(/[^\p{L}\p{M}\p{N}]+/gu, ' '));
}

export const wordsOf = (text: string): readonly string[] => text.split(' ').filter((word) => word !== '');

/** One word, but for its ending or a slip of a letter: "misfiring" and "misfire". */
export function alike(a: string, b: string): boolean {
  if (a === b) return true;
  if (Math.min(a.length, b.length) < 5) return stemOf(a) === stemOf(b);
  return a.slice(0, 6) === b.slice(0, 6) || stemOf(a) === stemOf(b) || editDistance(a, b) <= 1;
}

function stemOf(word: string): string {
  const stem = word.replace(/(ing|ed|es|s|en|t|e)$/, '');
  return stem.length < 4 ? word : stem;
}

/** How much a word says about which guide is meant: the log of all guides over those that have it. */
export function raritiesIn(guides: readonly Guide[]): (word: string) => number {
  const guidesWith = new Map<string, number>();
  for (const guide of guides) {
    for (const word of new Set(phrasesOf(guide).flatMap(wordsOf))) {
      guidesWith.set(word, (guidesWith.get(word) ?? 0) + 1);
    }
  }
  // a word that no guide has weighs as one that a single guide has
  return (word) => Math.log((guides.length + 1) / (guidesWith.get(word) ?? 1));
}
