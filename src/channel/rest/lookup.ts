import { refuse } from '../wire/api-error.ts';
import { isId } from '../wire/snowflake.ts';
import type { ChannelState } from '../world/state.ts';
import type { Channel, Message, Person } from '../world/things.ts';

/** @throws ApiError 10003 */
export function channelOf({ world }: ChannelState, id: string): Channel {
  const channel = isId(id) ? world.channel(id) : undefined;
  if (channel === undefined) throw refuse.unknownChannel();
  return channel;
}

/** A message that is history of this channel; private answers are not. @throws ApiError 10003, 10008 */
export function messageOf(state: ChannelState, channelId: string, id: string): Message {
  channelOf(state, channelId);
  const message = isId(id) ? state.messages.find(id) : undefined;
  if (message === undefined || message.channelId !== channelId || message.privateTo !== undefined) {
    throw refuse.unknownMessage();
  }
  return message;
}

/** @throws ApiError 10013 */
export function personOf({ world }: ChannelState, id: string): Person {
  const person = id === '@me' ? world.bot : world.person(id);
  if (person === undefined) throw refuse.unknownUser();
  return person;
}

/** @throws ApiError 10004 for any guild but the one there is. */
export function checkGuild({ world }: ChannelState, id: string): void {
  if (id !== world.guildId) throw refuse.unknownGuild();
}
