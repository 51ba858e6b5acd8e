import { type Client, Events, type Message, MessageFlags, MessageType } from 'discord.js';
import type { Dispatcher } from '../bot/dispatch.ts';
import type { Place } from '../bot/hand.ts';
import type { Said } from '../bot/hear.ts';
import type { Result } from '../bot/request.ts';
import { partsOf } from './answer.ts';
import { cardOf } from './card.ts';
import type { FileShelf } from './file-shelf.ts';

export interface HearParts {
  readonly dispatcher: Pick<Dispatcher, 'hear'>;
  readonly files: Pick<FileShelf, 'put'>;
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

async function hear(message: Message, { dispatcher, files, report, onHeard }: HearParts): Promise<void> {
  try {
    const said = saidIn(message, files);
    // without the words there is nothing to go by: the platform keeps them back unless they are meant for us
    const result =
      said.text === '' && said.files.length === 0 && !said.toBot ? null : await dispatcher.hear(said);
    const shown = result === null ? null : { result, messageId: await reply(message, result) };
    onHeard?.(message.id, shown);
  } catch (error) {
    onHeard?.(message.id, null);
    report(error, `answering message ${message.id}`);
  }
}

/** Reads a message as plain data; its files go on the shelf, from which they can be read. */
export function saidIn(message: Message, shelf: Pick<FileShelf, 'put'>): Said {
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

/** The nonce is made of the message's id, so that an answer whose receipt got lost is not posted a second time. */
async function reply(message: Message, { reply: answer }: Result): Promise<string> {
  if (answer.kind === 'form') throw new Error('a message cannot be answered by a form');
  const parts = partsOf(cardOf(answer));
  const sent = await message.reply({
    ...parts,
    allowedMentions: { ...parts.allowedMentions, repliedUser: false },
    flags: [MessageFlags.IsComponentsV2],
    failIfNotExists: false,
    nonce: message.id,
    enforceNonce: true,
  });
  return sent.id;
}
