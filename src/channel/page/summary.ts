import type { WireComponent, WireMessage } from '../contract.ts';
import type { PageEntry } from '../page-api.ts';
import { piecesOf } from './pieces.ts';
import { placeAt } from './places.ts';
import { toneOf } from './tones.ts';
import { Kind } from './wire.ts';

const LONGEST = 140;

/** An entry's point in plain words: what a card says, what it is about, and the state it is marked with. */
export interface Point {
  readonly result: string;
  readonly subject: string | undefined;
  readonly tone: string | undefined;
}

/** Subject and result of a card, else how the text begins. */
export function pointOf(entry: PageEntry): Point {
  const { message } = entry;
  const pieces = textsOf(message).flatMap((text) => piecesOf(text));
  const headings = pieces.filter((piece) => piece.kind === 'heading');
  const [subject, result] = [3, 2].map((level) => {
    const heading = headings.find((piece) => piece.level === level);
    return heading === undefined ? undefined : plainWords(heading.text, entry);
  });
  const card = message.components.find((part) => part.type === Kind.container);
  const tone = card === undefined ? undefined : toneOf(card);
  if (result !== undefined) return { result: shortened(result), subject, tone };
  const rest = pieces.filter((piece) => piece.kind !== 'heading').map((piece) => piece.text);
  const words = plainWords(rest.join(' '), entry);
  if (words === '') return { result: subject ?? '', subject: undefined, tone };
  return { result: shortened(words), subject, tone };
}

/** An entry in one line of plain words. */
export function summaryOf(entry: PageEntry): string {
  const { subject, result } = pointOf(entry);
  return shortened(subject === undefined ? result : `${subject} – ${result}`);
}

function shortened(line: string): string {
  return line.length > LONGEST ? `${line.slice(0, LONGEST).trimEnd()} …` : line;
}

function textsOf(message: WireMessage): readonly string[] {
  const inside = (part: WireComponent): readonly string[] => [
    ...(part.content === undefined ? [] : [part.content]),
    ...(part.components ?? []).flatMap(inside),
  ];
  return [message.content, ...message.components.flatMap(inside)].filter((text) => text !== '');
}

/** Without marks of emphasis, and with people by name. */
function plainWords(text: string, entry: PageEntry): string {
  const named = text.replaceAll(/<[@#][^>]*>/gu, (typed) => {
    const place = placeAt(typed, 0);
    if (place === undefined || !('id' in place)) return typed;
    return entry.mentions.find((mention) => mention.id === place.id)?.name ?? '';
  });
  return named
    .replaceAll(/\\([^\p{L}\p{N}\s])|[*_`~]{1,3}|^(?:-#|>) /gmu, '$1')
    .replaceAll(/\s+/gu, ' ')
    .trim();
}
