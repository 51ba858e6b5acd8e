import { z } from 'zod';
import type { Day } from '../core/time.ts';
import type { WorkingDays } from '../core/working-days.ts';
import { choose, offerOf } from '../records/jobs/choose.ts';
import { findJob } from '../records/jobs/find-job.ts';
import { addJob, finishJob } from '../records/jobs/moves.ts';
import { readNeeds } from '../records/jobs/need-words.ts';
import { addNeeds } from '../records/jobs/needs.ts';
import { readJobBook } from '../records/jobs/read-facts.ts';
import type { TeamRecord } from '../records/team-record.ts';

export const DemoJobs = z.object({
  stages: z.array(z.string()),
  leave: z.array(z.string()),
  own: z.array(
    z.object({
      name: z.string(),
      stage: z.string(),
      minutes: z.tuple([z.number(), z.number(), z.number()]),
      people: z.int(),
      needs: z.string(),
    }),
  ),
  /** What jobs of the starting set need beside what it says. */
  needs: z.array(z.object({ job: z.string(), needs: z.string() })),
  /** In working days from the day it is loaded. */
  done: z.array(z.object({ job: z.string(), on: z.int(), by: z.string() })),
  /** Parts nobody has ordered; the rest lie on the shelf. */
  missing: z.array(z.string()),
  week: z.object({ minutes: z.array(z.number()).length(7), people: z.int() }),
});

/** Puts the demonstration's jobs into its build: most of a starting set, a few of its own, some done, some parts missing. */
export function writeDemoJobs(
  record: TeamRecord,
  buildId: number,
  demo: z.output<typeof DemoJobs>,
  today: Day,
  days: WorkingDays,
): void {
  const book = () => readJobBook(record, buildId, today);
  for (const stage of demo.stages) {
    const { offered } = offerOf(record, buildId, stage);
    const chosen = offered.filter(({ key }) => !demo.leave.includes(key));
    choose(record, buildId, chosen, book().stages);
  }
  for (const {
    minutes: [least, likely, most],
    needs,
    ...own
  } of demo.own) {
    const said = { ...own, buildId, setKey: null, system: null, tools: [], note: null };
    const { value: job } = addJob(record, { ...said, minutes: { least, likely, most } });
    addNeeds(record, job, readNeeds(record, book(), buildId, needs, 'needs'), book().stages);
  }
  for (const { job: named, needs } of demo.needs) {
    const job = findJob(record.jobs.ofBuild(buildId), named);
    addNeeds(record, job, readNeeds(record, book(), buildId, needs, 'needs'), book().stages);
  }
  const untouched = book().facts.parts;
  for (const { part, missing } of untouched.values()) {
    if (missing === 0 || demo.missing.includes(part.name)) continue;
    record.parts.say({
      partId: part.id,
      kind: 'counted',
      quantity: missing,
      place: 'shelf',
      hadCome: 0,
      saidOn: today,
      byName: 'Cleo',
      note: null,
    });
  }
  for (const { job, on, by } of demo.done) {
    finishJob(record, findJob(record.jobs.ofBuild(buildId), job), { name: by, on: days.add(today, on) });
  }
  record.weeks.set(buildId, demo.week);
}
