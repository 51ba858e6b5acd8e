import { addDays, type Day, dayAt, instantOf, wallTime } from '../core/time.ts';
import type { WorkingDays } from '../core/working-days.ts';
import type { Build } from '../records/builds/build.ts';
import { progressOf, standPlan } from '../records/running-in/progress.ts';
import type { RunInPlan } from '../records/running-in/run-in.ts';
import type { TeamSettings } from '../records/team/team.ts';
import type { TeamRecord } from '../records/team-record.ts';
import { EVENING } from './morning.ts';
import type { DueNotice, RunInNotice } from './notice.ts';

/**
 * Steps of running in that come up or are due: each said once ahead and once when it is due, and again when it is due after it
 * was put off, between the team's morning time and the evening. One that was due the day before is the morning message's to
 * say, where there is one. Pure but for reading the record.
 */
export function dueRunIn(
  record: TeamRecord,
  build: Build,
  settings: TeamSettings,
  calendar: WorkingDays,
  nowMs: number,
): readonly DueNotice<RunInNotice>[] {
  const plan = record.runIn.ofBuild(build.id);
  if (plan === undefined) return [];
  const time = wallTime(nowMs, settings.zone).toPlainTime().toString({ smallestUnit: 'minute' });
  if (time < settings.morning || time >= EVENING) return [];
  const { zone } = settings;
  const today = dayAt(nowMs, zone);
  const morningSays = calendar.isWorkingDay(today) ? dueAtEndOf(record, plan, addDays(today, -1), zone) : [];
  return standPlan(plan, progressOf(record, plan, nowMs, zone)).flatMap(({ step, state }) => {
    if (state === 'due' ? morningSays.includes(step.id) : state !== 'soon' || step.snoozes.length > 0)
      return [];
    const when = state === 'due' ? 'due' : 'ahead';
    return [
      {
        key: `run-in:${step.id}:${when}:${step.snoozes.length}`,
        channelId: build.channelId,
        notice: { kind: 'run-in', buildId: build.id, stepId: step.id, when } as const,
      },
    ];
  });
}

/** The steps that were due when a day ended. */
export function dueAtEndOf(record: TeamRecord, plan: RunInPlan, day: Day, zone: string): readonly number[] {
  const progress = progressOf(record, plan, instantOf(addDays(day, 1), '00:00', zone) - 1, zone);
  return standPlan(plan, progress)
    .filter(({ state }) => state === 'due')
    .map(({ step }) => step.id);
}
