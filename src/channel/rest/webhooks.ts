import type { Hono } from 'hono';
import { refuse } from '../wire/api-error.ts';
import { Callback, Flag } from '../wire/numbers.ts';
import { isId } from '../wire/snowflake.ts';
import type { Interaction } from '../world/interactions.ts';
import { messagePayload } from '../world/message-payload.ts';
import type { ChannelState } from '../world/state.ts';
import type { Message } from '../world/things.ts';
import { postAnswer, settleAnswered, settleChanged } from './answers.ts';
import { readBody } from './body.ts';
import { editMessage } from './edits.ts';

/** Edits, deletions and follow-ups of an answered interaction; the token is the authority. */
export function webhookRoutes(api: Hono, state: ChannelState): void {
  const { world, messages, interactions } = state;

  const follow = (applicationId: string, token: string): Interaction => {
    if (applicationId !== world.applicationId) throw refuse.unknownWebhook();
    return interactions.toFollow(token);
  };

  api.post('/webhooks/:application/:token', async (c) => {
    const interaction = follow(c.req.param('application'), c.req.param('token'));
    const body = await readBody(c);
    const waiting = placeholderOf(state, interaction);
    // The first follow-up of a deferred answer takes the placeholder's place (documented as deprecated behaviour).
    const message =
      waiting === undefined
        ? postAnswer(state, interaction, body)
        : editMessage(state, waiting, body, 'interaction');
    settleAnswered(state, interaction, message);
    return c.json(messagePayload(world, message));
  });

  api.get('/webhooks/:application/:token/messages/:message', (c) => {
    const interaction = follow(c.req.param('application'), c.req.param('token'));
    return c.json(messagePayload(world, answerOf(state, interaction, c.req.param('message'))));
  });

  api.patch('/webhooks/:application/:token/messages/:message', async (c) => {
    const interaction = follow(c.req.param('application'), c.req.param('token'));
    const before = answerOf(state, interaction, c.req.param('message'));
    const message = editMessage(state, before, await readBody(c), 'interaction');
    const settle = before.id === interaction.deed.source?.id ? settleChanged : settleAnswered;
    settle(state, interaction, message);
    return c.json(messagePayload(world, message));
  });

  api.delete('/webhooks/:application/:token/messages/:message', (c) => {
    const interaction = follow(c.req.param('application'), c.req.param('token'));
    messages.remove(answerOf(state, interaction, c.req.param('message')));
    interaction.settle({ kind: 'quiet', interactionId: interaction.id });
    return c.body(null, 204);
  });
}

function placeholderOf({ messages }: ChannelState, interaction: Interaction): Message | undefined {
  if (interaction.answeredWith !== Callback.deferred || interaction.originalId === undefined)
    return undefined;
  const original = messages.find(interaction.originalId);
  return original !== undefined && (original.flags & Flag.loading) !== 0 ? original : undefined;
}

/** `@original`, or a message that this application sent in this channel. @throws ApiError 10008 */
function answerOf({ world, messages }: ChannelState, interaction: Interaction, id: string): Message {
  const wanted = id === '@original' ? interaction.originalId : id;
  const message = wanted !== undefined && isId(wanted) ? messages.find(wanted) : undefined;
  const reachable =
    message !== undefined &&
    message.authorId === world.bot.id &&
    message.channelId === interaction.deed.channel.id &&
    (message.id === interaction.originalId || message.asked?.interactionId === interaction.id);
  if (!reachable) throw refuse.unknownMessage();
  return message;
}
