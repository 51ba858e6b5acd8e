import type { GivenFile } from '../core/given-file.ts';
import type { JsonObject } from '../core/json.ts';
import type { Reply } from '../core/reply.ts';
import type { RefusalCode } from '../core/user-error.ts';
import type { Person, Place } from './hand.ts';

/** Something a person asked, as plain data; whatever the platform calls it. */
export interface Request {
  /** The interaction's id: the same id is the same request, however often it is delivered. */
  readonly id: string;
  readonly who: Person;
  /** Null outside a server's channel. */
  readonly place: Place | null;
  /** Names of the people picked in its options, by id. */
  readonly people: Readonly<Record<string, string>>;
  /** What was handed over with it; a file option holds its file's id. */
  readonly files?: readonly GivenFile[];
  readonly asks: RunCommand | PressAction;
}

export interface RunCommand {
  readonly kind: 'run';
  readonly command: string;
  readonly subcommand: string | null;
  readonly options: JsonObject;
}

export interface PressAction {
  readonly kind: 'press';
  /** The button's own text, unread. */
  readonly ref: string;
  /** What a menu or form added. */
  readonly fields: Readonly<Record<string, string>>;
}

/** A line being typed, for which known values are wanted. */
export interface SuggestRequest {
  readonly who: Person;
  readonly place: Place | null;
  readonly command: string;
  readonly subcommand: string | null;
  readonly option: string;
  readonly typed: string;
  /** The other options as far as they are filled in. */
  readonly given: JsonObject;
}

/** What came of it: always something to show, and for scripts whether it was done. */
export type Result =
  | { readonly ok: true; readonly reply: Reply }
  | { readonly ok: false; readonly reply: Reply; readonly error: Failure };

export interface Failure {
  readonly code: RefusalCode | 'outage';
  readonly message: string;
  /** Set for a fault of ours; the log has the cause under it. */
  readonly reference?: string;
}
