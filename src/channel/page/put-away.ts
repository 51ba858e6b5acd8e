import type { PageEntry } from '../page-api.ts';
import { remember, remembered } from './memory.ts';

/** Private answers put away stay away; the channel forgets them by itself long before this many more have come. */
const REMEMBERED = 50;

const away = (): readonly string[] => remembered('put-away').split(' ');

export function putAway(messageId: string): void {
  remember('put-away', [...away(), messageId].slice(-REMEMBERED).join(' '));
}

/** The entries that were not put away. */
export function stillWanted(entries: readonly PageEntry[]): readonly PageEntry[] {
  const gone = new Set(away());
  return entries.filter((entry) => !(entry.private && gone.has(entry.message.id)));
}
