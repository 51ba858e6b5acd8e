import type { Outcome, WireMessage } from '../contract.ts';
import type { LiveFrame, PageEntry, PageState } from '../page-api.ts';
import { compareIds } from './ids.ts';
import { initialsFor } from './initials.ts';

/** What the page knows of the channel at present. */
export class Session {
  state: PageState;
  #initials: ReadonlyMap<string, string> = new Map();

  constructor(state: PageState) {
    this.state = state;
    this.take(state);
  }

  get me(): string {
    return this.state.me?.name ?? '';
  }

  /** What to call the bot. */
  get hand(): string {
    return this.state.people.find((person) => person.bot)?.name ?? 'The hand';
  }

  take(change: Partial<PageState>): void {
    this.state = { ...this.state, ...change };
    this.#initials = initialsFor(this.state.people.map((person) => person.name));
  }

  /** The name people know an author by; an author who is not of the crew goes by the account's name. */
  nameOf(author: WireMessage['author']): string {
    return this.state.people.find((person) => person.id === author.id)?.name ?? author.username;
  }

  initials(name: string): string {
    return this.#initials.get(name) ?? initialsFor([name]).get(name) ?? '?';
  }
}

/** What a frame changes for the page as a whole; entries and forms are kept elsewhere. */
export function changeIn(frame: LiveFrame): Partial<PageState> {
  switch (frame.kind) {
    case 'hello':
      return { botOnline: frame.botOnline };
    case 'bot':
      return { botOnline: frame.online };
    case 'people':
      return { people: frame.people };
    case 'channels':
      return { channels: frame.channels };
    case 'notice':
      return { notice: frame.notice };
    case 'added':
    case 'changed':
    case 'removed':
    case 'form':
    case 'typing':
      return {};
  }
}

/** Which entries on the sheet outlive a fresh load: private ones, and earlier ones that join on without a gap. */
export function outliving(
  shown: readonly PageEntry[],
  fresh: readonly PageEntry[],
): (entry: PageEntry) => boolean {
  const ids = new Set(fresh.map((entry) => entry.message.id));
  const [first] = fresh;
  const joined = shown.some((entry) => ids.has(entry.message.id));
  return (entry) =>
    entry.private || (joined && first !== undefined && compareIds(entry.message.id, first.message.id) < 0);
}

/** The newest entry that everybody sees. */
export function newestShared(entries: readonly PageEntry[]): string | undefined {
  return entries.findLast((entry) => !entry.private)?.message.id;
}

/** The entry made of an outcome alone, for when the socket that would bring it is away. */
export function entryOf(outcome: Outcome): PageEntry | undefined {
  if (!('message' in outcome)) return undefined;
  const message: WireMessage = outcome.message;
  const isPrivate = outcome.kind === 'answered' && outcome.private;
  return { message, private: isPrivate, working: false, pinned: false, reactions: [], mentions: [] };
}
