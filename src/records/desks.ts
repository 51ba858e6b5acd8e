import type { Json } from '../core/json.ts';
import type { Ledger } from '../sqlite/ledger.ts';
import type { WholeRecordDesk } from '../sqlite/whole-record.ts';
import type { DraftStore } from './drafts/draft-store.ts';
import type { ProposalStore } from './proposals/proposal-store.ts';
import type { TeamRecord } from './team-record.ts';

/** A message that was given up: what it was, and why. */
export interface Undelivered {
  readonly key: string;
  readonly trouble: string;
}

/** Everything that is kept for one team: its record, the log every change goes through, and requests half asked. */
export interface Desk {
  readonly record: TeamRecord;
  readonly ledger: Ledger;
  readonly drafts: DraftStore;
  readonly proposals: ProposalStore;
  /** The record as one piece, to carry away and to bring back. */
  readonly whole: WholeRecordDesk;
  /** What our earlier messages were about, for the buttons on them. */
  readonly notices: {
    find(id: number): Json | undefined;
    /** Those that could not be posted at all, the newest first, each with the platform's reason. */
    undelivered(): readonly Undelivered[];
  };
}

export interface Desks {
  /** Opens the team's file when it is first asked for. */
  at(teamId: string): Desk;
}
