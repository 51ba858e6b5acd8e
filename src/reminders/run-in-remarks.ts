import { addDays, instantOf } from '../core/time.ts';
import { progressOf, standPlan } from '../records/running-in/progress.ts';
import { itemOf } from '../records/running-in/run-in-answer.ts';
import type { TeamRecord } from '../records/team-record.ts';
import type { RemarkSource } from './remark.ts';
import { dueAtEndOf } from './run-in-due.ts';

/** At the end of a day everything read on it is known. */
const endOf = (record: TeamRecord, day: string): number =>
  instantOf(day, '23:59', record.settings.read().zone);

function standingsOn(record: TeamRecord, buildId: number, day: string) {
  const plan = record.runIn.ofBuild(buildId);
  if (plan === undefined) return undefined;
  const progress = progressOf(record, plan, endOf(record, day), record.settings.read().zone);
  return { progress, standings: standPlan(plan, progress) };
}

/** Steps of running in that were due when the day before ended: said every morning until they are done or put off. */
export const runInRemarks: RemarkSource = {
  kind: 'run-in',
  due(record, { id: buildId }, day) {
    const plan = record.runIn.ofBuild(buildId);
    return plan === undefined ? [] : dueAtEndOf(record, plan, addDays(day, -1), record.settings.read().zone);
  },
  say(record, id, { day, noticeId }) {
    for (const build of record.builds.all()) {
      const found = standingsOn(record, build.id, day);
      const standing = found?.standings.find(({ step }) => step.id === id);
      if (found === undefined || standing === undefined) continue;
      const open = standing.state === 'due';
      return { open, item: itemOf(standing, found.progress, open, noticeId) };
    }
    return undefined;
  },
  count: (open) => `${open} running-in ${open === 1 ? 'step' : 'steps'} due`,
};
