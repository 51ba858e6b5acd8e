/**
 * Text of messages as DOM nodes. markdown-it only cuts the text into tokens; every node is made here by name, so
 * whatever a message says, it stays text.
 */

import { isWebAddress } from './addresses.ts';
import { make } from './dom.ts';
import { type Place, placeAt } from './places.ts';
import MarkdownIt from './vendor/markdown-it.js';

/** Turns a place in the text (a mention, a time) into what is shown for it; `undefined` leaves it as typed. */
export type ShowPlace = (place: Place) => Node | undefined;

const markdown = new MarkdownIt('zero', { breaks: true, html: false, linkify: false });
markdown.enable(['list', 'newline', 'escape', 'backticks', 'strikethrough', 'emphasis', 'link', 'autolink']);
markdown.validateLink = isWebAddress;
markdown.inline.ruler.before('autolink', 'place', (state, silent) => {
  const found = placeAt(state.src, state.pos);
  if (found === undefined) return false;
  if (!silent) {
    const token = state.push('place', '', 0);
    token.content = found.typed;
    token.meta = found;
  }
  state.pos += found.typed.length;
  return true;
});

type Token = ReturnType<typeof markdown.parse>[number];

/** Lists and paragraphs. */
export function blockNodes(text: string, show: ShowPlace): readonly Node[] {
  return nodesOf(markdown.parse(text, {}), show);
}

/** One line: no blocks. */
export function lineNodes(text: string, show: ShowPlace): readonly Node[] {
  return nodesOf(markdown.parseInline(text, {}), show);
}

function nodesOf(tokens: readonly Token[], show: ShowPlace): readonly Node[] {
  const root = document.createDocumentFragment();
  let here: ParentNode & Node = root;
  for (const token of tokens) {
    if (token.nesting === 1) {
      const element = opened(token);
      here.appendChild(element);
      here = element;
    } else if (token.nesting === -1) {
      here = here.parentElement ?? root;
    } else {
      here.append(...leaf(token, show));
    }
  }
  return [...root.childNodes];
}

function opened(token: Token): HTMLElement {
  switch (token.type) {
    case 'bullet_list_open':
      return make('ul');
    case 'ordered_list_open':
      return make('ol', { start: String(token.attrGet('start') ?? 1) });
    case 'list_item_open':
      return make('li');
    case 'strong_open':
      return token.markup === '__' ? make('u') : make('strong');
    case 'em_open':
      return make('em');
    case 's_open':
      return make('s');
    case 'link_open':
      return linkTo(String(token.attrGet('href') ?? ''));
    default:
      return token.hidden ? make('span') : make('p', { dir: 'auto' });
  }
}

/** A link that leaves the page, opened apart; its whole address shows on hover. */
export function linkTo(address: string, ...children: readonly Node[]): HTMLElement {
  if (!isWebAddress(address)) return make('span', {}, ...children);
  const rel = 'noopener noreferrer nofollow';
  return make('a', { href: address, title: address, target: '_blank', rel }, ...children);
}

function leaf(token: Token, show: ShowPlace): readonly Node[] {
  switch (token.type) {
    case 'inline':
      return nodesOf(token.children ?? [], show);
    case 'softbreak':
    case 'hardbreak':
      return [make('br')];
    case 'code_inline':
      return [make('code', {}, token.content)];
    case 'place':
      // The rule above put it there.
      return [show(token.meta as Place) ?? new Text(token.content)];
    default:
      return [new Text(token.content)];
  }
}
