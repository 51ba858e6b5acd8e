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
export function drawHead(head: HTMLElement, facts: HeadFacts, ports: HeadPorts): void {
  const me = pressable('', ports.changeMe, { class: 'press me', 'aria-haspopup': 'dialog' });
  if (facts.me === undefined) me.append('Who are you?');
  else
    me.append(
      make('span', { class: 'square', 'aria-hidden': 'true' }, ports.initials(facts.me.name)),
      make('span', {}, 'I am ', named(facts.me.name)),
    );
  const { pinned } = facts;
  const standing =
    pinned === undefined
      ? undefined
      : pressable(summaryOf(pinned), () => ports.jumpTo(pinned.message.id), {
          class: 'standing',
          dir: 'auto',
        });
  const where = facts.channels.length > 1 ? channelList(facts, ports) : undefined;
  const top = make('div', { class: 'head-line' }, make('h1', { dir: 'auto' }, facts.build), me);
  const below = make('div', { class: 'head-line below' }, standing, where);
  const held =
    document.activeElement !== null && head.contains(document.activeElement)
      ? document.activeElement.className
      : undefined;
  head.replaceChildren(top, ...(below.childElementCount > 0 ? [below] : []));
  if (held !== undefined) head.querySelector<HTMLElement>(`[class="${held}"]`)?.focus();
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
