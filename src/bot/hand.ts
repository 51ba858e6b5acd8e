import type { Clock } from '../core/clock.ts';
import type { GivenFile } from '../core/given-file.ts';
import type { Json } from '../core/json.ts';
import type { Desk, Undelivered } from '../records/desks.ts';
import type { CrewSayer } from '../records/team/crew-sayer.ts';
import type { TeamRecord } from '../records/team-record.ts';
import type { Catalogue } from './catalogue.ts';

export interface Person {
  readonly id: string;
  readonly name: string;
}

/** Where something was asked: the channel is the build's, the team is the server's. */
export interface Place {
  readonly teamId: string;
  readonly channelId: string;
  readonly channelName: string;
  /** The channel a thread hangs on; its build is the thread's too, unless the thread has one of its own. */
  readonly threadOf?: string;
}

/** Everything a handler is given. It sees no interaction, no client, no SQL and no clock but this one. */
export interface Hand {
  readonly clock: Clock;
  readonly who: Person;
  readonly place: Place;
  /** The team's record, to read. */
  readonly record: TeamRecord;
  /**
   * Changes the record in one transaction, logged under the asker's name, once per interaction however often it is
   * delivered. `said` is the change in words, as the history and /undo show it. A throw undoes all of it.
   */
  change<Value>(
    work: (record: TeamRecord) => { readonly value: Value; readonly said: string },
  ): Changed<Value>;
  /** Takes a whole earlier change back, by its number or, without one, the asker's newest. */
  undo(changeId?: number): { readonly said: string; readonly changeId: number };
  /** Whether this is a press on the very message it is about, which can then be redrawn where it stands. */
  readonly pressedInPlace: boolean;
  /** The name of a person picked in an option, by platform id. */
  nameOf(personId: string): string;
  /**
   * The file in an option, by the id the option holds.
   *
   * @throws UserError 'not-found' when it is not known any more.
   */
  file(id: string): GivenFile;
  /**
   * A file's bytes as they arrive.
   *
   * @throws UserError from the iteration when it is gone, larger than `mostBytes`, or does not arrive.
   */
  open(file: GivenFile, limits: { readonly mostBytes: number }): AsyncIterable<Uint8Array>;
  /** Says how far long work has come, where the answer is to be; costs nothing, however often it is called. */
  progress(said: string): void;
  /** The notice that a message of ours was about, as it was kept; undefined when it is unknown. */
  notice(noticeId: number): Json | undefined;
  /** Things shown that take effect only when somebody says yes. */
  readonly proposals: Desk['proposals'];
  /** The whole record, to carry away; to bring another back, inside `change`. */
  readonly whole: Desk['whole'];
  /** Messages that could not be posted at all. */
  undelivered(): readonly Undelivered[];
  readonly catalogue: Catalogue;
  /** Says quantities in the units of whoever asks: as the request types them, else as the crew counts. */
  readonly say: CrewSayer;
}

export interface Changed<Value> {
  readonly value: Value;
  readonly said: string;
  /** Names the change for an undo button. */
  readonly changeId: number;
}
