import { type FieldName, fields } from '../quantity/fields.ts';
import { resolveUnit } from '../quantity/resolve-unit.ts';
import { unitKey } from '../quantity/unit-words.ts';
import type { KindSpec } from './kind-spec.ts';
import {
  beginsWith,
  isPlaceWord,
  type PlaceWords,
  takeEmpty,
  takeFuel,
  takePlace,
  takeState,
} from './words.ts';

interface Span {
  readonly start: number;
  readonly end: number;
}

/** A number with the unit behind it. */
export interface LineAmount extends Span {
  readonly type: 'amount';
  readonly figures: string;
  readonly unit: string;
  /** Fields in which the unit means something; empty without a unit. */
  readonly fields: readonly FieldName[];
  /** The unit is a word that a crew made for a kind of its own. */
  readonly ownUnit: boolean;
  /** "at" or "@" stands in front. */
  readonly afterAt: boolean;
}

/** A piece of a line of readings. */
export type Piece =
  | LineAmount
  | (Span & { readonly type: 'kind'; readonly word: string })
  | (Span & { readonly type: 'place'; readonly place: PlaceWords })
  | (Span & { readonly type: 'state'; readonly state: string })
  | (Span & { readonly type: 'fuel'; readonly fuel: string })
  | (Span & { readonly type: 'unknown' });

const NUMBER = /^[-+]?(?:\d+\.\d+(?=,\d+\.\d)|\d+(?:[.,]\d+)*|[.,]\d+)(?: ?k(?![\p{L}\d]))?/u;
/** Thousands in groups: only a counter has so many digits that people part them. */
const GROUPED = /^\d{1,3}(?:[ ']\d{3})+(?![\d.,])/u;
const HOURS_AND_MINUTES = /^\d+ ?h(?:\d{1,2}(?: ?m(?:in)?)?| \d{1,2} ?m(?:in)?)(?![\p{L}\d.,])/iu;
const UNIT_WORD = /^ ?[^\s\d,;:=@|/+-][^\s,;:=@|]*/u;
const MOST_UNIT_WORDS = 3;
/** Words that are a unit as well; behind a number they are read as words. */
const NO_UNITS = /^(?:at|on|is|it|of|et|und|and|mit|with)$/iu;

/** Takes a tidied line apart into what is known of it; nothing is judged yet. */
export function takeApart(text: string, kinds: readonly KindSpec[]): readonly Piece[] {
  const words = kindWords(kinds);
  const grouped = kinds
    .filter(({ field }) => field === 'distance')
    .some((kind) => kind.words.some((word) => text.toLowerCase().includes(word)));
  const pieces: Piece[] = [];
  let at = 0;
  let afterAt = false;
  while (at < text.length) {
    const rest = text.slice(at);
    const skipped = takeEmpty(rest);
    if (skipped > 0) {
      const over = rest.slice(0, skipped).trim();
      if (over !== '') afterAt = /(?:at|bei|@)$/iu.test(over);
      at += skipped;
      continue;
    }
    const piece = takePiece(rest, { at, words, kinds, grouped, afterAt, before: text[at - 1] });
    afterAt = false;
    const last = pieces.at(-1);
    if (piece.type === 'unknown' && last?.type === 'unknown') pieces.pop();
    pieces.push(
      piece.type === 'unknown' && last?.type === 'unknown' ? { ...piece, start: last.start } : piece,
    );
    at = piece.end;
  }
  return pieces;
}

/** Every word that names a kind, the longest first. */
function kindWords(kinds: readonly KindSpec[]): readonly string[] {
  const all = kinds.flatMap(({ name, words }) => [name.toLowerCase(), ...words]);
  return [...new Set(all)].toSorted((a, b) => b.length - a.length);
}

interface Where {
  readonly at: number;
  readonly words: readonly string[];
  readonly kinds: readonly KindSpec[];
  readonly grouped: boolean;
  readonly afterAt: boolean;
  readonly before: string | undefined;
}

/** "10W-40": a grade of oil is no figure. */
const GRADE = /^\d{1,2}w-?\d{2}(?!\d)/iu;

function takePiece(rest: string, where: Where): Piece {
  const { at, words } = where;
  const grade = GRADE.exec(rest)?.[0];
  if (grade !== undefined) return span({ type: 'unknown' }, at, grade.length);
  const place = takePlace(rest);
  if (place !== undefined && /^#/u.test(rest))
    return span({ type: 'place', place: place.value }, at, place.length);
  const joined = where.before !== undefined && /[\p{L}\d]/u.test(where.before) && /^-/u.test(rest);
  const amount = joined ? undefined : takeAmount(rest, where);
  if (amount !== undefined) return amount;
  const kind = beginsWith(rest, words);
  const state = takeState(rest);
  const fuel = takeFuel(rest);
  const longest = Math.max(place?.length ?? 0, kind?.length ?? 0, state?.length ?? 0, fuel?.length ?? 0);
  if (longest > 0) {
    if (place?.length === longest) return span({ type: 'place', place: place.value }, at, longest);
    if (kind?.length === longest) return span({ type: 'kind', word: kind.value }, at, longest);
    if (state?.length === longest) return span({ type: 'state', state: state.value }, at, longest);
    if (fuel !== undefined) return span({ type: 'fuel', fuel: fuel.value }, at, longest);
  }
  const word = /^(?:[\p{L}\p{M}']+|[^\p{L}\d\s]+|.)/u.exec(rest)?.[0] ?? rest;
  return span({ type: 'unknown' }, at, word.length);
}

function span<Part>(part: Part, start: number, length: number): Part & Span {
  return { ...part, start, end: start + length };
}

function takeAmount(rest: string, where: Where): LineAmount | undefined {
  const clock = HOURS_AND_MINUTES.exec(rest)?.[0];
  const { at, afterAt } = where;
  if (clock !== undefined) {
    const whole = {
      type: 'amount',
      figures: clock,
      unit: '',
      fields: ['time'],
      ownUnit: false,
      afterAt,
    } as const;
    return span(whole, at, clock.length);
  }
  const figures = ((where.grouped ? GROUPED.exec(rest) : null) ?? NUMBER.exec(rest))?.[0];
  if (figures === undefined) return undefined;
  const { phrase, ...unit } = unitBehind(rest.slice(figures.length), where);
  return span({ type: 'amount', figures, ...unit, afterAt } as const, at, figures.length + phrase.length);
}

/** The longest run of words behind a number that is a unit of something. */
function unitBehind(
  behind: string,
  { words, kinds }: Where,
): {
  readonly phrase: string;
  readonly unit: string;
  readonly fields: readonly FieldName[];
  readonly ownUnit: boolean;
} {
  const known = (text: string): boolean =>
    takeState(text) !== undefined ||
    isPlaceWord(text) ||
    takeFuel(text) !== undefined ||
    beginsWith(text, words) !== undefined ||
    takeEmpty(text) > 0;
  const run: string[] = [];
  let at = 0;
  while (run.length < MOST_UNIT_WORDS) {
    const word = UNIT_WORD.exec(behind.slice(at))?.[0];
    if (word === undefined || (run.length > 0 && known(word.trim()))) break;
    run.push(word);
    at += word.length;
  }
  for (let count = run.length; count > 0; count -= 1) {
    const phrase = run.slice(0, count).join('');
    const unit = phrase.trim().replace(/\.$/u, '');
    if (NO_UNITS.test(unit)) continue;
    if (kinds.some(({ field, unit: own }) => field === null && own.toLowerCase() === unit.toLowerCase())) {
      return { phrase, unit, fields: [], ownUnit: true };
    }
    const meant = fieldsOf(unit, kinds, !known(unit));
    if (meant.length > 0) return { phrase, unit, fields: meant, ownUnit: false };
  }
  return { phrase: '', unit: '', fields: [], ownUnit: false };
}

/** Fields that conditions come from, whatever the kinds are. */
const CONDITION_FIELDS: readonly FieldName[] = ['speed', 'temperature', 'pressure'];

/** The fields in which a unit means something; slips of the pen only where nothing means it exactly. */
function fieldsOf(unit: string, kinds: readonly KindSpec[], forgiving: boolean): readonly FieldName[] {
  const asked = new Set([...kinds.flatMap(({ field }) => field ?? []), ...CONDITION_FIELDS]);
  const meant = [...asked].map((name) => ({ name, found: resolveUnit(unit, fields[name]) }));
  const exact = meant.filter(
    ({ name, found }) => (found.kind === 'unit' && !found.slip) || doubted(unit, name),
  );
  if (exact.length > 0) return exact.map(({ name }) => name);
  if (!forgiving) return [];
  return meant.filter(({ found }) => found.kind === 'unit' || found.kind === 'doubt').map(({ name }) => name);
}

const doubted = (unit: string, name: FieldName): boolean =>
  Object.hasOwn(fields[name].doubts ?? {}, unitKey(unit));
