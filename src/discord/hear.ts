import { type Client, Events, type Message, MessageFlags, MessageType } from 'discord.js';
import type { Dispatcher } from '../bot/dispatch.ts';
import type { Place } from '../bot/hand.ts';
import type { Said } from '../bot/hear.ts';
import type { Result } from '../bot/request.ts';
import type { Timer } from '../core/clock.ts';
import type { Answer } from '../core/reply.ts';
import { editOf, PATIENCE_MS, partsOf, underWay } from './answer.ts';
import { cardOf } from './card.ts';
import type { FileShelf } from './file-shelf.ts';
import { openProgress } from './progress.ts';

/**
 * Whose lines are listened to: those to the bot; everybody's, for which the platform has to be asked; or everybody's where
 * nobody else is in the channel to be spoken to.
 */
export type Hears = 'mentions' | 'everything' | 'alone';

export interface HearParts {
  readonly hears: Hears;
  readonly dispatcher: Pick<Dispatcher, 'hear'>;
  readonly files: Pick<FileShelf, 'put'>;
  readonly timer: Timer;
  readonly report: (fault: unknown, during: string) => void;
  /** Tells the first delivery of an id from the same one delivered again. */
  readonly isFirst: (id: string) => boolean;
  /** Called for every message that was listened to, after its answer was shown; null where there was nothing to say. */
  readonly onHeard?: (messageId: string, heard: Heard | null) => void;
}

/** What a message was answered with, and by which message. */
export interface Heard {
  readonly result: Result;
  readonly messageId: string;
}

/**
 * Listens to messages: those to the bot, and the others as far as the platform hands over their words. Each is taken once,
 * as it was first written; an edit is no new question.
 */
export function hearMessages(client: Client, parts: HearParts): void {
  client.on(Events.MessageCreate, (message) => {
    if (!isFromPerson(message) || !parts.isFirst(message.id)) return;
    void hear(message, parts);
  });
}

/** Not from a bot, this one included, not from a webhook, and no announcement of the platform's. */
function isFromPerson({ author, webhookId, type }: Message): boolean {
  return !author.bot && webhookId === null && (type === MessageType.Default || type === MessageType.Reply);
}

async function hear(
  message: Message,
  { dispatcher, files, hears, timer, report, onHeard }: HearParts,
): Promise<void> {
  let begun: Message | undefined;
  const progress = openProgress(
    async (said) => {
      if (begun === undefined) begun = await reply(message, underWay(said));
      else await begun.edit(editOf(cardOf(underWay(said))));
    },
    timer,
    (fault) => report(fault, 'showing how far the work has come'),
  );
  const stop = timer.after(PATIENCE_MS, progress.begin);
  try {
    const said: Said = { ...saidIn(message, files), ...(hears === 'alone' ? { alone: true } : {}) };
    // without the words there is nothing to go by: the platform keeps them back unless they are meant for us
    const result =
      said.text === '' && said.files.length === 0 && !said.toBot
        ? null
        : await dispatcher.hear(said, progress.say);
    stop();
    await progress.end();
    const shown = result === null ? null : { result, messageId: await show(message, begun, result) };
    onHeard?.(message.id, shown);
  } catch (error) {
    onHeard?.(message.id, null);
    report(error, `answering message ${message.id}`);
  } finally {
    stop();
  }
}

/** Reads a message as plain data; its files go on the shelf, from which they can be read. */
function saidIn(message: Message, shelf: Pick<FileShelf, 'put'>): Said {
  const { author, client, content, member } = message;
  const mention = new RegExp(`<@!?${client.user.id}>`, 'gu');
  return {
    id: message.id,
    who: { id: author.id, name: member?.displayName ?? author.displayName },
    place: placeOf(message),
    text: content.replace(mention, ' ').trim(),
    toBot: message.guildId === null || mention.test(content),
    files: message.attachments.map((attached) => shelf.put(attached)),
  };
}

function placeOf({ guildId, channelId, channel }: Message): Place | null {
  if (guildId === null) return null;
  const parentId = channel.isThread() ? channel.parentId : null;
  return {
    teamId: guildId,
    channelId,
    channelName: 'name' in channel ? (channel.name ?? '') : '',
    ...(parentId === null ? {} : { threadOf: parentId }),
  };
}

/** Shows the result, in the message that said how far it had come if there is one. */
async function show(
  message: Message,
  begun: Message | undefined,
  { reply: answer }: Result,
): Promise<string> {
  if (answer.kind === 'form') throw new Error('a message cannot be answered by a form');
  if (begun === undefined) return (await reply(message, answer)).id;
  await begun.edit(editOf(cardOf(answer)));
  return begun.id;
}

/** The nonce is made of the message's id, so that an answer whose receipt got lost is not posted a second time. */
function reply(message: Message, answer: Answer): Promise<Message> {
  const parts = partsOf(cardOf(answer));
  return message.reply({
    ...parts,
    allowedMentions: { ...parts.allowedMentions, repliedUser: false },
    flags: [MessageFlags.IsComponentsV2],
    failIfNotExists: false,
    nonce: message.id,
    enforceNonce: true,
  });
}
