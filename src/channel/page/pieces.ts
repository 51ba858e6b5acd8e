/**
 * Cuts a message's text into the blocks that the bot API's markup knows and CommonMark does not, or treats otherwise:
 * headings of three levels, `-# ` small print, `> ` quotes without lazy continuation, and fences.
 */
export type Piece =
  | { readonly kind: 'heading'; readonly level: number; readonly text: string }
  | { readonly kind: 'small'; readonly text: string }
  | { readonly kind: 'quote'; readonly text: string }
  | { readonly kind: 'fence'; readonly text: string }
  | { readonly kind: 'body'; readonly text: string };

const FENCE = /^```(?:[\w+#.-]*\n)?([\s\S]*?)\n?```[ \t]*(?:\n|$)/u;
const HEADING = /^(#{1,3}) +(.+)$/u;
const SMALL = /^-# +(.+)$/u;
const QUOTE = /^> ?(.*)$/u;

/** The blocks of `source` in order; lines that are none of the special ones run together as `body`. */
export function piecesOf(source: string): readonly Piece[] {
  const pieces: Piece[] = [];
  let rest = source.replaceAll(/\r\n?/gu, '\n');
  while (rest !== '') {
    const fence = FENCE.exec(rest);
    if (fence !== null) {
      pieces.push({ kind: 'fence', text: fence[1] ?? '' });
      rest = rest.slice(fence[0].length);
      continue;
    }
    const end = rest.indexOf('\n');
    const line = end === -1 ? rest : rest.slice(0, end);
    rest = end === -1 ? '' : rest.slice(end + 1);
    append(pieces, pieceOf(line));
  }
  return pieces.filter((piece) => piece.kind === 'fence' || piece.text.trim() !== '');
}

function pieceOf(line: string): Piece {
  const heading = HEADING.exec(line);
  if (heading !== null) return { kind: 'heading', level: heading[1]?.length ?? 1, text: heading[2] ?? '' };
  const small = SMALL.exec(line);
  if (small !== null) return { kind: 'small', text: small[1] ?? '' };
  const quote = QUOTE.exec(line);
  if (quote !== null) return { kind: 'quote', text: quote[1] ?? '' };
  return { kind: 'body', text: line };
}

/** Adds a piece, joining lines of one quote or one body. */
function append(pieces: Piece[], piece: Piece): void {
  const last = pieces.at(-1);
  const joins = piece.kind === 'quote' || piece.kind === 'body';
  if (joins && last?.kind === piece.kind) {
    pieces[pieces.length - 1] = { kind: piece.kind, text: `${last.text}\n${piece.text}` };
  } else {
    pieces.push(piece);
  }
}
