import { sayFullDay } from '../../core/time.ts';
import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Job } from '../../records/jobs/job.ts';
import type { Section } from '../paper.ts';

/** Who did what and when; what was left out stays listed as such. */
export function jobs({ jobs: all }: WholeBuild): Section {
  const closed = all
    .filter(({ doneOn, dropped }) => doneOn !== null || dropped)
    .toSorted((a, b) => (a.doneOn ?? '').localeCompare(b.doneOn ?? ''));
  return {
    heading: 'Work done',
    blocks:
      closed.length === 0
        ? [{ kind: 'words', text: 'No job is recorded as done.' }]
        : [
            {
              kind: 'table',
              head: ['Job', 'Done', 'By', 'Note'],
              shares: [6, 3, 2, 4],
              rows: closed.map((job) => [job.name, done(job), job.doneByName ?? '', job.note ?? '']),
            },
          ],
  };
}

function done({ doneOn, dropped }: Job): string {
  if (dropped) return 'left out';
  return doneOn === null ? '' : sayFullDay(doneOn);
}
