import type { Hono } from 'hono';
import { LIMITS } from '../rules/limits.ts';
import { Problems } from '../rules/problems.ts';
import { refuse } from '../wire/api-error.ts';
import { isObject, type JsonObject, stringsIn } from '../wire/json.ts';
import { Flag, Intent } from '../wire/numbers.ts';
import { isId } from '../wire/snowflake.ts';
import { guildIdOf, messagePayload } from '../world/message-payload.ts';
import type { ChannelState } from '../world/state.ts';
import type { Message } from '../world/things.ts';
import { type Body, readBody, readJson } from './body.ts';
import { editMessage, newMessage } from './edits.ts';
import { channelOf, messageOf } from './lookup.ts';

const { message: MAX } = LIMITS;

/** Messages of a channel: create, read, edit, delete. */
export function messageRoutes(api: Hono, state: ChannelState): void {
  const { world, messages } = state;

  api.post('/channels/:channel/messages', async (c) => {
    const channel = channelOf(state, c.req.param('channel'));
    const body = await readBody(c);
    const earlier = sentBefore(state, body.json);
    if (earlier !== undefined) return c.json(messagePayload(world, earlier));
    if (channel.thread?.locked === true) throw refuse.threadArchived();
    const message = world.storage.together(() => send(state, channel.id, body));
    if (channel.thread?.archived === true) {
      world.saveChannel({ ...channel, thread: { ...channel.thread, archived: false } });
    }
    return c.json(messagePayload(world, message));
  });

  api.get('/channels/:channel/messages', (c) => {
    const channel = channelOf(state, c.req.param('channel'));
    const limit = pageLimit(c.req.query('limit'));
    const { before, after, around } = c.req.query();
    const page = (range: { before?: string | undefined; after?: string | undefined }, count: number) =>
      world.storage.page(channel.id, { ...range, limit: count });
    if (around !== undefined && isId(around)) {
      const half = Math.floor(limit / 2);
      const middle = world.storage.message(around);
      const found = [
        ...page({ after: around }, half),
        ...(middle?.channelId === channel.id ? [middle] : []),
        ...page({ before: around }, half),
      ];
      return c.json(found.map((message) => messagePayload(world, message)));
    }
    return c.json(page({ before, after }, limit).map((message) => messagePayload(world, message)));
  });

  api.get('/channels/:channel/messages/:message', (c) =>
    c.json(messagePayload(world, messageOf(state, c.req.param('channel'), c.req.param('message')))),
  );

  api.patch('/channels/:channel/messages/:message', async (c) => {
    const message = messageOf(state, c.req.param('channel'), c.req.param('message'));
    if (message.authorId !== world.bot.id) throw refuse.notYours();
    return c.json(messagePayload(world, editMessage(state, message, await readBody(c), 'message')));
  });

  api.delete('/channels/:channel/messages/:message', (c) => {
    messages.remove(messageOf(state, c.req.param('channel'), c.req.param('message')));
    return c.body(null, 204);
  });

  api.post('/channels/:channel/messages/bulk-delete', async (c) => {
    const channel = channelOf(state, c.req.param('channel'));
    const body = await readJson(c);
    const ids = isObject(body) ? stringsIn(body['messages']) : [];
    checkBulk(ids);
    for (const id of ids) {
      const message = messages.find(id);
      if (message?.channelId === channel.id) messages.remove(message);
    }
    return c.body(null, 204);
  });

  api.post('/channels/:channel/typing', (c) => {
    const channel = channelOf(state, c.req.param('channel'));
    world.news.tell({ kind: 'typing', channelId: channel.id, personId: world.bot.id });
    world.gateway.tell({
      name: 'TYPING_START',
      intents: world.isDirect(channel) ? Intent.directTyping : Intent.guildTyping,
      data: {
        channel_id: channel.id,
        guild_id: guildIdOf(world, channel.id),
        user_id: world.bot.id,
        timestamp: Math.floor(world.clock.nowMs() / 1000),
      },
    });
    return c.body(null, 204);
  });
}

function send(state: ChannelState, channelId: string, body: Body): Message {
  const { world, messages } = state;
  const asked = newMessage(state, body, 'message');
  const reference = referenceIn(state, channelId, body.json);
  asked.files.keep();
  const nonce = nonceIn(body.json);
  const message = messages.post({
    channelId,
    author: world.bot,
    content: asked.content,
    flags: asked.flags & (Flag.suppressEmbeds | Flag.suppressNotifications | Flag.componentsV2),
    embeds: asked.embeds,
    components: asked.components,
    attachments: asked.files.attachments,
    allowed: asked.allowed,
    nonce,
    reference,
  });
  if (nonce !== undefined) {
    const nowMs = world.clock.nowMs();
    world.storage.rememberNonce(world.bot.id, nonce, message.id, nowMs);
    world.storage.forgetNonces(nowMs - MAX.nonceMemoryMs);
  }
  return message;
}

/** The message that this request has already made, when it asks for that to be looked up. */
function sentBefore({ world, messages }: ChannelState, body: JsonObject): Message | undefined {
  const nonce = nonceIn(body);
  if (nonce === undefined || body['enforce_nonce'] !== true) return undefined;
  const id = world.storage.sentWith(world.bot.id, nonce, world.clock.nowMs() - MAX.nonceMemoryMs);
  if (id === undefined) return undefined;
  const message = messages.find(id);
  // It was sent and has been deleted since.
  if (message === undefined) throw refuse.unknownMessage();
  return message;
}

function nonceIn(body: JsonObject): string | undefined {
  const { nonce } = body;
  return typeof nonce === 'string' || typeof nonce === 'number' ? String(nonce) : undefined;
}

function referenceIn(state: ChannelState, channelId: string, body: JsonObject): Message['reference'] {
  const given = body['message_reference'];
  if (!isObject(given) || typeof given['message_id'] !== 'string') return undefined;
  const messageId = given['message_id'];
  if (state.messages.find(messageId)?.channelId === channelId) return { channelId, messageId };
  if (given['fail_if_not_exists'] === false) return undefined;
  const problems = new Problems();
  problems.add(['message_reference'], 'REPLIES_UNKNOWN_MESSAGE', 'Unknown message');
  throw problems.error();
}

function pageLimit(text: string | undefined): number {
  const limit = text === undefined ? 50 : Number(text);
  if (Number.isInteger(limit) && limit >= 1 && limit <= MAX.historyPage) return limit;
  const problems = new Problems();
  problems.add(['limit'], 'NUMBER_TYPE_MAX', `int value should be from 1 to ${MAX.historyPage}.`);
  throw problems.error();
}

function checkBulk(ids: readonly string[]): void {
  const { min, max } = MAX.bulkDelete;
  const problems = new Problems();
  if (ids.length < min || ids.length > max) {
    problems.add(['messages'], 'BASE_TYPE_BAD_LENGTH', `Must be between ${min} and ${max} in length.`);
  }
  problems.settle();
}
