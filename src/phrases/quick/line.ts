import { isInchFraction } from '../quantity/decimal.ts';
import { type FieldName, fields } from '../quantity/fields.ts';
import { readNumberPhrase } from '../quantity/number-phrase.ts';
import { readQuantity } from '../quantity/read-quantity.ts';
import type { Read } from '../quantity/reading.ts';
import { resolveUnit } from '../quantity/resolve-unit.ts';
import { tidyKeepingCase } from '../quantity/tidy.ts';
import { casedUnit, unitKey, unitWords } from '../quantity/unit-words.ts';

/** A number with the unit behind it, if one is. */
export interface AmountPiece {
  readonly is: 'amount';
  readonly figures: string;
  readonly value: number;
  /** As typed; empty when none follows. */
  readonly unit: string;
  /** A stroke, times or dash right before it. */
  readonly after: string;
  /** The dash before it stands where a minus would: at the beginning, or behind a space. */
  readonly minus?: true;
}

export type Piece =
  | AmountPiece
  | { readonly is: 'word'; readonly text: string }
  /** Letters with figures behind them: v8, e85, m10. */
  | { readonly is: 'code'; readonly text: string };

/** A line taken apart. */
export interface Line {
  /** Tidied, capitals kept, without greetings and the like. */
  readonly typed: string;
  /** The same in small letters. */
  readonly text: string;
  readonly pieces: readonly Piece[];
  readonly amounts: readonly AmountPiece[];
  /** Words and codes, in order. */
  readonly words: readonly string[];
  /** Put as a question: a mark at its end, or a word that asks. */
  readonly asks: boolean;
}

/** Nobody asks for a sum in more. */
const LONGEST = 120;
const MOST_PIECES = 24;

const GREETING =
  /^(?:(?:hi|hey|hello|ok|okay|oi|so|and|quick one|question|please|pls|bitte|hallo|salut|hola|(?:can|could) (?:you|anyone|anybody) (?:tell me|say|work out)|tell me|(?:do you|does anyone|anyone|anybody) know)(?:[,:!]+ ?| +)(?!m8$))+/iu;
const THANKS =
  /(?:[ ,]+(?:please|pls|plz|thanks|thx|ta|cheers|mate|bitte|danke|merci|gracias|anyone))+(?=[ ?.!]*$)/iu;
const ASKING =
  /(?:^| )(?:what|whats|what's|which|wich|how|when|whens|when's|convert|welche[rs]?|wie|wieviel|wann|quel|quelle|combien|cu[aá]l|cu[aá]nt[oa]s?|qu[eé])(?= |$)|^(?:is|are|does|do|can|was (?:ist|sind|für)) | (?:ok|okay|enough)$/u;

const EMOTICON = /(?:^| )[:;]-?[)(dp](?= |$)/u;

const NUMBER =
  /(?:\d{1,2}(?: |-)\d{1,2}\/(?:2|4|8|16|32|64)(?![\d.,/])|\d{1,2}\/\d{1,2}(?![\d.,/])|\d{1,3}(?:'\d{3})+|(?:\d+(?:[.,]\d+)*|[.,]\d+))(?:k(?![\p{L}\d]))?/uy;
const CODE = /\p{L}{1,3}\d{1,3}(?![\d.,/\p{L}])/uy;
const WORD = /°?[\p{L}λ](?:[\p{L}\p{M}']|\.(?=\p{L}))*/uy;
const UNIT = /[ -]?(?:[\p{L}µ°"%#][\p{L}\p{M}°²³"%#]*(?:[./-][\p{L}%#]+)*[23]?)(?![\p{L}\d])/uy;
const TIMES = /x ?(?=[\d.,])/iuy;
const SIGN = /->|→|#(?=\d)|[x*@=+\-/,;:?!.()~±&]/uy;
const SPACE = / +/uy;

/** A line without greetings and the like, capitals kept. */
export const withoutManners = (said: string): string =>
  tidyKeepingCase(said).replace(GREETING, '').replace(THANKS, '').trim();

/** Takes a line apart; undefined where something stands in it that no question has. */
export function lineOf(said: string): Line | undefined {
  if (said.length > LONGEST * 4) return undefined;
  const typed = withoutManners(said);
  const text = typed.toLowerCase();
  if (text === '' || text.length > LONGEST || EMOTICON.test(text)) return undefined;
  const pieces = piecesOf(typed);
  if (pieces === undefined || pieces.length > MOST_PIECES) return undefined;
  return {
    typed,
    text,
    pieces,
    amounts: pieces.filter((piece) => piece.is === 'amount'),
    words: pieces.flatMap((piece) => (piece.is === 'amount' ? [] : [piece.text])),
    asks: /\?/u.test(text) || ASKING.test(text),
  };
}

function piecesOf(text: string): readonly Piece[] | undefined {
  const pieces: Piece[] = [];
  let at = 0;
  let sign = '';
  const take = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at;
    const found = pattern.exec(text)?.[0];
    if (found !== undefined) at += found.length;
    return found;
  };
  while (at < text.length) {
    if (take(SPACE) !== undefined) continue;
    const number = numberAt(text, at);
    if (number !== undefined) {
      at += number.figures.length;
      const unit = unitAt(text, at);
      at += unit.length;
      const minus =
        sign === '-' && /(?:^|[ (])-$/u.test(text.slice(0, at - unit.length - number.figures.length));
      pieces.push({
        is: 'amount',
        ...number,
        unit: unit.replace(/^[ -]/u, ''),
        after: sign,
        ...(minus ? { minus } : {}),
      });
      sign = '';
      continue;
    }
    if (pieces.at(-1)?.is === 'amount' && take(TIMES) !== undefined) {
      sign = 'x';
      continue;
    }
    sign = '';
    const code = take(CODE);
    const word = code ?? take(WORD);
    if (word !== undefined) {
      pieces.push({ is: code === undefined ? 'word' : 'code', text: word.toLowerCase() });
      continue;
    }
    const found = take(SIGN);
    if (found === undefined) return undefined;
    sign = found;
    const stands = SIGN_WORDS[found];
    if (stands !== undefined) pieces.push({ is: 'word', text: stands });
  }
  return pieces;
}

/** Signs that say as much as a word. */
const SIGN_WORDS: Readonly<Record<string, string>> = {
  '@': 'at',
  '->': 'to',
  '→': 'to',
  '=': 'to',
  '&': 'and',
};

function numberAt(text: string, at: number): Pick<AmountPiece, 'figures' | 'value'> | undefined {
  NUMBER.lastIndex = at;
  const found = NUMBER.exec(text)?.[0];
  if (found === undefined) return undefined;
  const fraction = /^(?:\d+[ -])?(\d+)\/(\d+)$/u.exec(found);
  // 50/50, 15/10 and 170/168 are two figures
  const figures =
    fraction === null || isInchFraction(Number(fraction[1]), Number(fraction[2]))
      ? found
      : (/^\d+/u.exec(found)?.[0] ?? found);
  const plain = figures.replace(/k$/u, '').replace(/[.,]$/u, '');
  const value = readNumberPhrase(plain)?.value;
  if (value === undefined) return undefined;
  return figures.endsWith('k') ? { figures, value: value * 1000 } : { figures: plain, value };
}

/** The longest unit that stands right behind a number, of at most three words. */
function unitAt(text: string, at: number): string {
  let longest = '';
  let end = at;
  for (let words = 0; words < 3; words += 1) {
    UNIT.lastIndex = end;
    const found = UNIT.exec(text)?.[0];
    if (found === undefined) break;
    end += found.length;
    const phrase = text.slice(at, end);
    if (isUnit(phrase.trim()) && !/^[ -]?thread$/iu.test(phrase)) longest = phrase;
  }
  return longest;
}

const everyField = Object.values(fields);

/** Whether a phrase is a unit in some field, exactly as it stands. */
export function isUnit(phrase: string): boolean {
  const plain = phrase.replace(/^-/u, '');
  if (known(plain)) return true;
  // what a pressure is measured from stands behind its unit
  const pressure = resolveUnit(plain, fields.pressure);
  return pressure.kind === 'unit' && pressure.said !== undefined && pressure.slip === undefined;
}

function known(phrase: string): boolean {
  const key = unitKey(phrase);
  if (key === '') return false;
  if (unitWords.has(key) || casedUnit(phrase.replaceAll(' ', '')) !== undefined) return true;
  return everyField.some(
    ({ here = {}, doubts = {} }) => Object.hasOwn(here, key) || Object.hasOwn(doubts, key),
  );
}

/** What an amount is in a field; undefined when it is not certain. */
export function readAs(amount: AmountPiece | undefined, field: FieldName): Read | undefined {
  if (amount === undefined) return undefined;
  const found = readQuantity(saidOf(amount), field);
  return found.verdict === 'read' && found.slip === undefined ? found : undefined;
}

/** An amount that has a unit of this field. */
export const withUnit = (amount: AmountPiece, field: FieldName): Read | undefined =>
  amount.unit === '' ? undefined : readAs(amount, field);

/** As it was typed; without a unit a dash is no minus. */
export const saidOf = ({ figures, unit, minus }: AmountPiece): string =>
  `${minus === true && unit !== '' ? '-' : ''}${figures} ${unit}`.trim();
