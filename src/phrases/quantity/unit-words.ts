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

/** Units that are none of ours, and must not be taken for a slip of the pen for one that is. */
export const otherUnits: ReadonlySet<string> = new Set(
  [
    'dyn dyne dynes erg ergs cal kcal btu btus kva va kvar wh mwh hz khz mhz ev j knot knots kt kts poise reyn slug slugs',
    'month months monat monate mois mes meses year years yr yrs jahr jahre an ans año años rod rods chain hand hands acre acres ha',
    'bpm spm cpm ppm dpi ppi lpi tpm psf psid tsi kip kips cfs cfh gpd lpd ips cuyd lux lm cd mol db ozt',
  ].flatMap((words) => words.split(' ')),
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
