import { UserError } from '../../core/user-error.ts';
import type { NumberToken, Token } from './tokens.ts';
import type { WordMeaning } from './words.ts';

/** A length over several pitches. */
export interface SpanItem {
  readonly kind: 'span';
  readonly length: NumberToken;
  readonly pitches: number;
  readonly text: string;
}

/** Two diameters and the distance between them. */
export interface TaperItem {
  readonly kind: 'taper';
  readonly first: NumberToken;
  readonly second: NumberToken;
  readonly over: NumberToken;
  readonly text: string;
}

export type SizeItem =
  | Exclude<Token, { readonly kind: 'word' }>
  | SpanItem
  | TaperItem
  | { readonly kind: 'meaning'; readonly meaning: WordMeaning; readonly text: string };

/**
 * Joins what belongs together: `15/10`, `15 mm over 10`, `10 threads in 15 mm` become a span; `13.2 to 13.8 over 10`
 * becomes a taper.
 *
 * @throws UserError 'bad-input' for a range of diameters without the distance, or a span over no whole number.
 */
export function foldSpans(items: readonly SizeItem[]): readonly SizeItem[] {
  const folded: SizeItem[] = [];
  let at = 0;
  while (at < items.length) {
    const joined = taperAt(items, at) ?? spanAt(items, at) ?? countAt(items, at);
    const item = items[at];
    if (joined !== undefined) {
      folded.push(joined.item);
      at = joined.next;
    } else {
      if (item?.kind === 'to') {
        throw new UserError(
          'bad-input',
          'Two diameters need the distance between them: `13.2 to 13.8 over 10`. For one diameter, type one number.',
        );
      }
      if (item !== undefined) folded.push(item);
      at += 1;
    }
  }
  return folded;
}

interface Joined {
  readonly item: SizeItem;
  readonly next: number;
}

function taperAt(items: readonly SizeItem[], at: number): Joined | undefined {
  const [first, to, second] = items.slice(at, at + 3);
  if (first?.kind !== 'number' || to?.kind !== 'to' || second?.kind !== 'number') return undefined;
  const over = items[at + 3];
  const distance = items[at + 4];
  if ((over?.kind !== 'over' && over?.kind !== 'slash') || distance?.kind !== 'number') return undefined;
  const text = [first, to, second, over, distance].map((each) => each.text).join(' ');
  return { item: { kind: 'taper', first, second, over: distance, text }, next: at + 5 };
}

function spanAt(items: readonly SizeItem[], at: number): Joined | undefined {
  const [length, sign, count] = items.slice(at, at + 3);
  if (length?.kind !== 'number' || (sign?.kind !== 'slash' && sign?.kind !== 'over')) return undefined;
  const pitches = count?.kind === 'number' && count.unit === undefined ? count.value : countOf(count);
  const text = `${length.text}${sign.text}${count?.text ?? ''}`;
  if (pitches === undefined || !Number.isInteger(pitches) || pitches < 1 || pitches > 60) {
    throw new UserError(
      'bad-input',
      `"${text}" should be a length over a number of threads, like \`15/10\` or \`15 mm over 10\`.`,
    );
  }
  return { item: { kind: 'span', length, pitches, text }, next: at + 3 };
}

function countAt(items: readonly SizeItem[], at: number): Joined | undefined {
  const pitches = countOf(items[at]);
  if (pitches === undefined) return undefined;
  const sign = items[at + 1];
  const length =
    items[sign?.kind === 'over' || sign?.kind === 'between' || sign?.kind === 'slash' ? at + 2 : at + 1];
  const first = items[at];
  if (length?.kind !== 'number' || pitches < 1 || length.unit === 'tpi') {
    throw new UserError(
      'bad-input',
      `How long are the ${pitches} threads? Type it like \`10 threads over 15 mm\` or \`15/10\`.`,
    );
  }
  const text = `${first?.text ?? ''} over ${length.text}`;
  return { item: { kind: 'span', length, pitches, text }, next: items.indexOf(length) + 1 };
}

function countOf(item: SizeItem | undefined): number | undefined {
  return item?.kind === 'count' ? item.pitches : undefined;
}
