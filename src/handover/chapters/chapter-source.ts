import type { Day } from '../../core/time.ts';
import type { Build } from '../../records/builds/build.ts';
import type { TeamRecord } from '../../records/team-record.ts';

/** What a chapter is written from. */
export interface ChapterSource {
  readonly record: TeamRecord;
  readonly build: Build;
  readonly today: Day;
  /** IANA name; the instants of readings are written as wall time there. */
  readonly zone: string;
}
