import { make } from './dom.ts';
import { lineNodes, linkTo, type ShowPlace } from './markup.ts';
import { picture } from './media.ts';
import { plainText } from './text.ts';
import { fieldsOf, listOf, textOf } from './wire.ts';

/** Draws an embed, the older kind of card that other bots still send. */
export function embed(raw: unknown, show: ShowPlace): HTMLElement {
  const fields = fieldsOf(raw);
  const author = textOf(fieldsOf(fields['author'])['name']);
  const title = textOf(fields['title']);
  const address = textOf(fields['url']);
  const image = textOf(fieldsOf(fields['image'] ?? fields['thumbnail'])['url']);
  const footer = textOf(fieldsOf(fields['footer'])['text']);
  const heading = lineNodes(title, show);
  return make(
    'article',
    { class: 'card' },
    author === '' ? undefined : make('h3', { class: 'tab', dir: 'auto' }, author),
    make(
      'div',
      { class: 'slip-body' },
      title === ''
        ? undefined
        : make(
            'p',
            { class: 'heading level-2', dir: 'auto' },
            address === '' ? make('span', {}, ...heading) : linkTo(address, ...heading),
          ),
      ...plainText(textOf(fields['description']), show),
      ...listOf(fields['fields']).map((field) => fact(field, show)),
      image === '' ? undefined : picture(image, ''),
      footer === '' ? undefined : make('p', { class: 'small', dir: 'auto' }, footer),
    ),
  );
}

function fact(raw: unknown, show: ShowPlace): HTMLElement {
  const { name, value } = fieldsOf(raw);
  const label = make('p', { class: 'heading level-3', dir: 'auto' }, ...lineNodes(textOf(name), show));
  return make('div', {}, label, ...plainText(textOf(value), show));
}
