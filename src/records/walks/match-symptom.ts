import type { Guide } from '../../calc/guide/guide.ts';
import { type Choice, UserError } from '../../core/user-error.ts';
import { editDistance, plain } from '../suppliers/supplier.ts';

/**
 * The guide meant by what somebody types: "wont start", "no spark", "dreht nicht".
 *
 * @throws UserError 'which-one' when it fits several, 'not-found' naming those there are.
 */
export function matchSymptom(guides: readonly Guide[], typed: string, field: string): Guide {
  const [first, ...more] = bestFits(guides, typed);
  if (first !== undefined && more.length === 0) return first;
  if (first !== undefined) {
    throw new UserError('which-one', `“${typed}” could be several things. Which is nearest?`, {
      field,
      choices: [first, ...more].map(symptomChoice),
    });
  }
  const names = guides.map(({ name }) => name.toLowerCase()).join(', ');
  throw new UserError('not-found', `“${typed}” is no symptom of this guide. Type one of: ${names}.`);
}

/** Symptoms to offer while one is being typed. */
export function suggestSymptoms(guides: readonly Guide[], typed: string): readonly Choice[] {
  const wanted = folded(typed);
  if (wanted === '') return guides.map(symptomChoice);
  const inside = guides.filter((guide) => phrasesOf(guide).some((phrase) => phrase.includes(wanted)));
  return (inside.length > 0 ? inside : bestFits(guides, typed)).map(symptomChoice);
}

const symptomChoice = ({ id, name, means }: Guide): Choice => ({
  label: `${name}: ${means}`.slice(0, 100),
  value: id,
});

/** Those that fit best: the very phrase, else a phrase inside what was typed or round it, else shared words. */
function bestFits(guides: readonly Guide[], typed: string): readonly Guide[] {
  const wanted = folded(typed);
  if (wanted === '') return [];
  const same = guides.filter((guide) => phrasesOf(guide).includes(wanted));
  if (same.length > 0) return same;
  return (
    best(guides, (guide) => longestInside(guide, wanted)) ??
    best(guides, (guide) => sharedWords(guide, wanted)) ??
    []
  );
}

/** Those of the greatest score; nothing when all have none. */
function best(guides: readonly Guide[], score: (guide: Guide) => number): readonly Guide[] | undefined {
  const scored = guides.map((guide) => ({ guide, score: score(guide) }));
  const most = Math.max(...scored.map((one) => one.score));
  return most > 0 ? scored.filter((one) => one.score === most).map(({ guide }) => guide) : undefined;
}

/** Characters of the longest phrase that stands in what was typed as whole words. */
const longestInside = (guide: Guide, wanted: string): number =>
  Math.max(
    0,
    ...phrasesOf(guide)
      .filter((phrase) => ` ${wanted} `.includes(` ${phrase} `))
      .map(({ length }) => length),
  );

/** Of the phrase that shares most: how much of it was typed, slips of a letter allowed. */
function sharedWords(guide: Guide, wanted: string): number {
  const typed = wordsOf(wanted);
  const shares = phrasesOf(guide).map((phrase) => {
    const words = wordsOf(phrase);
    const shared = words.filter((word) => typed.some((one) => alike(one, word))).length;
    return words.length === 0 ? 0 : (shared * shared) / (words.length * Math.max(1, typed.length));
  });
  const most = Math.max(...shares);
  return most >= LEAST_SHARED ? Math.round(most * 100) : 0;
}

/** Half the words on both sides: less is chance. */
const LEAST_SHARED = 0.25;

/** Words that say nothing about which fault it is. */
const EMPTY = new Set([
  'the',
  'it',
  'is',
  'engine',
  'car',
  'motor',
  'just',
  'only',
  'my',
  'a',
  'an',
  'at',
  'on',
  'der',
  'die',
  'das',
  'und',
]);

const wordsOf = (text: string): readonly string[] => text.split(' ').filter((word) => !EMPTY.has(word));

const alike = (a: string, b: string): boolean =>
  a === b || (Math.min(a.length, b.length) >= 4 && editDistance(a, b) <= 1);

const phrasesOf = ({ id, name, words }: Guide): readonly string[] => [
  id,
  folded(id),
  folded(name),
  ...words.map(folded),
];

/** Small letters without apostrophes, signs and accents; ä, ö, ü and ß as ae, oe, ue and ss. */
function folded(text: string): string {
  const german = text
    .toLowerCase()
    .normalize('NFC')
    .replace(/[äöüß]/g, (letter) => ({ ä: 'ae', ö: 'oe', ü: 'ue', ß: 'ss' })[letter] ?? letter);
  return plain(german.replace(/['’`´]/g, '').replace(/[^\p{L}\p{M}\p{N}]+/gu, ' '));
}
