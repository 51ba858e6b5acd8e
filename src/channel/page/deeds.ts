import type { WireMessage } from '../contract.ts';
import type { Lists } from './lists.ts';

/** What an entry's controls can set off. A returned sentence says what went wrong. */
export interface Deeds {
  press(messageId: string, customId: string): Promise<string | undefined>;
  choose(messageId: string, customId: string, values: readonly string[]): Promise<string | undefined>;
  /** Puts this on the line to write on, ready to be completed. */
  putOnLine(line: string): void;
  /** Brings another entry into view. */
  jumpTo(messageId: string): void;
  /** Takes a private entry off the page. */
  putAway(messageId: string): void;
  lists(): Lists;
  /** The name people know the author by. */
  nameOf(author: WireMessage['author']): string;
  initials(name: string): string;
}
