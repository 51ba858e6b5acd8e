import type { WireComponent } from '../contract.ts';
import { card } from './card.ts';
import { button, select } from './controls.ts';
import type { Deeds } from './deeds.ts';
import { make } from './dom.ts';
import type { ShowPlace } from './markup.ts';
import { fileLink, picture } from './media.ts';
import { piecesOf } from './pieces.ts';
import { cardText, plainText } from './text.ts';
import { fieldsOf, Kind, listOf, mediaSize, mediaUrl, textOf } from './wire.ts';

/** What drawing a component of a message needs to know of its entry. */
export interface Setting {
  readonly messageId: string;
  readonly show: ShowPlace;
  readonly deeds: Deeds;
  /** Inside a card, text is result, certainty and working. */
  readonly inCard: boolean;
}

/** Draws a component; one that this page does not know is named, not dropped. */
export function component(part: WireComponent, setting: Setting): readonly Node[] {
  switch (part.type) {
    case Kind.text: {
      const source = part.content ?? '';
      return setting.inCard ? cardText(piecesOf(source), setting.show) : plainText(source, setting.show);
    }
    case Kind.row:
      return [make('div', { class: 'deeds' }, ...inside(part, setting))];
    case Kind.button:
      return [button(part, setting.messageId, setting.deeds)];
    case Kind.stringSelect:
    case Kind.userSelect:
    case Kind.roleSelect:
    case Kind.mentionableSelect:
    case Kind.channelSelect:
      return [select(part, setting.messageId, setting.deeds)];
    case Kind.section:
      return [section(part, setting)];
    case Kind.thumbnail:
      return [picture(mediaUrl(part), textOf(part['description']))];
    case Kind.gallery:
      return listOf(part['items']).map((item) =>
        picture(mediaUrl(item), textOf(fieldsOf(item)['description']), mediaSize(item)),
      );
    case Kind.file:
      return [fileLink(mediaUrl(part), textOf(part['name']))];
    case Kind.separator:
      return part['divider'] === false ? [] : [make('hr')];
    case Kind.container:
      return [card(part, setting.show, (child) => component(child, { ...setting, inCard: true }))];
    default:
      return [make('p', { class: 'small' }, `Something this page cannot show (component ${part.type}).`)];
  }
}

function inside(part: WireComponent, setting: Setting): readonly Node[] {
  return (part.components ?? []).flatMap((child) => component(child, setting));
}

/** Text with its own button or picture beside it, below it where there is no room. */
function section(part: WireComponent, setting: Setting): HTMLElement {
  const beside = part.accessory === undefined ? [] : component(part.accessory, setting);
  return make(
    'div',
    { class: 'section' },
    make('div', { class: 'section-text' }, ...inside(part, setting)),
    ...beside,
  );
}
