import type { PageChannel, PageEntry, PagePerson } from '../page-api.ts';
import { ChannelKind, Flag } from '../wire/numbers.ts';
import { wireMessage } from '../world/message-payload.ts';
import type { ChannelState } from '../world/state.ts';
import type { Channel, Message, Person } from '../world/things.ts';
import type { World } from '../world/world.ts';

/** Most entries the page gets at once. */
export const PAGE_SIZE = 50;

const REPLY_START = 120;

export const pagePerson = ({ id, name, bot }: Person): PagePerson => ({ id, name, bot });

export function pageChannels(world: World): readonly PageChannel[] {
  return world
    .channels()
    .filter(({ kind, thread }) => kind !== ChannelKind.direct && thread?.archived !== true)
    .map(pageChannel);
}

function pageChannel({ id, name, thread, parentId }: Channel): PageChannel {
  return {
    id,
    name,
    kind: thread === undefined ? 'channel' : 'thread',
    ...(parentId === undefined ? {} : { parentId }),
  };
}

export function pageEntry({ world, messages }: ChannelState, message: Message): PageEntry {
  const wire = wireMessage(world, message);
  const nameOf = (id: string): string => world.person(id)?.name ?? 'somebody';
  const { asked, reference } = message;
  const replied = reference === undefined ? undefined : messages.find(reference.messageId);
  return {
    message: wire,
    private: message.privateTo !== undefined,
    working: (message.flags & Flag.loading) !== 0,
    ...(asked?.line === undefined ? {} : { asked: { by: nameOf(asked.userId), line: asked.line } }),
    ...(replied === undefined
      ? {}
      : {
          replyTo: {
            id: replied.id,
            by: nameOf(replied.authorId),
            start: withNames(world, replied.content).slice(0, REPLY_START),
          },
        }),
    pinned: message.pinnedMs !== null,
    reactions: message.reactions.map(({ emoji, userIds }) => ({ emoji, names: userIds.map(nameOf) })),
    mentions: mentionsIn(world, JSON.stringify([message.content, message.components, message.embeds])),
  };
}

/** Mentions as the names they stand for, where they are only quoted. */
const withNames = (world: World, text: string): string =>
  text.replace(/<@!?(\d{17,19})>/g, (mention, id: string) => {
    const name = world.person(id)?.name;
    return name === undefined ? mention : `@${name}`;
  });

function mentionsIn(world: World, text: string): PageEntry['mentions'] {
  const found = new Map(
    [...text.matchAll(/<(@!?|#)(\d{17,19})>/g)].map((match) => [match[2] ?? '', match[1]]),
  );
  return [...found].flatMap(([id, mark]) => {
    const name = mark === '#' ? world.channel(id)?.name : world.person(id)?.name;
    return name === undefined
      ? []
      : [{ id, name, kind: mark === '#' ? ('channel' as const) : ('person' as const) }];
  });
}

/** A stretch of a channel as one person sees it: oldest first, the newest before `before`. */
export function pageOf(
  state: ChannelState,
  channelId: string,
  personId: string,
  { before, limit = PAGE_SIZE }: { readonly before?: string | undefined; readonly limit?: number },
): { readonly entries: readonly PageEntry[]; readonly more: boolean } {
  const found = state.world.storage.page(channelId, { before, limit: limit + 1 });
  const kept = found.slice(0, limit).reverse();
  const more = found.length > limit;
  const from = more ? BigInt(kept[0]?.id ?? 0) : 0n;
  const to = before === undefined ? undefined : BigInt(before);
  const passing = state.messages
    .passing(channelId, personId)
    .filter(({ id }) => BigInt(id) >= from && (to === undefined || BigInt(id) < to));
  const all = [...kept, ...passing].sort((a, b) => (BigInt(a.id) < BigInt(b.id) ? -1 : 1));
  return { entries: all.map((message) => pageEntry(state, message)), more };
}

/** JSON for the page: attachments are addressed by path alone, whatever name the page was opened under. */
export function pageJson(world: World, value: unknown): string {
  return JSON.stringify(value).replaceAll(`${world.origin}/cdn/`, '/cdn/');
}
