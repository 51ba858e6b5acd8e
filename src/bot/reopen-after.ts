import { dayAt } from '../core/time.ts';
import { reopenWhatChanged } from '../records/stages/reopen.ts';
import type { TeamRecord } from '../records/team-record.ts';
import type { Place } from './hand.ts';

/**
 * Ends a change: stages whose pass no longer rests on what it rested on are opened again within it, so that an undo takes that
 * back as well, and the history says so.
 */
export function withReopening<Value>(
  record: TeamRecord,
  { channelId, threadOf }: Place,
  nowMs: number,
  done: { readonly value: Value; readonly said: string },
): { readonly value: Value; readonly said: string } {
  const { builds } = record;
  const build =
    builds.inChannel(channelId) ?? (threadOf === undefined ? undefined : builds.inChannel(threadOf));
  if (build === undefined) return done;
  const reopened = reopenWhatChanged(record, build.id, dayAt(nowMs, record.settings.read().zone));
  if (reopened.length === 0) return done;
  return { ...done, said: `${done.said}; open again: ${reopened.map(({ stage }) => stage.name).join(', ')}` };
}
