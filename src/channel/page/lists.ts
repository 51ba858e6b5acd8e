import type { WireComponent } from '../contract.ts';
import type { PageChannel, PagePerson } from '../page-api.ts';
import { Kind, type Option, optionsOf } from './wire.ts';

/** Who and what can be chosen from at present. */
export interface Lists {
  readonly people: readonly PagePerson[];
  readonly channels: readonly PageChannel[];
}

/** What a select offers: its own options, or the people or channels there are. There are no roles here. */
export function choicesOf(select: WireComponent, lists: Lists): readonly Option[] {
  const listed = (id: string, label: string): Option => ({ label, value: id, note: '', chosen: false });
  switch (select.type) {
    case Kind.userSelect:
    case Kind.mentionableSelect:
      return lists.people.map((person) => listed(person.id, person.name));
    case Kind.channelSelect:
      return lists.channels.map((channel) => listed(channel.id, channel.name));
    default:
      return optionsOf(select);
  }
}
