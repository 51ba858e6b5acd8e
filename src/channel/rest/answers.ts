import type { OpenForm } from '../contract.ts';
import { type JsonObject, objectsIn, textOf } from '../wire/json.ts';
import { Flag, Kind, MessageKind } from '../wire/numbers.ts';
import type { Interaction } from '../world/interactions.ts';
import { wireMessage } from '../world/message-payload.ts';
import type { Draft } from '../world/messages.ts';
import type { ChannelState } from '../world/state.ts';
import type { Message } from '../world/things.ts';
import type { Body } from './body.ts';
import { newMessage } from './edits.ts';

/** Posts a message in answer to an interaction; private when its flags say so. @throws ApiError */
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

/** Posts the "thinking" that stands for an answer until it comes. */
export function postPlaceholder(state: ChannelState, interaction: Interaction, flags: number): Message {
  const draft = answerDraft(state, interaction, flags);
  return state.messages.post({ ...draft, content: '', flags: flags | Flag.loading });
}

function answerDraft(state: ChannelState, interaction: Interaction, flags: number) {
  const { deed } = interaction;
  return {
    channelId: deed.channel.id,
    author: state.world.bot,
    kind: deed.kind === Kind.command ? MessageKind.command : MessageKind.plain,
    webhook: true,
    asked: askedIn(interaction),
    privateTo: (flags & Flag.ephemeral) !== 0 ? deed.person.id : undefined,
  } satisfies Partial<Draft>;
}

function askedIn({ id, deed }: Interaction): NonNullable<Message['asked']> {
  const { name, line, source, ownApp } = deed;
  return {
    interactionId: id,
    kind: deed.kind,
    userId: deed.person.id,
    ...(name === undefined ? {} : { name }),
    ...(line === undefined ? {} : { line }),
    ...(source === undefined ? {} : { sourceMessageId: source.id }),
    ...(ownApp === true ? { ownApp } : {}),
  };
}

/** Tells the person waiting that this message is the answer. */
export function settleAnswered({ world }: ChannelState, interaction: Interaction, message: Message): void {
  interaction.settle({
    kind: 'answered',
    interactionId: interaction.id,
    message: wireMessage(world, message),
    private: message.privateTo !== undefined,
  });
}

/** Tells the person waiting that the message they pressed something on has changed. */
export function settleChanged({ world }: ChannelState, interaction: Interaction, message: Message): void {
  interaction.settle({
    kind: 'changed',
    interactionId: interaction.id,
    message: wireMessage(world, message),
  });
}

/** A form out of the data of a callback that `checkModal` has passed. */
export function formIn(interactionId: string, data: JsonObject): OpenForm {
  return {
    interactionId,
    customId: textOf(data['custom_id']) ?? '',
    title: textOf(data['title']) ?? '',
    // The check has seen that each has a numeric type, which is all that WireComponent insists on.
    components: objectsIn(data['components']) as unknown as OpenForm['components'],
  };
}
