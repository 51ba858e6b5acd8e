import type { Answer, Item } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import { blockers } from './blockers.ts';
import { isOpen } from './facts.ts';
import type { Job } from './job.ts';
import { jobData } from './job-answer.ts';
import type { JobBook } from './read-facts.ts';
import { sayBlocker, sayFew, sayMinutes } from './say-job.ts';

/** Jobs in the order of their stages, those of no stage last; within one open ones first, then as they were entered. */
export function byStage(jobs: readonly Job[], { facts }: Pick<JobBook, 'facts'>): readonly Job[] {
  const rank = ({ stage }: Job): number =>
    (stage === null ? undefined : facts.stages.get(stage)?.rank) ?? Number.MAX_SAFE_INTEGER;
  return jobs.toSorted((a, b) => rank(a) - rank(b) || Number(isOpen(b)) - Number(isOpen(a)) || a.id - b.id);
}

/** What is shown of a list: one page of it, and how many there are in all. */
export interface JobListView {
  readonly shown: readonly Job[];
  readonly all: readonly Job[];
  readonly book: JobBook;
  readonly today: Day;
  /** The stage asked for, by name. */
  readonly stage?: string;
  readonly where?: string;
}

/** Jobs one under the other, with a menu to open one. */
export function jobList({ shown, all, book, today, stage, where }: JobListView): Answer {
  const open = all.filter(isOpen).length;
  const done = all.filter(({ doneOn }) => doneOn !== null).length;
  const of = stage === undefined ? '' : ` of ${stage}`;
  return {
    kind: 'answer',
    subject: 'Jobs',
    result: all.length === 0 ? `No job${of} is written down yet` : `${open} to do${of}, ${done} done`,
    ...(all.length === 0
      ? { certainty: '/job add writes one down, /job from-set offers a starting set.' }
      : where === undefined
        ? {}
        : { certainty: `${where}.` }),
    items: shown.map((job) => itemOf(job, book, today)),
    ...(shown.length === 0
      ? {}
      : {
          menu: {
            prompt: 'Open one',
            does: { command: 'job', action: 'show', args: {} },
            arg: 'job',
            choices: shown.map(({ id, name }) => ({
              label: `#${id} ${name}`.slice(0, 100),
              value: String(id),
            })),
          },
        }),
    audience: 'crew',
    data: { open, done, jobs: shown.map((job) => jobData(job, book, today)) },
  };
}

function itemOf(job: Job, book: JobBook, today: Day): Item {
  const stage = job.stage === null ? 'no stage' : (book.facts.stages.get(job.stage)?.name ?? job.stage);
  const text = `#${job.id} ${job.name}`;
  if (job.doneOn !== null) {
    return { text, note: `${stage}. Done ${sayDay(job.doneOn, today)} by ${job.doneByName}.`, tone: 'done' };
  }
  if (job.dropped) return { text, note: `${stage}. Dropped.` };
  const held = blockers(job, book.facts).map((one) => sayBlocker(one, today));
  const takes = job.minutes === null ? '' : ` ${sayMinutes(job.minutes)}.`;
  const state = held.length === 0 ? 'Can be done now.' : `Waits for ${sayFew(held, 2)}.`;
  return { text, note: `${stage}.${takes} ${state}`, tone: held.length === 0 ? 'plain' : 'soon' };
}
