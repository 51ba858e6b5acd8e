import type { GivenFile } from '../core/given-file.ts';
import { readRecordQuestion } from '../phrases/quick/read-record.ts';
import { logAsked } from './given-log.ts';
import type { Person, Place } from './hand.ts';
import { askFor } from './quick-card.ts';
import { ONLY_TO_BOT } from './quick-record.ts';
import type { Request, Result } from './request.ts';

/** A message that somebody wrote, as plain data; whether it asks anything is not yet known. */
export interface Said {
  /** The message's id: the same id is the same message, however often it is delivered. */
  readonly id: string;
  readonly who: Person;
  /** Null outside a server's channel. */
  readonly place: Place | null;
  /** Without the mention of the bot. */
  readonly text: string;
  /** Whether it was said to the bot, by a mention or in private, or only where the bot could read it. */
  readonly toBot: boolean;
  /** Nobody else is in the channel to be spoken to: what can be a question to the bot is one. Talk stays talk. */
  readonly alone?: true;
  readonly files: readonly GivenFile[];
}

/** More than this is no question but a story. */
const LONGEST = 400;

/** What a message asks; null where it cannot ask anything. A logger's file that comes without a command asks for its fuelling. */
export function requestIn({ id, who, place, text, toBot, alone, files }: Said): Request | null {
  const words = text.trim();
  const log = toBot || words === '' ? logAsked(files, words) : undefined;
  if (log !== undefined) return { id, who, place, people: {}, files, asks: log };
  if (words === '' && !toBot) return null;
  if (words.length > LONGEST && !toBot) return null;
  // "what's next?" is asked of people as often
  if (!toBot && alone !== true && readRecordQuestion(words)?.near === true) return null;
  return { id, who, place, people: {}, files, asks: askFor(words.slice(0, LONGEST) || ' ') };
}

/** Whether nothing is to be said: it was talk, and nobody waits for an answer. */
export function isTalk({ toBot, alone }: Said, { reply }: Result): boolean {
  if (toBot || reply.kind !== 'answer') return false;
  const kind = String(reply.data['kind']);
  return kind === 'none' || (alone !== true && ONLY_TO_BOT.has(kind));
}
