import type { WireComponent, WireMessage } from '../contract.ts';
import type { PageEntry } from '../page-api.ts';
import { piecesOf } from './pieces.ts';
import { placeAt } from './places.ts';

const LONGEST = 140;

/** An entry in one line of plain words: subject and result of a card, else how the text begins. */
export function summaryOf(entry: PageEntry): string {
  const headings = textsOf(entry.message)
    .flatMap((text) => piecesOf(text))
    .filter((piece) => piece.kind === 'heading');
  const subject = headings.find((piece) => piece.level === 3);
  const result = headings.find((piece) => piece.level === 2);
  const parts = [subject, result].flatMap((piece) =>
    piece === undefined ? [] : [plainWords(piece.text, entry)],
  );
  const line = parts.length > 0 ? parts.join(' – ') : plainWords(textsOf(entry.message).join(' '), entry);
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
