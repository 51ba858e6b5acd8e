import type { AmountPiece, Line, Piece } from './line.ts';

const COUNTED = /^(?:cyl|cyls|cylinder|cylinders|zylinder|zyl|cylindres?|cilindros?|pot|pots)$/u;
const LAYOUT = /^(?:v|i|l|h|r|flat|inline|straight|boxer|vee)$/u;
/** `straight six`, `four cylinder`. */
const SPELLED: ReadonlyMap<string, number> = new Map([
  ['two', 2],
  ['twin', 2],
  ['three', 3],
  ['triple', 3],
  ['four', 4],
  ['five', 5],
  ['six', 6],
  ['eight', 8],
  ['ten', 10],
  ['twelve', 12],
  ['vier', 4],
  ['sechs', 6],
  ['acht', 8],
  ['quatre', 4],
  ['cuatro', 4],
  ['seis', 6],
  ['ocho', 8],
]);
const CODE = /^(?:v|i|l|h|r|w)(2|3|4|5|6|8|10|12|16)$/u;

/** Takes the number of cylinders out of a line: `4 cyl`, `flat 4`, `v8`. */
export function takeCylinders(line: Line): { readonly count: number | undefined; readonly rest: Line } {
  const { pieces } = line;
  for (const [at, piece] of pieces.entries()) {
    const next = pieces[at + 1];
    if (piece.is === 'code') {
      const count = CODE.exec(piece.text)?.[1];
      if (count !== undefined) return { count: Number(count), rest: without(line, at, 1) };
    }
    const spelled = next?.is === 'word' ? SPELLED.get(next.text) : undefined;
    if (piece.is === 'word' && LAYOUT.test(piece.text) && spelled !== undefined)
      return { count: spelled, rest: without(line, at, 2) };
    const counted = piece.is === 'word' ? SPELLED.get(piece.text) : undefined;
    if (counted !== undefined && next?.is === 'word' && COUNTED.test(next.text))
      return { count: counted, rest: without(line, at, 2) };
    if (isCount(piece) && next?.is === 'word' && COUNTED.test(next.text))
      return { count: piece.value, rest: without(line, at, 2) };
    if (piece.is === 'word' && LAYOUT.test(piece.text) && next !== undefined && isCount(next))
      return { count: next.value, rest: without(line, at, 2) };
  }
  return { count: undefined, rest: line };
}

const isCount = (piece: Piece): piece is AmountPiece =>
  piece.is === 'amount' &&
  piece.unit === '' &&
  Number.isInteger(piece.value) &&
  piece.value >= 1 &&
  piece.value <= 16;

function without(line: Line, at: number, many: number): Line {
  return withPieces(
    line,
    line.pieces.filter((_piece, index) => index < at || index >= at + many),
  );
}

/** The same line with other pieces. */
export function withPieces(line: Line, pieces: readonly Piece[]): Line {
  return {
    ...line,
    pieces,
    amounts: pieces.filter((piece) => piece.is === 'amount'),
    words: pieces.flatMap((piece) => (piece.is === 'amount' ? [] : [piece.text])),
  };
}
