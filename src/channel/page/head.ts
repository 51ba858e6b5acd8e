import type { PageChannel, PageEntry, PagePerson } from '../page-api.ts';
import { make, named, pressable } from './dom.ts';
import { summaryOf } from './summary.ts';

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
  /** The newest pinned entry: how the build stands. */
  readonly pinned: PageEntry | undefined;
}

/** The strip at the head: which build, how it stands, who is writing, and where. */
export function openHead(head: HTMLElement, ports: HeadPorts): (facts: HeadFacts) => void {
  let drawn = '';
  return (facts) => {
    const { build, me, channels, channelId, pinned } = facts;
    const standing = pinned === undefined ? undefined : summaryOf(pinned);
    // Drawn anew only when something in it changes: the focus, or an open list of channels, is not to be lost.
    const now = JSON.stringify([build, me, channels, channelId, standing]);
    if (now === drawn) return;
    drawn = now;
    const below = make('div', { class: 'head-line below' });
    if (pinned !== undefined && standing !== undefined) {
      const jump = () => ports.jumpTo(pinned.message.id);
      below.append(pressable(standing, jump, { class: 'standing', dir: 'auto' }));
    }
    if (channels.length > 1) below.append(channelList(facts, ports));
    const top = make('div', { class: 'head-line' }, make('h1', { dir: 'auto' }, build), whoIAm(me, ports));
    head.replaceChildren(top, ...(below.childElementCount > 0 ? [below] : []));
  };
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
