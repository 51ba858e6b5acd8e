import { type UnitId, unitIds } from '../../calc/units/table.ts';
import { casedWords, wordsOfFluids } from './words-of-fluids.ts';
import { wordsOfMechanics } from './words-of-mechanics.ts';

const spelled = { ...wordsOfMechanics, ...wordsOfFluids };

/** Every way a unit is written, with the units it can stand for: `'` is a foot and a minute of arc. */
export const unitWords: ReadonlyMap<string, readonly UnitId[]> = new Map(
  [
    ...Map.groupBy(
      unitIds.flatMap((id) => (spelled[id] ?? '').split(' ').map((word) => ({ word, id }))),
      ({ word }) => word,
    ),
  ]
    .filter(([word]) => word !== '')
    .map(([word, meant]): [string, readonly UnitId[]] => [word, meant.map(({ id }) => id)]),
);

/** A unit whose capitals decide its size, as typed. */
export function casedUnit(phrase: string): UnitId | undefined {
  return Object.hasOwn(casedWords, phrase) ? casedWords[phrase] : undefined;
}

/**
 * The one spelling a unit is looked up by: small letters, "per" in any language a slash, and neither spaces, dots nor
 * dashes. `Ft. - Lbs` is `ftlbs`.
 */
export function unitKey(phrase: string): string {
  return phrase
    .toLowerCase()
    .replace(/^(?:of |de |d'|di |von )/u, '')
    .replace(/\b(?:per|pro|par|por|al|je|a la|à la) (?=\p{L})/gu, '/')
    .replace(/[ .*^()-]/gu, '')
    .replace(/\/{2,}/gu, '/');
}
