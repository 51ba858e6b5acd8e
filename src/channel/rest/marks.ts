import type { Hono } from 'hono';
import { LIMITS } from '../rules/limits.ts';
import { refuse } from '../wire/api-error.ts';
import { compact } from '../wire/json.ts';
import { Intent, MessageKind } from '../wire/numbers.ts';
import { guildIdOf, messagePayload } from '../world/message-payload.ts';
import { iso, userPayload } from '../world/payloads.ts';
import { react } from '../world/reactions.ts';
import type { ChannelState } from '../world/state.ts';
import { channelOf, messageOf } from './lookup.ts';

const { message: MAX } = LIMITS;

/** What is put on a message: reactions and pins. */
export function markRoutes(api: Hono, state: ChannelState): void {
  reactionRoutes(api, state);
  pinRoutes(api, state);
}

function reactionRoutes(api: Hono, state: ChannelState): void {
  const { world, messages } = state;
  const one = '/channels/:channel/messages/:message/reactions/:emoji';

  api.on(['PUT', 'DELETE'], `${one}/@me`, (c) => {
    const { channel, message, emoji } = c.req.param();
    react(state, messageOf(state, channel, message), world.bot, emoji, c.req.method === 'PUT');
    return c.body(null, 204);
  });
  api.delete(`${one}/:user`, (c) => {
    const { channel, message, emoji, user } = c.req.param();
    const person = world.person(user);
    if (person === undefined) throw refuse.unknownUser();
    react(state, messageOf(state, channel, message), person, emoji, false);
    return c.body(null, 204);
  });
  api.get(one, (c) => {
    const { channel, message, emoji } = c.req.param();
    const found = messageOf(state, channel, message).reactions.find((reaction) => reaction.emoji === emoji);
    const people = (found?.userIds ?? []).flatMap((id) => world.person(id) ?? []);
    return c.json(people.map(userPayload));
  });
  api.delete('/channels/:channel/messages/:message/reactions', (c) => {
    const message = messageOf(state, c.req.param('channel'), c.req.param('message'));
    messages.change({ ...message, reactions: [] }, false);
    return c.body(null, 204);
  });
}

function pinRoutes(api: Hono, state: ChannelState): void {
  const { world, messages } = state;

  // Pins moved below messages/ in 2025; the client uses the new address, the old one still works.
  for (const place of ['/channels/:channel/messages/pins/:message', '/channels/:channel/pins/:message']) {
    api.on(['PUT', 'DELETE'], place, (c) => {
      const message = messageOf(state, c.req.param('channel') ?? '', c.req.param('message') ?? '');
      const pinned = c.req.method === 'PUT';
      if (pinned === (message.pinnedMs !== null)) return c.body(null, 204);
      const nowMs = world.clock.nowMs();
      if (pinned && world.storage.pins(message.channelId).length >= MAX.pinsPerChannel) {
        throw refuse.tooManyPins();
      }
      messages.change({ ...message, pinnedMs: pinned ? nowMs : null }, false);
      const guildId = guildIdOf(world, message.channelId);
      world.gateway.tell({
        name: 'CHANNEL_PINS_UPDATE',
        intents: guildId === undefined ? Intent.directMessages : Intent.guilds,
        data: compact({
          channel_id: message.channelId,
          guild_id: guildId,
          last_pin_timestamp: pinned ? iso(nowMs) : null,
        }),
      });
      if (pinned) {
        messages.post({
          channelId: message.channelId,
          author: world.bot,
          content: '',
          kind: MessageKind.pinned,
          reference: { channelId: message.channelId, messageId: message.id },
        });
      }
      return c.body(null, 204);
    });
  }

  api.get('/channels/:channel/messages/pins', (c) => {
    const channel = channelOf(state, c.req.param('channel'));
    const limit = Math.min(50, Math.max(1, Number(c.req.query('limit') ?? 50)));
    const before = c.req.query('before');
    const beforeMs = before === undefined ? Number.POSITIVE_INFINITY : Date.parse(before);
    const all = world.storage.pins(channel.id).filter(({ pinnedMs }) => (pinnedMs ?? 0) < beforeMs);
    return c.json({
      items: all.slice(0, limit).map((message) => ({
        pinned_at: iso(message.pinnedMs ?? 0),
        message: messagePayload(world, message),
      })),
      has_more: all.length > limit,
    });
  });
  api.get('/channels/:channel/pins', (c) => {
    const channel = channelOf(state, c.req.param('channel'));
    return c.json(world.storage.pins(channel.id).map((message) => messagePayload(world, message)));
  });
}
