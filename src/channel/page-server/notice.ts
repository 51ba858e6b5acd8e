import type { PageEntry } from '../page-api.ts';
import type { ChannelState } from '../world/state.ts';
import type { Message } from '../world/things.ts';
import { pageEntry } from './entries.ts';

/** What the bot last said in this channel of its own accord: how things stand there. */
export function noticeIn(state: ChannelState, channelId: string): PageEntry | null {
  const message = state.world.storage.newestUnasked(channelId, state.world.bot.id);
  return message === undefined ? null : pageEntry(state, message);
}

/** Whether this message is, or was, one of those that {@link noticeIn} looks among. */
export function mayBeNotice({ world }: ChannelState, message: Message): boolean {
  const { authorId, asked, reference, privateTo } = message;
  return (
    authorId === world.bot.id && asked === undefined && reference === undefined && privateTo === undefined
  );
}
