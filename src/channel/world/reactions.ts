import { LIMITS } from '../rules/limits.ts';
import { refuse } from '../wire/api-error.ts';
import { compact } from '../wire/json.ts';
import { Intent } from '../wire/numbers.ts';
import { guildIdOf } from './message-payload.ts';
import { memberPayload } from './payloads.ts';
import type { ChannelState } from './state.ts';
import type { Message, Person } from './things.ts';

/**
 * Puts a person's reaction on a message or takes it off.
 * @throws ApiError 10014 for what is no emoji, 30010 for the 21st kind.
 */
export function react(
  { world, messages }: ChannelState,
  message: Message,
  person: Person,
  emoji: string,
  on: boolean,
): void {
  if (!/^(\p{RGI_Emoji}|\p{Extended_Pictographic})$/v.test(emoji)) throw refuse.unknownEmoji();
  const known = message.reactions.find((reaction) => reaction.emoji === emoji);
  if (known?.userIds.includes(person.id) === on) return;
  if (on && known === undefined && message.reactions.length >= LIMITS.message.reactionKinds) {
    throw refuse.tooManyReactions();
  }
  const others = known?.userIds.filter((id) => id !== person.id) ?? [];
  const now = { emoji, userIds: on ? [...others, person.id] : others };
  const reactions =
    known === undefined
      ? [...message.reactions, now]
      : message.reactions.map((reaction) => (reaction === known ? now : reaction));
  messages.change({ ...message, reactions: reactions.filter(({ userIds }) => userIds.length > 0) }, false);
  const guildId = guildIdOf(world, message.channelId);
  world.gateway.tell({
    name: on ? 'MESSAGE_REACTION_ADD' : 'MESSAGE_REACTION_REMOVE',
    intents: guildId === undefined ? Intent.directReactions : Intent.guildReactions,
    data: compact({
      user_id: person.id,
      channel_id: message.channelId,
      message_id: message.id,
      guild_id: guildId,
      emoji: { id: null, name: emoji },
      member: guildId === undefined ? undefined : memberPayload(person),
      message_author_id: message.authorId,
      burst: false,
      type: 0,
    }),
  });
}
