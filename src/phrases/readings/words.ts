/** How a state is said; the first is its name. Longer ones are looked for first. */
const STATES: readonly (readonly string[])[] = [
  ['hot', 'warm', 'warmed up', 'at temperature', 'heiß', 'heiss', 'chaud'],
  ['cold', 'cold start', 'from cold', 'stone cold', 'kalt', 'froid'],
  ['idle', 'idling', 'tickover', 'at idle', 'on idle', 'im leerlauf', 'leerlauf', 'ralenti'],
  ['cranking', 'while cranking', 'on the starter', 'beim anlassen', 'starting'],
  [
    'at rest',
    'resting',
    'rest',
    'engine off',
    'key on engine off',
    'ignition on engine off',
    'in ruhe',
    'standing',
  ],
  ['charging', 'engine running', 'running', 'while charging', 'beim laden'],
  ['full load', 'wot', 'wide open throttle', 'wide open', 'full throttle', 'flat out', 'vollast', 'volllast'],
  ['cruise', 'cruising', 'part load', 'teillast'],
  ['overrun', 'coasting', 'on overrun'],
  ['wet', 'with oil', 'nass'],
  ['dry', 'trocken'],
  ['fresh', 'freshly built'],
  ['worn'],
  ['large overlap', 'big cam', 'wild cam'],
  ['top ring', 'first ring', 'top'],
  ['second ring', '2nd ring'],
];

const stateOf: ReadonlyMap<string, string> = new Map(
  STATES.flatMap((words) => words.map((word): [string, string] => [word, words[0] ?? word])),
);
const stateWords = [...stateOf.keys()].toSorted((a, b) => b.length - a.length);

/** Words that say where the engine stood and nothing that the reading hangs on. */
const EMPTY_WORDS =
  /^(?:at|with|and|on|is|was|reads?|reading|of|the|bei|mit|im|und|et|a|avec|while|it|now|throttle open|throttle wide|plugs out|test|=)(?![\p{L}\p{N}])/iu;

const FUELS: readonly (readonly [RegExp, string])[] = [
  [/^(?:super|premium)(?: plus)?(?: 9[58])?(?![\p{L}\d])/iu, 'petrol'],
  [/^(?:petrol|gasoline|pump fuel|benzin|unleaded|essence)(?!\p{L})/iu, 'petrol'],
  [/^(?:methanol|meth)(?!\p{L})/iu, 'methanol'],
  [/^ethanol(?!\p{L})/iu, 'ethanol'],
  [/^diesel(?!\p{L})/iu, 'diesel'],
  [/^(?:lpg|autogas)(?!\p{L})/iu, 'LPG'],
];

/** A piece of a line that was recognised, and how long it is. */
export interface Taken<Value> {
  readonly value: Value;
  readonly length: number;
}

const wordEnd = /^(?![\p{L}\p{N}])/u;

/** The longest of `words` that the text begins with, as a whole word. */
export function beginsWith(text: string, words: readonly string[]): Taken<string> | undefined {
  const lower = text.toLowerCase();
  const word = words.find((each) => lower.startsWith(each) && wordEnd.test(lower.slice(each.length)));
  return word === undefined ? undefined : { value: word, length: word.length };
}

export function takeState(text: string): Taken<string> | undefined {
  const word = beginsWith(text, stateWords);
  return word && { value: stateOf.get(word.value) ?? word.value, length: word.length };
}

export function takeEmpty(text: string): number {
  return /^[\s,;:@/|]+/u.exec(text)?.[0].length ?? EMPTY_WORDS.exec(text)?.[0].length ?? 0;
}

export function takeFuel(text: string): Taken<string> | undefined {
  const lettered = /^([em]) ?(\d{1,3})(?![\p{L}\p{N}])/iu.exec(text);
  const [all = '', letter = '', share = ''] = lettered ?? [];
  if (lettered !== null && Number(share) <= 100) {
    return { value: `${letter.toUpperCase()}${Number(share)}`, length: all.length };
  }
  for (const [pattern, value] of FUELS) {
    const found = pattern.exec(text);
    if (found !== null) return { value, length: found[0].length };
  }
  return undefined;
}

/** A place with its number, or the plural of several: then without one. */
export interface PlaceWords {
  readonly name: string;
  readonly number: number | null;
  /** The kind of reading that the place itself gives away. */
  readonly implies?: string;
}

const BEARINGS: readonly (readonly [RegExp, string])[] = [
  [/^main(?: bearing)?s?/iu, 'main bearing'],
  [/^(?:big[ -]end|rod|con[ -]?rod)(?: bearing)?s?/iu, 'big end'],
  [/^cam(?:shaft)?(?: bearing)s?/iu, 'cam bearing'],
];
const VALVES: readonly (readonly [RegExp, string])[] = [
  [/^(?:exhaust|auslass|exh)(?: valves?)?/iu, 'exhaust'],
  [/^(?:inlet|intake|einlass)(?: valves?)?/iu, 'inlet'],
];
/** A number of a place is whole, and no part of a longer figure. */
const NUMBER =
  /^(?: (?:oil )?clearance)? ?(?:#|no\.? ?|nr\.? ?)?(\d{1,2})(?![\d.,]*\d)(?! ?(?:mm|bar|psi|kpa|thou|%|in\b|°|v\b|c\b|rpm))/iu;
const NAMED: readonly (readonly [RegExp, string])[] = [
  [/^(?:earth|ground|masse)(?: strap| cable| lead)?(?!\p{L})/iu, 'earth'],
  [/^starter (?:positive )?(?:cable|lead)(?!\p{L})/iu, 'starter positive cable'],
];

/** Whether a text begins with a word of places, numbered or not. */
export const isPlaceWord = (text: string): boolean =>
  takePlace(text) !== undefined ||
  /^(?:cyl|zyl|main|big[ -]end|rod|cam|exhaust|inlet|intake|earth|starter)/iu.test(text);

export function takePlace(text: string): Taken<PlaceWords> | undefined {
  const cylinder =
    /^(?:(?:cyl(?:inders?)?|zyl(?:inder)?)\.? ?(?:#|no\.? ?|nr\.? ?)?|#)(\d{1,2})(?![\d.,]*\d)/iu.exec(text);
  if (cylinder !== null)
    return { value: { name: 'cylinder', number: Number(cylinder[1]) }, length: cylinder[0].length };
  for (const [pattern, name] of BEARINGS) {
    const found = numbered(pattern, name, text);
    if (found !== undefined) return { ...found, value: { ...found.value, implies: 'bearing clearance' } };
  }
  for (const [pattern, name] of VALVES) {
    const found = numbered(pattern, name, text);
    if (found?.value.number != null)
      return { ...found, value: { ...found.value, implies: 'valve clearance' } };
  }
  for (const [pattern, name] of NAMED) {
    const found = pattern.exec(text);
    if (found !== null) return { value: { name, number: null }, length: found[0].length };
  }
  return undefined;
}

function numbered(pattern: RegExp, name: string, text: string): Taken<PlaceWords> | undefined {
  const [word] = pattern.exec(text) ?? [];
  if (word === undefined) return undefined;
  const rest = text.slice(word.length);
  const number = NUMBER.exec(rest);
  if (number !== null)
    return { value: { name, number: Number(number[1]) }, length: word.length + number[0].length };
  // without a number it is a place only where several are meant or the value follows: a main jet is no bearing
  return wordEnd.test(rest) &&
    (/s$/iu.test(word) || /^(?: (?:oil )?clearance)?\s*[:=]?\s*[\d.,]/iu.test(rest))
    ? { value: { name, number: null }, length: word.length }
    : undefined;
}

export const placeName = ({ name, number }: PlaceWords): string =>
  number === null ? name : `${name} ${number}`;
