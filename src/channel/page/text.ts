import { make } from './dom.ts';
import { type Run, runsOf } from './figures.ts';
import { foldable } from './fold.ts';
import { blockNodes, lineNodes, type ShowPlace } from './markup.ts';
import { type Piece, piecesOf } from './pieces.ts';
import { slip } from './slip.ts';

/** Longest result, in characters, that still stands large: about three lines on the narrowest phone. */
const LARGE_RESULT = 40;

/** A text in running entries: everything shown, nothing folded. */
export function plainText(source: string, show: ShowPlace): readonly Node[] {
  return piecesOf(source).flatMap((piece) =>
    piece.kind === 'body' ? bodyOf(piece, show) : [pieceNode(piece, show)],
  );
}

/** Pieces of a card: the second-level heading is the result, several lines of body are working and fold. */
export function cardText(pieces: readonly Piece[], show: ShowPlace): readonly Node[] {
  return pieces.map((piece) => {
    if (piece.kind === 'heading' && piece.level === 2) return result(piece.text, show);
    if (piece.kind !== 'body') return pieceNode(piece, show);
    const body = make('div', { class: 'working' }, ...bodyOf(piece, show));
    return piece.text.trim().includes('\n') ? foldable(body) : body;
  });
}

function bodyOf(piece: Piece, show: ShowPlace): readonly Node[] {
  return blockNodes(piece.text, show);
}

function pieceNode(piece: Piece, show: ShowPlace): Node {
  switch (piece.kind) {
    case 'heading':
      return make(
        'p',
        { class: `heading level-${piece.level}`, dir: 'auto' },
        ...lineNodes(piece.text, show),
      );
    case 'small':
      return make('p', { class: 'small', dir: 'auto' }, ...lineNodes(piece.text, show));
    case 'quote':
      return make('blockquote', { dir: 'auto' }, ...blockNodes(piece.text, show));
    case 'fence':
      return slip(piece.text);
    case 'body':
      return make('div', {}, ...bodyOf(piece, show));
  }
}

/** The result of an answer: figures large, their units smaller beside them. */
function result(text: string, show: ShowPlace): HTMLElement {
  const size = [...text].length > LARGE_RESULT ? 'long' : undefined;
  const line = make('p', { class: 'result', 'data-size': size, dir: 'auto' }, ...lineNodes(text, show));
  for (const node of [...line.childNodes]) {
    if (node instanceof Text) node.replaceWith(...runsOf(node.data).map(runNode));
  }
  return line;
}

/** A unit stays on the line of its figure. */
function runNode(run: Run): Node {
  return run.unit ? make('span', { class: 'unit' }, run.text.replace(' ', '\u00a0')) : new Text(run.text);
}
