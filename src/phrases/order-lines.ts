import { tidyKeepingCase } from './quantity/tidy.ts';

/** One line of an order as typed: what, how many, and the price of all of them as it stands there. */
export interface LineRead {
  readonly name: string;
  readonly quantity: number;
  /** As typed, for whoever reads money; null where no price stands. */
  readonly price: string | null;
  /** The price is of one: "3.90 each". */
  readonly each: boolean;
}

/** A line that can be meant in several ways; each way is what would be typed instead. */
export interface LineDoubt {
  readonly typed: string;
  readonly question: string;
  readonly ways: readonly { readonly label: string; readonly typed: string }[];
}

export type LinesText =
  | { readonly verdict: 'read'; readonly lines: readonly LineRead[] }
  | { readonly verdict: 'ask'; readonly doubt: LineDoubt; readonly rest: (typed: string) => string }
  | { readonly verdict: 'refuse'; readonly problem: string };

/** More lines than anybody types at once; a whole list is a file to import. */
const MOST_LINES = 25;
const LONGEST_NAME = 200;
const MOST = 10_000;

/** Whether what is typed for one thing holds several: some piece of it has a price or a count, or nobody can tell. */
export function holdsSeveral(typed: string): 'yes' | 'no' | 'perhaps' {
  const all = pieces(typed);
  if (all.length < 2 || typed.startsWith('+') || !all.every((piece) => /\p{L}{2}/u.test(piece))) return 'no';
  return all.some((piece) => /\d/u.test(piece)) ? 'yes' : 'perhaps';
}

/** The same things with their counts said, so that nobody has to ask. */
export const asSeveral = (typed: string): string =>
  pieces(typed)
    .map((piece) => `${piece} x1`)
    .join('; ');

const pieces = (typed: string): readonly string[] =>
  typed
    .split(/[;\n\r]+/u)
    .map((piece) => tidyKeepingCase(piece).replace(/^[-*•]\s+/u, ''))
    .filter((piece) => piece !== '');

/**
 * Lines of an order: `head gasket 84.50; M8 bolt x10 12; 4 x sump plug washer; stud M10 x 1.25 8 pcs 3.90 each`, parted by
 * semicolons or line ends. Name first or last, price at the end, quantity before or after the name with an x or pcs.
 *
 * A thread (`M10 x 1.25`, `M8 x 40`) belongs to the name. A bare figure that can be a price, a number of pieces or part of
 * the name is asked. A name in quotes is taken as it stands: `"M8 x 40" x10 12`.
 */
export function readOrderLines(typed: string): LinesText {
  const texts = pieces(typed);
  if (texts.length === 0) return { verdict: 'refuse', problem: 'No line was typed.' };
  if (texts.length > MOST_LINES) {
    return {
      verdict: 'refuse',
      problem: `${texts.length} lines are more than the ${MOST_LINES} that fit one order.`,
    };
  }
  const lines: LineRead[] = [];
  for (const [index, text] of texts.entries()) {
    const line = readLine(text);
    if ('question' in line) {
      const rest = (way: string): string => texts.with(index, way).join('; ');
      return { verdict: 'ask', doubt: line, rest };
    }
    if ('problem' in line) return { verdict: 'refuse', problem: line.problem };
    lines.push(line);
  }
  return { verdict: 'read', lines };
}

const CURRENCY = String.raw`(?:[A-Z]{3}|eur|gbp|usd|chf|sek|nok|dkk|pln|czk|aud|nzd|cad|jpy|\p{Sc}|zł|Kč|kr)`;
const AMOUNT = String.raw`\d[\d.,']*`;
/** A price with its currency, or two decimals: nothing else is written so. */
const SURE_PRICE = new RegExp(
  String.raw`(?:^|[\s@=])(${CURRENCY}\s?${AMOUNT}|${AMOUNT}\s?${CURRENCY}|\d[\d.,']*[.,]\d{2})$`,
  'u',
);
const EACH = /\s*(?:each|ea\.?|per piece|\/ ?pc|apiece)$/iu;
const BARE_END = new RegExp(String.raw`^(.+?)(?:\s*[@=]\s*|\s+)(${AMOUNT})$`, 'u');
const COUNT_WORD = String.raw`(?:pcs?|pieces|off|no\.?)`;
/** What ends in a size with decimals can be no number of pieces: `M10 x 1.25`. */
const DECIMAL_SIZE = /\d\s?[xX]\s?\d+[.,]\d+$/u;
/** A figure times a whole one: a size, or so many of it: `M8 x 40`, `washer 14 x 18`, `M10 x 1.25 x8`. */
const SIZE_OR_MANY = /^(.*\d)\s?[xX]\s?(\d{1,5})$/u;

/** A size and then a glued count: `washer 14x18 x6` is six of them. */
const SIZE_AND_MANY = /\d\s?[xX]\s?\d+(?:[.,]\d+)?\s+[xX]\d{1,5}$/u;
const isSizeOrMany = (text: string): boolean => SIZE_OR_MANY.test(text) && !SIZE_AND_MANY.test(text);

type Line = LineRead | LineDoubt | { readonly problem: string };

function readLine(text: string): Line {
  const each = EACH.test(text);
  const body = text.replace(EACH, '').trim();
  const price = SURE_PRICE.exec(body)?.[1];
  if (price !== undefined) {
    return counted(withoutPrice(body, price), price, each, text);
  }
  const [, before = '', bare] = BARE_END.exec(body) ?? [];
  if (bare === undefined || DECIMAL_SIZE.test(body) || isSizeOrMany(body) || COUNTED_AT_THE_END.test(body)) {
    return each ? noPrice(text) : counted(body, null, false, text);
  }
  // behind a number of pieces, after an @ or before "each" a bare figure can only be money
  const paid =
    each || /[@=]/u.test(body) || COUNTED_AT_THE_END.test(before) || COUNTED_AT_THE_START.test(before);
  if (paid || isQuoted(before)) return counted(before.trim(), bare, each, text);
  return whatIsTheFigure(text, before.trim(), bare);
}

const withoutPrice = (body: string, price: string): string =>
  body
    .slice(0, body.length - price.length)
    .replace(/[\s@=:,]+$/u, '')
    .trim();

const COUNTED_AT_THE_END = new RegExp(
  String.raw`\s(?:[xX]\s?(\d{1,5})|(\d{1,5})\s?[xX]|(\d{1,5})\s?${COUNT_WORD})$`,
  'iu',
);
const COUNTED_AT_THE_START = new RegExp(
  String.raw`^(?:[xX]\s?(\d{1,5})|(\d{1,5})\s?[xX]|(\d{1,5})\s?${COUNT_WORD})\s+`,
  'iu',
);

/** The name and how many of it, once the price is off. */
function counted(text: string, price: string | null, each: boolean, typed: string): Line {
  const size = isSizeOrMany(text) ? SIZE_OR_MANY.exec(text) : null;
  if (size !== null) return sizeOrMany(typed, text, size[1] ?? '', size[2] ?? '', price, each);
  const end = DECIMAL_SIZE.test(text) ? null : COUNTED_AT_THE_END.exec(text);
  const start = end === null ? COUNTED_AT_THE_START.exec(text) : null;
  const found = end ?? start;
  const name = (found === null ? text : text.replace(found[0], ' ')).trim();
  const figure = found === null ? '1' : (found[1] ?? found[2] ?? found[3] ?? '1');
  const quantity = Number(figure);
  if (!/\p{L}/u.test(name)) return { problem: `"${typed}" has no name.` };
  if (unquoted(name).length > LONGEST_NAME)
    return { problem: `"${name.slice(0, 40)}…" is longer than ${LONGEST_NAME} characters.` };
  if (quantity < 1 || quantity > MOST)
    return { problem: `"${typed}": ${figure} is no number of pieces from 1 to ${MOST}.` };
  const leading = found === null && !isQuoted(name) ? /^(\d{1,5})\s+(\p{L}.*)$/u.exec(name) : null;
  if (leading !== null) return howMany(typed, leading[1] ?? '', leading[2] ?? '', price, each);
  return { name: unquoted(name), quantity, price, each };
}

const isQuoted = (name: string): boolean => /^".+"$/u.test(name.trim());
const unquoted = (name: string): string =>
  name
    .trim()
    .replace(/^"(.*)"$/u, '$1')
    .trim();

const noPrice = (typed: string): Line => ({ problem: `"${typed}" says "each" without a price.` });

const priced = (price: string | null, each: boolean): string =>
  price === null ? '' : ` @ ${price}${each ? ' each' : ''}`;

function whatIsTheFigure(typed: string, name: string, figure: string): LineDoubt {
  const whole = /^\d{1,5}$/u.test(figure) && Number(figure) >= 1 && Number(figure) <= MOST;
  return {
    typed,
    question: `What is the ${figure} in "${typed}"?`,
    ways: [
      { label: `It costs ${figure}`, typed: `"${name}" @ ${figure}` },
      ...(whole ? [{ label: `${figure} of them`, typed: `"${name}" x${figure}` }] : []),
      { label: 'It belongs to the name', typed: `"${name} ${figure}"` },
    ],
  };
}

function howMany(
  typed: string,
  figure: string,
  name: string,
  price: string | null,
  each: boolean,
): LineDoubt {
  return {
    typed,
    question: `Is "${typed}" ${figure} pieces, or does the ${figure} belong to the name?`,
    ways: [
      { label: `${figure} × ${name}`, typed: `"${name}" x${figure}${priced(price, each)}` },
      { label: `One "${figure} ${name}"`, typed: `"${figure} ${name}"${priced(price, each)}` },
    ],
  };
}

function sizeOrMany(
  typed: string,
  name: string,
  before: string,
  figure: string,
  price: string | null,
  each: boolean,
): LineDoubt {
  return {
    typed,
    question: `Is "${typed}" one piece of that size, or ${figure} pieces?`,
    ways: [
      { label: `One "${name}"`, typed: `"${name}"${priced(price, each)}` },
      { label: `${figure} × ${before}`, typed: `"${before}" x${figure}${priced(price, each)}` },
    ],
  };
}
