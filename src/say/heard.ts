import type { Heard } from '../discord/hear.ts';

/** What came of the messages that the bot listened to. */
export interface HeardBook {
  /** To be called for every message listened to. */
  readonly note: (messageId: string, heard: Heard | null) => void;
  /** What came of a message, once that is known; null when the bot had nothing to say to it. */
  of(messageId: string): Promise<Heard | null>;
}

export function openHeardBook(): HeardBook {
  const waiting = new Map<string, PromiseWithResolvers<Heard | null>>();
  const entry = (messageId: string): PromiseWithResolvers<Heard | null> => {
    const known = waiting.get(messageId) ?? Promise.withResolvers<Heard | null>();
    waiting.set(messageId, known);
    return known;
  };
  return {
    note: (messageId, heard) => entry(messageId).resolve(heard),
    async of(messageId) {
      const heard = await entry(messageId).promise;
      waiting.delete(messageId);
      return heard;
    },
  };
}
