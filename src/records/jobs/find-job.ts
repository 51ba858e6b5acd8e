import { type Choice, UserError } from '../../core/user-error.ts';
import { likeNames, plain } from '../suppliers/supplier.ts';
import { isOpen } from './facts.ts';
import type { Job } from './job.ts';

/**
 * The job meant by `#12`, `12` or by its name or part of it; of several an open one when only one is open.
 *
 * @param field the option that a picked answer is to fill
 * @throws UserError 'not-found' when there is none, 'which-one' when the name fits several or is only nearly one.
 */
export function findJob(jobs: readonly Job[], typed: string, field = 'job'): Job {
  const number = /^\s*#?\s*(\d{1,9})\s*$/.exec(typed)?.[1];
  const numbered = jobs.find(({ id }) => String(id) === number);
  if (numbered !== undefined) return numbered;
  const fitting = jobsNamed(jobs, typed);
  const open = fitting.filter(isOpen);
  const [only, ...more] = open.length === 0 ? fitting : open;
  if (only !== undefined && more.length === 0) return only;
  if (only !== undefined) {
    const count = more.length < MOST_CHOICES ? 'Several jobs' : `${more.length + 1} jobs`;
    const beyond = more.length < MOST_CHOICES ? '' : ' Type more of its name for the others.';
    throw whichOne(`${count} fit "${typed}". Which one?${beyond}`, [only, ...more], field);
  }
  const names = likeNames(
    typed,
    jobs.map(({ name }) => name),
  );
  const near = jobs.filter(({ name }) => names.includes(name));
  if (near.length > 0) throw whichOne(`No job here is called "${typed}". Is this the one?`, near, field);
  throw new UserError(
    'not-found',
    jobs.length === 0
      ? 'No job of this build is written down yet. /job add writes one down, /job from-set offers a starting set.'
      : `No job here is called "${typed}". Nothing was changed. /job list shows them.`,
  );
}

/** Jobs of exactly this name, or else those whose name holds it. */
export function jobsNamed(jobs: readonly Job[], typed: string): readonly Job[] {
  const wanted = plain(typed);
  const exact = jobs.filter(({ name }) => plain(name) === wanted);
  return exact.length > 0 || wanted === '' ? exact : jobs.filter(({ name }) => plain(name).includes(wanted));
}

/** More do not fit under a question. */
const MOST_CHOICES = 5;

/** Jobs that fit what is typed so far, open ones first. */
export function suggestJobs(jobs: readonly Job[], typed: string): readonly Choice[] {
  const wanted = plain(typed.replace('#', ''));
  return jobs
    .filter(({ id, name }) => plain(`${id} ${name}`).includes(wanted))
    .toSorted((a, b) => Number(isOpen(b)) - Number(isOpen(a)) || a.id - b.id)
    .map(jobChoice);
}

const whichOne = (question: string, jobs: readonly Job[], field: string): UserError =>
  new UserError('which-one', question, { field, choices: jobs.map(jobChoice) });

const jobChoice = ({ id, name }: Job): Choice => ({ label: `#${id} ${name}`.slice(0, 100), value: `#${id}` });
