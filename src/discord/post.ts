import {
  type Client,
  DiscordAPIError,
  type Message,
  MessageFlags,
  RESTJSONErrorCodes,
  SnowflakeUtil,
} from 'discord.js';
import { readActionRef } from '../bot/action-ref.ts';
import { DeliveryProblem, type Post } from '../core/post.ts';
import { editOf, partsOf } from './answer.ts';
import { cardOf } from './card.ts';

/** Errors that no waiting mends: the channel, the server or our right to speak there is gone. */
const FOR_GOOD: ReadonlySet<number | string> = new Set([
  RESTJSONErrorCodes.UnknownChannel,
  RESTJSONErrorCodes.UnknownGuild,
  RESTJSONErrorCodes.UnknownMessage,
  RESTJSONErrorCodes.MissingAccess,
  RESTJSONErrorCodes.MissingPermissions,
  RESTJSONErrorCodes.CannotSendMessagesToThisUser,
]);

/** How many of the channel's messages are looked through for one that may have gone out before. */
const LOOK_BACK = 100;

export function postThrough(client: Client): Post {
  return {
    async send({ channelId, answer, nonce }) {
      const channel = await sendable(client, channelId);
      try {
        const message = await channel.send({
          ...partsOf(cardOf(answer)),
          flags: [MessageFlags.IsComponentsV2],
          nonce,
          enforceNonce: true,
        });
        return { messageId: message.id };
      } catch (error) {
        throw problem(error);
      }
    },
    async edit({ channelId, messageId, answer }) {
      const channel = await sendable(client, channelId);
      try {
        await channel.messages.edit(messageId, editOf(cardOf(answer)));
      } catch (error) {
        throw problem(error);
      }
    },
    async find({ channelId, sinceMs, arg: [name, value] }) {
      const channel = await sendable(client, channelId);
      try {
        const after = SnowflakeUtil.generate({ timestamp: sinceMs - 1_000 }).toString();
        const recent = await channel.messages.fetch({ after, limit: LOOK_BACK, cache: false });
        const ours = recent.find(
          (message) =>
            message.author.id === client.user?.id && refsIn(message).some((ref) => ref.args[name] === value),
        );
        return ours && { messageId: ours.id };
      } catch (error) {
        throw problem(error);
      }
    },
  };
}

async function sendable(client: Client, channelId: string) {
  try {
    const channel = await client.channels.fetch(channelId);
    if (channel?.isSendable()) return channel;
  } catch (error) {
    throw problem(error);
  }
  throw new DeliveryProblem(`channel ${channelId} takes no messages`, true);
}

function refsIn(message: Message) {
  const ids = customIds(message.components.map((component) => component.toJSON()));
  return ids.flatMap((id) => readActionRef(id) ?? []);
}

/** Every custom_id in a tree of components, however nested. */
function customIds(tree: unknown): string[] {
  if (Array.isArray(tree)) return tree.flatMap(customIds);
  if (typeof tree !== 'object' || tree === null) return [];
  const own = 'custom_id' in tree && typeof tree.custom_id === 'string' ? [tree.custom_id] : [];
  return [...own, ...customIds(Object.values(tree))];
}

function problem(error: unknown): Error {
  if (error instanceof DeliveryProblem) return error;
  if (error instanceof DiscordAPIError) {
    // the error's own text and url can hold tokens: only the code and the platform's sentence go on
    return new DeliveryProblem(`${error.code}: ${error.message}`, FOR_GOOD.has(error.code));
  }
  return new DeliveryProblem(error instanceof Error ? error.message : 'the platform did not answer', false, {
    cause: error,
  });
}
