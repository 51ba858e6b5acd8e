import type { Guide } from '../../calc/guide/guide.ts';
import { type Choice, UserError } from '../../core/user-error.ts';
import { allGuides } from './guide-book.ts';
import { alike, folded, phrasesOf, raritiesIn, wordsOf } from './symptom-words.ts';

/**
 * The guide meant by what somebody types: "wont start", "no spark", "dreht nicht".
 *
 * @throws UserError 'which-one' when it fits several, 'not-found' naming those there are.
 */
export function matchSymptom(typed: string, field: string): Guide {
  const [first, ...more] = bestFits(typed);
  if (first !== undefined && more.length === 0) return first;
  if (first !== undefined) {
    throw new UserError('which-one', `“${typed}” could be several things. Which is nearest?`, {
      field,
      choices: [first, ...more].map(symptomChoice),
    });
  }
  const names = allGuides.map(({ name }) => name.toLowerCase()).join(', ');
  throw new UserError('not-found', `“${typed}” is no symptom of this guide. Type one of: ${names}.`);
}

/** Symptoms to offer while one is being typed. */
export function suggestSymptoms(typed: string): readonly Choice[] {
  const wanted = folded(typed);
  if (wanted === '') return allGuides.map(symptomChoice);
  const inside = allGuides.filter((guide) => phrasesOf(guide).some((phrase) => phrase.includes(wanted)));
  return (inside.length > 0 ? inside : bestFits(typed)).map(symptomChoice);
}

const symptomChoice = ({ id, name, means }: Guide): Choice => ({
  label: `${name}: ${means}`.slice(0, 100),
  value: id,
});

/** Those that fit best: the very phrase, else a phrase inside what was typed, else like words. */
function bestFits(typed: string): readonly Guide[] {
  const wanted = folded(typed);
  if (wanted === '') return [];
  const same = allGuides.filter((guide) => phrasesOf(guide).includes(wanted));
  if (same.length > 0) return same;
  return (
    best((guide) => longestInside(guide, wanted), 1) ??
    best((guide) => likeness(guide, wanted), AS_GOOD) ??
    []
  );
}

/** Of the best likeness: this much is as good, so that it is asked about. */
const AS_GOOD = 0.9;

/** More would not be a question but a list. */
const MOST_ASKED = 5;

/** Those of the greatest score, or as good as that; nothing when all have none, or too many have it. */
function best(score: (guide: Guide) => number, asGood: number): readonly Guide[] | undefined {
  const scored = allGuides.map((guide) => ({ guide, score: score(guide) }));
  const most = Math.max(...scored.map((one) => one.score));
  const first = scored.filter((one) => one.score >= asGood * most).map(({ guide }) => guide);
  return most > 0 && first.length <= MOST_ASKED ? first : undefined;
}

/** Characters of the longest phrase that stands in what was typed as whole words. */
const longestInside = (guide: Guide, wanted: string): number =>
  Math.max(
    0,
    ...phrasesOf(guide)
      .filter((phrase) => ` ${wanted} `.includes(` ${phrase} `))
      .map(({ length }) => length),
  );

const rarity = raritiesIn(allGuides);

/**
 * How much of what was typed and of a phrase is the same, for the phrase that shares most: the cosine of the two as
 * sets of words, each as heavy as it is rare among the guides ("no" says little, "spark" much).
 */
function likeness(guide: Guide, wanted: string): number {
  const typed = wordsOf(wanted);
  const shares = phrasesOf(guide).map((phrase) => {
    const words = wordsOf(phrase);
    const shared = words.filter((word) => typed.some((one) => alike(one, word)));
    const size = Math.sqrt(heaviness(words) * heaviness(typed));
    return size === 0 ? 0 : heaviness(shared) / size;
  });
  const most = Math.max(...shares);
  return most >= LEAST_LIKENESS ? Math.round(most * 100) : 0;
}

/** Less than this is chance. */
const LEAST_LIKENESS = 0.35;

const heaviness = (words: readonly string[]): number =>
  words.reduce((sum, word) => sum + rarity(word) ** 2, 0);
