import { make } from './dom.ts';
import { type Run, runsOf } from './figures.ts';
import { foldable } from './fold.ts';
import { blockNodes, lineNodes, type ShowPlace } from './markup.ts';
import { type Piece, piecesOf } from './pieces.ts';
import { slip } from './slip.ts';

/** Longest results, in characters, that stand large: on a phone two lines of it, on a bench's screen one. */
const LARGE_RESULT = { phone: 28, bench: 40 } as const;

/** A text in running entries: everything shown, nothing folded. */
export function plainText(source: string, show: ShowPlace): readonly Node[] {
  return piecesOf(source).flatMap((piece) =>
    piece.kind === 'body' ? bodyOf(piece, show) : [pieceNode(piece, show)],
  );
}

/**
 * Pieces of a card: the second-level heading is the result; several lines of body are working and fold, as do several
 * of small print; a line right above a fence is its label.
 */
export function cardText(pieces: readonly Piece[], show: ShowPlace): readonly Node[] {
  const nodes: Node[] = [];
  for (let at = 0; at < pieces.length; at += 1) {
    const [piece, next] = [pieces[at], pieces[at + 1]];
    if (piece === undefined) break;
    if (piece.kind === 'body' && next?.kind === 'fence' && !piece.text.trim().includes('\n')) {
      nodes.push(slip(next.text, lineWords(piece.text.trim(), show)));
      at += 1;
    } else if (piece.kind === 'small' && next?.kind === 'small') {
      const rest = pieces.slice(at).findIndex(({ kind }) => kind !== 'small');
      const block = pieces.slice(at, rest === -1 ? undefined : at + rest);
      const print = make('div', { class: 'small' }, ...block.map((line) => pieceNode(line, show)));
      nodes.push(foldable(print, { shown: 1, on: 'narrow' }).element);
      at += block.length - 1;
    } else nodes.push(cardPiece(piece, show));
  }
  return nodes;
}

function cardPiece(piece: Piece, show: ShowPlace): Node {
  if (piece.kind === 'heading' && piece.level === 2) return result(piece.text, show);
  if (piece.kind !== 'body') return pieceNode(piece, show);
  const body = make('div', { class: 'working' }, ...bodyOf(piece, show));
  return piece.text.trim().includes('\n') ? foldable(body, { shown: 3, on: 'narrow' }).element : body;
}

/** A line as plain words, its marks taken as marks. */
function lineWords(text: string, show: ShowPlace): string {
  return make('p', {}, ...lineNodes(text, show)).textContent;
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
  const length = [...text].length;
  const size = length > LARGE_RESULT.bench ? 'long' : length > LARGE_RESULT.phone ? 'middling' : undefined;
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
