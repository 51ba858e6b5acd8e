import type { WireComponent } from '../contract.ts';
import { make } from './dom.ts';
import { lineNodes, type ShowPlace } from './markup.ts';
import { type Piece, piecesOf } from './pieces.ts';
import { cardText, plainText } from './text.ts';
import { toneOf } from './tones.ts';
import { Kind, numberOf } from './wire.ts';

/** A text that begins with a whole line in bold names one of several things a card lists. */
const ITEM = /^\*\*[^\n]+\*\*(?:\n|$)/u;

/**
 * Draws a container as a card, its children by `draw`; a text that begins with a third-level heading gives it its
 * tab.
 */
export function card(
  container: WireComponent,
  show: ShowPlace,
  draw: (child: WireComponent) => readonly Node[],
): HTMLElement {
  const [first, ...others] = container.components ?? [];
  const { tab, pieces } = tabOf(first?.type === Kind.text ? (first.content ?? '') : '');
  const opening = first === undefined || first.type === Kind.text ? cardText(pieces, show) : draw(first);
  const body = make('div', { class: 'slip-body' }, ...opening, ...inItems(others, show, draw));
  const heading =
    tab === undefined ? undefined : make('h3', { class: 'tab', dir: 'auto' }, ...lineNodes(tab, show));
  return coloured(make('article', { class: 'card' }, heading, body), container);
}

/** A thing listed and the rows of buttons right below it are kept together. */
function inItems(
  parts: readonly WireComponent[],
  show: ShowPlace,
  draw: (child: WireComponent) => readonly Node[],
): readonly Node[] {
  const nodes: Node[] = [];
  let item: HTMLElement | undefined;
  for (const part of parts) {
    const words = part.type === Kind.text ? (part.content ?? '') : '';
    if (ITEM.test(words)) {
      item = make('div', { class: 'item' }, ...plainText(words, show));
      nodes.push(item);
    } else if (part.type === Kind.row && item !== undefined) {
      item.append(...draw(part));
    } else {
      item = undefined;
      nodes.push(...draw(part));
    }
  }
  return nodes;
}

function tabOf(content: string): { readonly tab?: string; readonly pieces: readonly Piece[] } {
  const [first, ...rest] = piecesOf(content);
  if (first?.kind === 'heading' && first.level === 3) return { tab: first.text, pieces: rest };
  return { pieces: first === undefined ? [] : [first, ...rest] };
}

/** Sets the bar at the edge: a known tone, or the colour that another bot asked for. */
function coloured(element: HTMLElement, container: WireComponent): HTMLElement {
  const colour = numberOf(container['accent_color']);
  if (colour === undefined) return element;
  const tone = toneOf(container);
  if (tone !== undefined) element.dataset['tone'] = tone;
  else element.style.setProperty('--tone', `#${(colour & 0xffffff).toString(16).padStart(6, '0')}`);
  return element;
}
