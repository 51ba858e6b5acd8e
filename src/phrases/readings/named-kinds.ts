import type { KindSpec } from './kind-spec.ts';
import { refusal } from './outcome.ts';
import type { Piece } from './take-apart.ts';

/** The kinds a line can be about, by its words, its places, or else its units. @throws NotRead for two of them. */
export function namedKinds(
  pieces: readonly Piece[],
  kinds: readonly KindSpec[],
  text: string,
): readonly KindSpec[] {
  const boosts = wordsOf(kinds, 'boost');
  const said = pieces.flatMap((piece) => (piece.type === 'kind' ? [piece.word] : []));
  const labels = labelWords(said, kinds);
  const main = said.filter((word) => !boosts.includes(word) && !labels.includes(word));
  const words = main.length > 0 ? main : said;
  const sets = words.map((word) => kinds.filter((kind) => answersTo(kind, word)));
  const common = sets.reduce((kept, next) => kept.filter((kind) => next.includes(kind)), sets[0] ?? []);
  if (sets.length > 0 && common.length === 0) {
    throw refusal(
      `One line, one kind: here are ${[...new Set(words)].join(' and ')}. Log them one after the other.`,
    );
  }
  if (common.length > 0) return common;
  const implied = pieces.flatMap((piece) =>
    piece.type === 'place' && piece.place.implies !== undefined ? [piece.place.implies] : [],
  );
  if (implied.length > 0) return kinds.filter(({ name }) => name === implied[0]);
  const strange = pieces
    .filter(({ type }) => type === 'unknown')
    .map(({ start, end }) => text.slice(start, end));
  if (strange.some((word) => /\p{L}/u.test(word))) {
    throw refusal(
      `“${strange.join(' ')}” names no kind of reading here. /reading kind makes one of your own.`,
    );
  }
  const fitting = kinds.filter(({ field, unit }) =>
    pieces.some((piece) => {
      if (piece.type !== 'amount') return false;
      if (piece.ownUnit) return field === null && unit.toLowerCase() === piece.unit.toLowerCase();
      return field !== null && piece.fields.includes(field) && !piece.fields.includes('speed');
    }),
  );
  return narrowed(fitting, pieces);
}

/** A cylinder's figure is a compression or a leak, and a voltage drop is one of a named cable. */
function narrowed(kinds: readonly KindSpec[], pieces: readonly Piece[]): readonly KindSpec[] {
  const places = pieces.flatMap((piece) => (piece.type === 'place' ? [piece.place.name] : []));
  const ofCylinders = kinds.filter(({ place }) => place === 'cylinder');
  if (places.includes('cylinder') && ofCylinders.length > 0) return ofCylinders;
  const alongCable = places.length > 0;
  return kinds.filter(
    ({ name }) => name !== 'compression spread' && name !== (alongCable ? 'battery voltage' : 'voltage drop'),
  );
}

/** "oil 4.2 bar, oil temp 92C": beside its pressure the oil's temperature is a condition. */
function labelWords(said: readonly string[], kinds: readonly KindSpec[]): readonly string[] {
  const pressure = wordsOf(kinds, 'oil pressure');
  const temperature = wordsOf(kinds, 'oil temperature').filter((word) => !pressure.includes(word));
  return said.some((word) => pressure.includes(word)) ? temperature : [];
}

const answersTo = ({ name, words }: KindSpec, word: string): boolean =>
  name.toLowerCase() === word || words.includes(word);
/** Every word of the kind of this name, the name among them. */
export const wordsOf = (kinds: readonly KindSpec[], name: string): readonly string[] =>
  kinds.filter((kind) => kind.name === name).flatMap(({ words }) => [name, ...words]);
