import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Job, JobNeed } from '../../records/jobs/job.ts';
import type { Sheet } from '../csv.ts';

/** Every job with what it needs, in words. */
export function jobSheet({ record, build, jobs, standings }: WholeBuild): Sheet {
  const jobNames = new Map(jobs.map(({ id, name }) => [id, name]));
  const partNames = new Map(standings.map(({ part }) => [part.id, part.name]));
  const caseNames = new Map(record.fluids.casesOf(build.id).map(({ id, name }) => [id, name]));
  const sayNeed = (need: JobNeed): string => {
    switch (need.kind) {
      case 'part':
        return `${need.quantity} × ${partNames.get(need.partId) ?? `part ${need.partId}`}`;
      case 'job':
        return `job: ${jobNames.get(need.jobId) ?? need.jobId}`;
      case 'fluid':
        return `fluid: ${caseNames.get(need.caseId) ?? need.caseId}`;
      case 'stage':
        return `stage: ${need.stage}`;
    }
  };
  return {
    name: 'jobs',
    head: [
      'number',
      'job',
      'stage',
      'system',
      'least minutes',
      'likely minutes',
      'most minutes',
      'people',
      'tools',
      'needs',
      'state',
      'done on',
      'done by',
      'note',
    ],
    rows: jobs.map((job) => [
      job.id,
      job.name,
      job.stage,
      job.system,
      job.minutes?.least ?? null,
      job.minutes?.likely ?? null,
      job.minutes?.most ?? null,
      job.people,
      job.tools.join(', ') || null,
      job.needs.map(sayNeed).join('; ') || null,
      stateOf(job),
      job.doneOn,
      job.doneByName,
      job.note,
    ]),
  };
}

const stateOf = ({ doneOn, dropped }: Job): string =>
  dropped ? 'dropped' : doneOn === null ? 'open' : 'done';
