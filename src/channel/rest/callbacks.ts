import type { Hono } from 'hono';
import { checkChoices } from '../rules/autocomplete.ts';
import { LIMITS } from '../rules/limits.ts';
import { checkModal } from '../rules/modal.ts';
import { Problems } from '../rules/problems.ts';
import { compact, isObject, type JsonObject, numberOf, objectsIn, textOf } from '../wire/json.ts';
import { Callback, Flag, Kind, MessageKind } from '../wire/numbers.ts';
import type { Interaction } from '../world/interactions.ts';
import { guildIdOf, messagePayload, wireMessage } from '../world/message-payload.ts';
import type { ChannelState } from '../world/state.ts';
import type { Message } from '../world/things.ts';
import { type Body, readBody } from './body.ts';
import { editMessage, newMessage } from './edits.ts';

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

function answer(
  state: ChannelState,
  interaction: Interaction,
  type: number,
  body: Body,
): Message | undefined {
  const data = isObject(body.json['data']) ? body.json['data'] : {};
  const inner = { json: data, uploads: body.uploads };
  const { id: interactionId } = interaction;
  switch (type) {
    case Callback.message: {
      const message = postAnswer(state, interaction, inner);
      interaction.answeredWith = type;
      interaction.private = message.privateTo !== undefined;
      interaction.originalId = message.id;
      interaction.settle({
        kind: 'answered',
        interactionId,
        message: wireMessage(state.world, message),
        private: interaction.private,
      });
      return message;
    }
    case Callback.deferred: {
      const flags = (numberOf(data['flags']) ?? 0) & Flag.ephemeral;
      const message = state.messages.post({
        ...answerDraft(state, interaction, flags),
        content: '',
        flags: flags | Flag.loading,
      });
      interaction.answeredWith = type;
      interaction.private = flags !== 0;
      interaction.originalId = message.id;
      return message;
    }
    case Callback.deferredUpdate:
      interaction.answeredWith = type;
      setOriginal(interaction);
      // Its edit or follow-up is what came of it; without one in as long as a first answer may take, nothing did.
      state.interactions.quietAfter(interaction, LIMITS.interaction.firstAnswerMs);
      return undefined;
    case Callback.update: {
      const source = sourceOf(state, interaction);
      const message = editMessage(state, source, inner, 'interaction');
      interaction.answeredWith = type;
      setOriginal(interaction);
      interaction.settle({ kind: 'changed', interactionId, message: wireMessage(state.world, message) });
      return message;
    }
    case Callback.choices: {
      const choices = checkChoices(data);
      interaction.answeredWith = type;
      interaction.suggest(choices);
      return undefined;
    }
    default: {
      checkModal(data);
      interaction.answeredWith = type;
      const form = {
        interactionId,
        customId: textOf(data['custom_id']) ?? '',
        title: textOf(data['title']) ?? '',
        // checkModal has seen that each has a numeric type, which is all that WireComponent insists on.
        components: objectsIn(data['components']) as OpenFormComponents,
      };
      state.interactions.open(interaction, form);
      interaction.settle({ kind: 'form', interactionId, form });
      return undefined;
    }
  }
}

type OpenFormComponents = Parameters<ChannelState['interactions']['open']>[1]['components'];

function setOriginal(interaction: Interaction): void {
  const { source } = interaction.deed;
  if (source === undefined) return;
  interaction.originalId = source.id;
  interaction.private = source.privateTo !== undefined;
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

/** Posts a message in answer to an interaction; private when its flags say so. */
export function postAnswer(state: ChannelState, interaction: Interaction, body: Body): Message {
  const asked = newMessage(state, body, 'interaction');
  asked.files.keep();
  return state.messages.post({
    ...answerDraft(state, interaction, asked.flags),
    content: asked.content,
    flags: asked.flags,
    embeds: asked.embeds,
    components: asked.components,
    attachments: asked.files.attachments,
    allowed: asked.allowed,
  });
}

function answerDraft(state: ChannelState, interaction: Interaction, flags: number) {
  const { deed } = interaction;
  const asked = compactAsked({
    interactionId: interaction.id,
    kind: deed.kind,
    userId: deed.person.id,
    name: deed.name,
    line: deed.line,
    sourceMessageId: deed.source?.id,
  });
  return {
    channelId: deed.channel.id,
    author: state.world.bot,
    kind: deed.kind === Kind.command ? MessageKind.command : MessageKind.plain,
    webhook: true,
    asked,
    privateTo: (flags & Flag.ephemeral) !== 0 ? deed.person.id : undefined,
  };
}

type AskedOf = NonNullable<Message['asked']>;

function compactAsked({
  name,
  line,
  sourceMessageId,
  ...rest
}: Pick<AskedOf, 'interactionId' | 'kind' | 'userId'> & {
  readonly name: string | undefined;
  readonly line: string | undefined;
  readonly sourceMessageId: string | undefined;
}): AskedOf {
  return {
    ...rest,
    ...(name === undefined ? {} : { name }),
    ...(line === undefined ? {} : { line }),
    ...(sourceMessageId === undefined ? {} : { sourceMessageId }),
  };
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
