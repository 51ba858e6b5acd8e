import { z } from 'zod';
import type { JobNeed } from './job.ts';

/** What a job needs, as the file holds it: one column for each kind of thing, the others null. */
const Row = z.object({
  job_id: z.int(),
  kind: z.enum(['part', 'job', 'fluid', 'stage']),
  part_id: z.int().nullable(),
  quantity: z.int().nullable(),
  needed_job_id: z.int().nullable(),
  case_id: z.int().nullable(),
  stage: z.string().nullable(),
});
const Rows = z.array(Row);
export type NeedRow = z.input<typeof Row>;

export interface NeedColumns {
  readonly kind: JobNeed['kind'];
  readonly partId: number | null;
  readonly quantity: number | null;
  readonly neededJobId: number | null;
  readonly caseId: number | null;
  readonly stage: string | null;
}

const NONE = { partId: null, quantity: null, neededJobId: null, caseId: null, stage: null } as const;

export function needColumns(need: JobNeed): NeedColumns {
  switch (need.kind) {
    case 'part':
      return { ...NONE, kind: 'part', partId: need.partId, quantity: need.quantity };
    case 'job':
      return { ...NONE, kind: 'job', neededJobId: need.jobId };
    case 'fluid':
      return { ...NONE, kind: 'fluid', caseId: need.caseId };
    case 'stage':
      return { ...NONE, kind: 'stage', stage: need.stage };
  }
}

/** @throws Error when a row holds nothing in the column of its kind, which the file itself refuses. */
export function readNeed(row: unknown): JobNeed {
  return needOf(Row.parse(row));
}

/** The needs of many jobs, by the job's number, each in the order they were entered. */
export function readNeeds(rows: readonly NeedRow[]): ReadonlyMap<number, readonly JobNeed[]> {
  const needs = new Map<number, JobNeed[]>();
  for (const row of Rows.parse(rows)) {
    const known = needs.get(row.job_id);
    if (known === undefined) needs.set(row.job_id, [needOf(row)]);
    else known.push(needOf(row));
  }
  return needs;
}

function needOf(row: z.output<typeof Row>): JobNeed {
  const { kind, part_id: partId, quantity, needed_job_id: jobId, case_id: caseId, stage } = row;
  if (kind === 'part' && partId !== null && quantity !== null) return { kind, partId, quantity };
  if (kind === 'job' && jobId !== null) return { kind, jobId };
  if (kind === 'fluid' && caseId !== null) return { kind, caseId };
  if (kind === 'stage' && stage !== null) return { kind, stage };
  throw new Error(`a need of job ${row.job_id} names nothing`);
}
