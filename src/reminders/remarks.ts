import type { Day } from '../core/time.ts';
import type { Build } from '../records/builds/build.ts';
import type { TeamRecord } from '../records/team-record.ts';
import { measureRemarks } from './measure-remarks.ts';
import type { Remark, RemarkSaid, RemarkSource, RemarkView } from './remark.ts';
import { runInRemarks } from './run-in-remarks.ts';

/** Every kind of record that may speak on a morning. A new kind is one file of its own and one word here. */
const SOURCES: readonly RemarkSource[] = [measureRemarks, runInRemarks];

/** What is to be said of a build on a day beside its orders. */
export function remarksDue(record: TeamRecord, build: Build, day: Day): readonly Remark[] {
  return SOURCES.flatMap(({ kind, due }) => due(record, build, day).map((id) => ({ kind, id })));
}

/** A remark in words; undefined when what it was about is gone, or when a newer version of the program wrote it. */
export function sayRemark(
  record: TeamRecord,
  { kind, id }: Remark,
  view: RemarkView,
): RemarkSaid | undefined {
  return SOURCES.find((source) => source.kind === kind)?.say(record, id, view);
}

/** The remarks of a message in words, and what the headline says of those still open. */
export interface RemarksSaid {
  readonly said: readonly RemarkSaid[];
  readonly headlines: readonly string[];
}

export const NO_REMARKS: RemarksSaid = { said: [], headlines: [] };

export function sayRemarks(record: TeamRecord, remarks: readonly Remark[], view: RemarkView): RemarksSaid {
  const all = remarks.flatMap((remark) => {
    const said = sayRemark(record, remark, view);
    return said === undefined ? [] : [{ kind: remark.kind, said }];
  });
  const open = Map.groupBy(
    all.filter(({ said }) => said.open),
    ({ kind }) => kind,
  );
  return {
    said: all.map(({ said }) => said),
    headlines: SOURCES.flatMap(({ kind, count }) => {
      const many = open.get(kind)?.length ?? 0;
      return many === 0 ? [] : [count(many)];
    }),
  };
}
