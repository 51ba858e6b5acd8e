import type { Hono } from 'hono';
import { checkChoice, checkText } from '../rules/fields.ts';
import { LIMITS } from '../rules/limits.ts';
import { Problems } from '../rules/problems.ts';
import { refuse } from '../wire/api-error.ts';
import { type JsonObject, numberOf, textOf } from '../wire/json.ts';
import { ChannelKind, Flag, Intent } from '../wire/numbers.ts';
import { channelPayload, iso } from '../world/payloads.ts';
import type { ChannelState } from '../world/state.ts';
import type { Channel } from '../world/things.ts';
import { readBody } from './body.ts';
import { channelOf, messageOf } from './lookup.ts';

const { thread: MAX } = LIMITS;

/** Threads: from a message (it shares the message's id) or alone. */
export function threadRoutes(api: Hono, state: ChannelState): void {
  const { world, messages } = state;

  api.post('/channels/:channel/threads', async (c) => {
    const parent = channelOf(state, c.req.param('channel'));
    const { json } = await readBody(c);
    // Alone, a thread is private unless its type says otherwise.
    const kind = numberOf(json['type']) ?? ChannelKind.privateThread;
    const thread = make(state, parent, json, world.newId(), kind);
    return c.json(channelPayload(world, thread), 201);
  });

  api.post('/channels/:channel/messages/:message/threads', async (c) => {
    const parent = channelOf(state, c.req.param('channel'));
    const message = messageOf(state, parent.id, c.req.param('message'));
    if (world.channel(message.id) !== undefined) throw refuse.threadExists();
    const thread = make(state, parent, (await readBody(c)).json, message.id, ChannelKind.publicThread);
    messages.change({ ...message, threadId: thread.id, flags: message.flags | Flag.hasThread }, false);
    return c.json(channelPayload(world, thread), 201);
  });

  api.delete('/channels/:channel', (c) => {
    const channel = channelOf(state, c.req.param('channel'));
    const data = channelPayload(world, channel);
    world.dropChannel(channel.id);
    const isThread = channel.thread !== undefined;
    world.gateway.tell({
      name: isThread ? 'THREAD_DELETE' : 'CHANNEL_DELETE',
      intents: Intent.guilds,
      data: isThread
        ? { id: channel.id, guild_id: world.guildId, parent_id: channel.parentId, type: channel.kind }
        : data,
    });
    return c.json(data);
  });

  api.on(['PUT', 'DELETE'], '/channels/:channel/thread-members/:user', (c) => {
    const channel = channelOf(state, c.req.param('channel'));
    if (channel.thread === undefined) throw refuse.unknownChannel();
    const user = c.req.param('user') === '@me' ? world.bot.id : c.req.param('user');
    if (world.person(user) === undefined) throw refuse.unknownUser();
    const others = channel.thread.memberIds.filter((id) => id !== user);
    const memberIds = c.req.method === 'PUT' ? [...others, user] : others;
    world.saveChannel({ ...channel, thread: { ...channel.thread, memberIds } });
    return c.body(null, 204);
  });

  api.get('/guilds/:guild/threads/active', (c) => {
    const threads = world.channels().filter(({ thread }) => thread?.archived === false);
    return c.json({
      threads: threads.map((thread) => channelPayload(world, thread)),
      members: threads.map((thread) => ownMember(state, thread)),
      has_more: false,
    });
  });
}

function make(state: ChannelState, parent: Channel, body: JsonObject, id: string, kind: number): Channel {
  const { world } = state;
  if (parent.kind !== ChannelKind.text) throw refuse.missingAccess();
  const problems = new Problems();
  checkText(problems, ['name'], body['name'], { min: 1, max: MAX.name, required: true });
  checkChoice(problems, ['auto_archive_duration'], body['auto_archive_duration'], MAX.archiveMinutes);
  checkChoice(problems, ['type'], kind, [ChannelKind.publicThread, ChannelKind.privateThread]);
  problems.settle();
  const thread: Channel = {
    id,
    kind,
    name: textOf(body['name']) ?? '',
    topic: null,
    position: 0,
    createdMs: world.clock.nowMs(),
    parentId: parent.id,
    thread: {
      ownerId: world.bot.id,
      archived: false,
      locked: false,
      archiveMinutes: numberOf(body['auto_archive_duration']) ?? 4320,
      memberIds: [world.bot.id],
    },
  };
  world.saveChannel(thread);
  world.gateway.tell({
    name: 'THREAD_CREATE',
    intents: Intent.guilds,
    data: { ...channelPayload(world, thread), newly_created: true, member: ownMember(state, thread) },
  });
  return thread;
}

function ownMember({ world }: ChannelState, thread: Channel): JsonObject {
  return { id: thread.id, user_id: world.bot.id, join_timestamp: iso(thread.createdMs), flags: 0 };
}
