import { z } from 'zod';
import { addDays, type Day } from '../core/time.ts';
import { whatUndoes } from '../records/measures/what-undoes.ts';
import type { TeamRecord } from '../records/team-record.ts';

const by = z.string();
/** In days from the day it is loaded; minus is past. */
const on = z.int();

/** What the demonstration has of temporary measures and fluids. */
export const DemoStages = z.object({
  measures: z.array(
    z.object({
      what: z.string(),
      /** The part that undoes it. */
      until: z.string().optional(),
      undone_before: z.string().optional(),
      on,
      by,
    }),
  ),
  cases: z.array(z.object({ name: z.string(), grade: z.string(), capacity_l: z.number() })),
  bottles: z.array(z.object({ grade: z.string(), size_l: z.number(), count: z.int(), on })),
});

type Demo = z.output<typeof DemoStages>;

/** What takes what, and what is on the shelf; before the jobs, some of which fill it. */
export function writeDemoFluids(
  record: TeamRecord,
  buildId: number,
  { cases, bottles }: Demo,
  today: Day,
): void {
  for (const { name, grade, capacity_l: capacityL } of cases)
    record.fluids.addCase({ buildId, name, grade, capacityL, note: null });
  for (const { grade, size_l: sizeL, count, on: bought } of bottles)
    for (let at = 0; at < count; at++)
      record.fluids.addBottle({ buildId, grade, sizeL, boughtOn: addDays(today, bought) });
}

/** What is temporary; after the parts and jobs that undo it. */
export function writeDemoMeasures(record: TeamRecord, buildId: number, { measures }: Demo, today: Day): void {
  const known = { parts: record.parts.ofBuild(buildId), jobs: record.jobs.ofBuild(buildId) };
  for (const { what, until, undone_before: undoneBefore, on: put, by: putByName } of measures) {
    const undoer =
      until === undefined ? { until: null, partId: null, jobId: null } : whatUndoes(until, 'part', known);
    record.measures.put({
      ...undoer,
      buildId,
      what,
      putOn: addDays(today, put),
      putByName,
      answers: [],
      requiredAt: null,
      undoneBefore: undoneBefore ?? null,
      note: null,
    });
  }
}
