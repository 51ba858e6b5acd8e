import { UserError } from '../../core/user-error.ts';
import { tidy } from '../quantity/tidy.ts';
import { ask, type Quantity, refuse } from '../quantity/verdict.ts';
import { toPitch, toSpan } from './lengths.ts';
import { readThreadSize } from './size.ts';
import { foldSpans, type SizeItem } from './spans.ts';
import { type NumberToken, tokenise } from './tokens.ts';

const MAX_LENGTH = 60;
/** A bare number up to here is mm, from there on threads per inch; between them both exist. */
const MM_UP_TO = 3.5;
const TPI_FROM = 9;

/** A pitch as people type it, in mm: `1.5`, `28 tpi`, `15/10`, `10 threads in 12.4 mm`, or the one in a designation. */
export function readPitch(typed: string): Quantity {
  const text = tidy(typed);
  if (text === '' || text.length > MAX_LENGTH) return refuse('no pitch in that');
  const { tokens, stuckAt } = tokenise(text);
  if (stuckAt !== undefined) return refuse(`"${stuckAt}" is no pitch`);
  const items: SizeItem[] = [];
  for (const token of tokens) {
    if (token.kind === 'word') return refuse(`"${token.text}" is no unit of a pitch`);
    items.push(token);
  }
  try {
    return readItems(foldSpans(items)) ?? fromDesignation(text);
  } catch (error) {
    if (!(error instanceof UserError)) throw error;
    return error.question === undefined ? refuse(error.message) : ask([], error.message);
  }
}

function readItems(items: readonly SizeItem[]): Quantity | undefined {
  const [first, second, third] = items;
  if (first?.kind === 'between' && second?.kind === 'number' && items.length === 2) return readNumber(second);
  if (first?.kind === 'span' && items.length === 1) return { verdict: 'read', value: toSpan(first).mm };
  if (first?.kind === 'number' && items.length === 1) return readNumber(first);
  const dashed =
    first?.kind === 'number' &&
    (second?.kind === 'dash' || second?.kind === 'to') &&
    third?.kind === 'number';
  if (dashed && items.length === 3 && third.unit === 'tpi' && first.fraction === undefined) {
    const ends = [toPitch(first, 'tpi').mm, toPitch(third, 'tpi').mm];
    return { verdict: 'range', min: Math.min(...ends), max: Math.max(...ends) };
  }
  return undefined;
}

function readNumber(item: NumberToken): Quantity {
  if (item.parts !== undefined) {
    const [top, bottom] = item.parts;
    return ask(
      [top / bottom, item.value * 25.4],
      `${top} mm over ${bottom} threads, or a fraction of an inch?`,
    );
  }
  if (item.unit !== undefined) return readAs(item, item.unit);
  if (item.value <= MM_UP_TO) return readAs(item, 'mm');
  if (item.value >= TPI_FROM) return readAs(item, 'tpi');
  return ask([25.4 / item.value, item.value], 'mm, or threads per inch?');
}

function readAs(item: NumberToken, unit: 'mm' | 'in' | 'tpi'): Quantity {
  const { mm, plusMinusMm } = toPitch(item, unit);
  return { verdict: 'read', value: mm, ...(plusMinusMm === undefined ? {} : { plusMinus: plusMinusMm }) };
}

function fromDesignation(text: string): Quantity {
  const [pitch] = readThreadSize(text).pitches;
  return pitch === undefined ? refuse('that size has no pitch in it') : { verdict: 'read', value: pitch.mm };
}
