import type { Job, JobNeed } from '../../src/records/jobs/job.ts';
import { type JobBook, readJobBook } from '../../src/records/jobs/read-facts.ts';
import { openPart } from '../../src/records/parts/open-part.ts';
import type { KnownPart } from '../../src/records/parts/part-store.ts';
import { type OpenRecord, TODAY } from './record.ts';

/** A job that is in no record, for what only looks at one. */
export function aJob(changes: Partial<Job> = {}): Job {
  return {
    id: 1,
    buildId: 1,
    name: `job ${changes.id ?? 1}`,
    stage: null,
    system: null,
    minutes: { least: 30, likely: 60, most: 120 },
    people: 1,
    tools: [],
    note: null,
    doneOn: null,
    doneByName: null,
    dropped: false,
    needs: [],
    ...changes,
  };
}

/** Writes a job into a record, with its needs, as one change. */
export function writeJob(
  open: OpenRecord,
  name: string,
  needs: readonly JobNeed[] = [],
  changes: Partial<Job> = {},
): Job {
  const { value } = open.change(() => {
    const {
      id: _id,
      needs: _needs,
      doneOn: _on,
      doneByName: _by,
      dropped: _dropped,
      ...plain
    } = aJob(changes);
    const job = open.record.jobs.add({ ...plain, buildId: open.buildId, name, setKey: null });
    for (const need of needs) open.record.jobs.need(job.id, need);
    return { value: job.id, said: name };
  });
  return open.record.jobs.find(value) ?? aJob();
}

/** Writes a part into a record that is needed and neither here nor ordered. */
export function writePart(open: OpenRecord, name: string, changes: Partial<KnownPart> = {}): KnownPart {
  const { value } = open.change(() => {
    const { part } = openPart(open.record, open.buildId, `+${name}`, 1);
    const known = { ...part, ...changes };
    open.record.parts.correct(known);
    return { value: known, said: name };
  });
  return value;
}

/** So many of a part lie on the shelf from now on. */
export function onShelf(open: OpenRecord, partId: number, quantity: number): void {
  open.change(() => {
    open.record.parts.say({
      partId,
      kind: 'counted',
      quantity,
      place: 'shelf',
      hadCome: 0,
      saidOn: TODAY,
      byName: 'Ada',
      note: null,
    });
    return { value: null, said: 'counted' };
  });
}

export const bookOf = (open: OpenRecord): JobBook => readJobBook(open.record, open.buildId, TODAY);
