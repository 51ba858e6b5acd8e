import { readDecimal } from './quantity/decimal.ts';
import { tidy } from './quantity/tidy.ts';

/** A pair of numbers, as a curve is typed off a data sheet. */
export interface TypedPair {
  readonly at: number;
  readonly value: number;
}

export type PairsText =
  | { readonly verdict: 'read'; readonly pairs: readonly TypedPair[] }
  | { readonly verdict: 'refuse'; readonly why: string };

/** A unit as it may stand behind a figure, with what one of it is in the unit wanted. */
export type UnitWords = Readonly<Record<string, number>>;

const FIGURE = String.raw`[-+]?\d+(?:[.,]\d+)?`;
const PAIR = new RegExp(`^(${FIGURE}) ?([\\p{L}/%]*) ?(?:[:=@]|->|at| ) ?(${FIGURE}) ?([\\p{L}/%]*)$`, 'u');

/**
 * Pairs of figures: `8 2.1, 10 1.5, 14 0.9`, `8:2.1 10:1.5`, `3 bar 255 l/h; 4 bar 220 l/h`. Pairs are parted by commas with
 * a space, semicolons or line ends; without them, spaces part pairs joined by a colon.
 *
 * The first figure without a unit is in the first unit of `atUnits`, the second likewise; a unit said once behind a figure
 * holds for those that follow.
 */
export function readPairs(typed: string, atUnits: UnitWords, valueUnits: UnitWords): PairsText {
  const text = tidy(typed.replaceAll(/[\r\n\t]+/gu, ';'));
  const pieces = text
    .split(/ ?; ?|, +/u)
    .flatMap((piece) => (/[:=]/u.test(piece) ? piece.split(/ (?=[-+]?\d[^ ]*[:=])/u) : [piece]));
  const pairs: TypedPair[] = [];
  let [atScale, valueScale] = [first(atUnits), first(valueUnits)];
  for (const piece of pieces.filter((each) => each !== '')) {
    const [, at = '', atUnit = '', value = '', valueUnit = ''] = PAIR.exec(piece.trim()) ?? [];
    const numbers = [readDecimal(at.replace(/^\+/u, ''))?.value, readDecimal(value)?.value];
    const [atNumber, valueNumber] = numbers;
    if (atNumber === undefined || valueNumber === undefined) return refuse(piece);
    atScale = atUnit === '' ? atScale : (atUnits[atUnit] ?? Number.NaN);
    valueScale = valueUnit === '' ? valueScale : (valueUnits[valueUnit] ?? Number.NaN);
    if (Number.isNaN(atScale) || Number.isNaN(valueScale)) return refuse(piece);
    pairs.push({ at: atNumber * atScale, value: valueNumber * valueScale });
  }
  return pairs.length === 0 ? refuse(typed) : { verdict: 'read', pairs };
}

const first = (units: UnitWords): number => Object.values(units)[0] ?? 1;
const refuse = (piece: string): PairsText => ({
  verdict: 'refuse',
  why: `"${piece.trim()}" is no pair of figures.`,
});

export type FiguresText =
  | { readonly verdict: 'read'; readonly figures: readonly number[] }
  | { readonly verdict: 'refuse'; readonly why: string };

/** A row of figures, as from a flow bench: `440 438 451 447`, `440, 438, 451`, `440/438/451`, `438,5; 440`, with a unit. */
export function readFigures(typed: string): FiguresText {
  const text = tidy(typed).replace(/ ?(?:cc|ml|cm3|cc\/min|ml\/min)\b(?:\/min)?/gu, '');
  const pieces = text.split(/ ?[;/] ?|, +| +|,(?=\d{3,}(?:[,; ]|$))/u).filter((piece) => piece !== '');
  const figures = pieces.map((piece) => readDecimal(piece)?.value ?? Number.NaN);
  const wrong = figures.findIndex(Number.isNaN);
  if (figures.length === 0 || wrong >= 0) {
    return { verdict: 'refuse', why: `"${pieces[wrong] ?? typed}" is no figure.` };
  }
  return { verdict: 'read', figures };
}
