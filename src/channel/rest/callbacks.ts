import type { Hono } from 'hono';
import { checkChoices } from '../rules/autocomplete.ts';
import { LIMITS } from '../rules/limits.ts';
import { checkModal } from '../rules/modal.ts';
import { Problems } from '../rules/problems.ts';
import { compact, isObject, type JsonObject, numberOf } from '../wire/json.ts';
import { Callback, Flag, Kind } from '../wire/numbers.ts';
import type { Interaction } from '../world/interactions.ts';
import { guildIdOf, messagePayload } from '../world/message-payload.ts';
import type { ChannelState } from '../world/state.ts';
import type { Message } from '../world/things.ts';
import { formIn, postAnswer, postPlaceholder, settleAnswered, settleChanged } from './answers.ts';
import { type Body, readBody } from './body.ts';
import { editMessage } from './edits.ts';

const MESSAGES: readonly number[] = [Callback.message, Callback.deferred];
const UPDATES: readonly number[] = [Callback.deferredUpdate, Callback.update];

/** Which answers fit which interaction. Source: documentation, "Interaction callback type". */
function fitting({ deed }: Interaction): readonly number[] {
  switch (deed.kind) {
    case Kind.command:
      return [...MESSAGES, Callback.modal];
    case Kind.autocomplete:
      return [Callback.choices];
    case Kind.component:
      return [...MESSAGES, ...UPDATES, Callback.modal];
    case Kind.modal:
      return deed.source === undefined ? MESSAGES : [...MESSAGES, ...UPDATES];
  }
}

/** The first answer to an interaction. */
export function callbackRoutes(api: Hono, state: ChannelState): void {
  api.post('/interactions/:interaction/:token/callback', async (c) => {
    const body = await readBody(c);
    const interaction = state.interactions.toAnswer(c.req.param('interaction'), c.req.param('token'));
    const type = numberOf(body.json['type']);
    const allowed = fitting(interaction);
    if (type === undefined || !allowed.includes(type)) {
      const problems = new Problems();
      problems.add(['type'], 'BASE_TYPE_CHOICES', `Value must be one of {${allowed.join(', ')}}.`);
      throw problems.error();
    }
    const message = answer(state, interaction, type, body);
    if (c.req.query('with_response') !== 'true') return c.body(null, 204);
    return c.json(resource(state, interaction, type, message));
  });
}

/** Carries the answer out. @returns the message it made or changed. @throws ApiError, and then nothing was answered. */
function answer(
  state: ChannelState,
  interaction: Interaction,
  type: number,
  body: Body,
): Message | undefined {
  const data = isObject(body.json['data']) ? body.json['data'] : {};
  const inner = { json: data, uploads: body.uploads };
  switch (type) {
    case Callback.message: {
      const message = postAnswer(state, interaction, inner);
      acknowledge(interaction, type, message);
      settleAnswered(state, interaction, message);
      return message;
    }
    case Callback.deferred: {
      const flags = (numberOf(data['flags']) ?? 0) & Flag.ephemeral;
      const message = postPlaceholder(state, interaction, flags);
      acknowledge(interaction, type, message);
      return message;
    }
    case Callback.deferredUpdate:
      acknowledge(interaction, type, interaction.deed.source);
      // Its edit or follow-up is what came of it; without one in as long as a first answer may take, nothing did.
      state.interactions.quietAfter(interaction, LIMITS.interaction.firstAnswerMs);
      return undefined;
    case Callback.update: {
      const message = editMessage(state, sourceOf(state, interaction), inner, 'interaction');
      acknowledge(interaction, type, message);
      settleChanged(state, interaction, message);
      return message;
    }
    case Callback.choices: {
      const choices = checkChoices(data);
      acknowledge(interaction, type, undefined);
      interaction.suggest(choices);
      return undefined;
    }
    default: {
      checkModal(data);
      acknowledge(interaction, type, undefined);
      const form = formIn(interaction.id, data);
      state.interactions.open(interaction, form);
      interaction.settle({ kind: 'form', interactionId: interaction.id, form });
      return undefined;
    }
  }
}

/** From here on a second answer is refused, and `@original` is this message. */
function acknowledge(interaction: Interaction, type: number, original: Message | undefined): void {
  interaction.answeredWith = type;
  if (original !== undefined) interaction.originalId = original.id;
}

/** The message a component stands on, as it is now. */
function sourceOf(state: ChannelState, interaction: Interaction): Message {
  const id = interaction.deed.source?.id ?? '';
  const message = state.messages.find(id);
  if (message !== undefined) return message;
  const problems = new Problems();
  problems.add(['data'], 'UNKNOWN_MESSAGE', 'The message is gone');
  throw problems.error();
}

function resource(
  { world }: ChannelState,
  interaction: Interaction,
  type: number,
  message: Message | undefined,
): JsonObject {
  const { deed } = interaction;
  return {
    interaction: compact({
      id: interaction.id,
      type: deed.kind,
      channel_id: deed.channel.id,
      guild_id: guildIdOf(world, deed.channel.id),
      response_message_id: message?.id,
      response_message_loading: message === undefined ? undefined : (message.flags & Flag.loading) !== 0,
      response_message_ephemeral: message === undefined ? undefined : message.privateTo !== undefined,
    }),
    resource: compact({
      type,
      message: message === undefined ? undefined : messagePayload(world, message),
    }),
  };
}
