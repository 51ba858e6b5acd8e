import type { PageChannel, PageEntry, PagePerson } from '../page-api.ts';
import { make, named, pressable } from './dom.ts';
import { type Point, pointOf } from './summary.ts';

export interface HeadPorts {
  changeMe(): void;
  goTo(channelId: string): void;
  jumpTo(messageId: string): void;
  initials(name: string): string;
}

export interface HeadFacts {
  readonly build: string;
  readonly me: PagePerson | undefined;
  readonly channels: readonly PageChannel[];
  readonly channelId: string;
  /** The entry that says how the build stands. */
  readonly standing: PageEntry | undefined;
}

/** The strip at the head: which build, how it stands, who is writing, and where. */
export function openHead(head: HTMLElement, ports: HeadPorts): (facts: HeadFacts) => void {
  let drawn = '';
  return (facts) => {
    const { build, me, channels, channelId, standing } = facts;
    const point = standing === undefined ? undefined : pointOf(standing);
    // Drawn anew only when something in it changes: the focus, or an open list of channels, is not to be lost.
    const now = JSON.stringify([build, me, channels, channelId, standing?.message.id, point]);
    if (now === drawn) return;
    drawn = now;
    const below = make('div', { class: 'head-line below' });
    // A message of pictures alone says nothing here.
    if (standing !== undefined && point !== undefined && point.result !== '') {
      below.append(howItStands(point, () => ports.jumpTo(standing.message.id)));
    }
    if (channels.length > 1) below.append(channelList(facts, ports));
    const here = channels.length > 1 ? undefined : channels.find((channel) => channel.id === channelId);
    const name = make(
      'div',
      { class: 'name' },
      make('h1', { dir: 'auto' }, build),
      here === undefined ? undefined : make('p', { class: 'here', dir: 'auto' }, here.name),
    );
    const top = make('div', { class: 'head-line' }, name, whoIAm(me, ports));
    head.replaceChildren(top, ...(below.childElementCount > 0 ? [below] : []));
  };
}

/** In words, with the colour of its state beside them; pressed, it leads to the entry. */
function howItStands({ result, subject, tone }: Point, jump: () => void): HTMLElement {
  const button = pressable('', jump, { class: 'standing', 'data-tone': tone, dir: 'auto' });
  button.append(make('span', { class: 'standing-result' }, result));
  if (subject !== undefined) button.append(' ', make('span', { class: 'standing-subject' }, subject));
  return button;
}

function whoIAm(me: PagePerson | undefined, ports: HeadPorts): HTMLElement {
  const button = pressable('', ports.changeMe, { class: 'press me', 'aria-haspopup': 'dialog' });
  if (me === undefined) button.append('Who are you?');
  else {
    const square = make('span', { class: 'square', 'aria-hidden': 'true' }, ports.initials(me.name));
    button.append(square, make('span', {}, 'I am ', named(me.name)));
  }
  return button;
}

/** Threads stand below the channel they hang on. */
function channelList({ channels, channelId }: HeadFacts, ports: HeadPorts): HTMLElement {
  const list = make('select', { class: 'where', 'aria-label': 'Channel' });
  const add = (channel: PageChannel, before: string): void => {
    list.append(make('option', { value: channel.id }, before + channel.name));
    for (const thread of channels.filter((other) => other.parentId === channel.id))
      add(thread, `${before}– `);
  };
  for (const channel of channels.filter((each) => each.parentId === undefined)) add(channel, '');
  list.value = channelId;
  list.addEventListener('change', () => ports.goTo(list.value));
  return list;
}
