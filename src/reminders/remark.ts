import type { Item } from '../core/reply.ts';
import type { Day } from '../core/time.ts';
import type { Build } from '../records/builds/build.ts';
import type { TeamRecord } from '../records/team-record.ts';

/** Something other than an order that a morning message speaks of: a kind of remark, and the record it is about. */
export interface Remark {
  readonly kind: string;
  readonly id: number;
}

/** A remark in words, as the record now has it. */
export interface RemarkSaid {
  readonly item: Item;
  /** Whether it still needs a hand; what has been dealt with stays listed as such. */
  readonly open: boolean;
}

export interface RemarkView {
  readonly day: Day;
  /** The message its buttons sit on. */
  readonly noticeId: number;
}

/** A kind of record that has something to say on some mornings. */
export interface RemarkSource {
  readonly kind: string;
  /** The records of a build that are worth a remark on a day, the most pressing first. Pure but for reading the record. */
  due(record: TeamRecord, build: Build, day: Day): readonly number[];
  /** Undefined when the record it is about has been taken back. */
  say(record: TeamRecord, id: number, view: RemarkView): RemarkSaid | undefined;
  /** How several of them are counted in the headline: "2 temporary measures can be undone". */
  count(open: number): string;
}
