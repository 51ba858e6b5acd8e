import { type Day, sayDay } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { type Came, countOf, fit as fitPart, takeOff } from '../parts/part-moves.ts';
import { plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Job, JobNeed } from './job.ts';
import type { NewJob } from './job-store.ts';

export interface Said<Value> {
  readonly value: Value;
  readonly said: string;
}

export interface By {
  readonly name: string;
  readonly on: Day;
}

/**
 * Writes a job down.
 *
 * @throws UserError 'already-done' when one of that name is on the list already.
 */
export function addJob(record: TeamRecord, job: NewJob): Said<Job> {
  const same = record.jobs.ofBuild(job.buildId).find(({ name }) => plain(name) === plain(job.name));
  if (same !== undefined) throw takenName(same);
  return { value: record.jobs.add(job), said: `job "${job.name}" written down` };
}

function takenName({ id, name, dropped, doneOn }: Job): UserError {
  const where = dropped ? ', dropped' : doneOn === null ? '' : ', done';
  const next = dropped || doneOn !== null ? '/job reopen takes it up again.' : '/job edit changes it.';
  return new UserError(
    'already-done',
    `#${id} ${name} is on the list already${where}. Nothing was changed. ${next}`,
  );
}

/**
 * Marks a job as done; the parts it needs count as fitted from then on.
 *
 * @param came where a part came from that the record does not have in hand: its order, or it was here anyway.
 * @throws UserError 'already-done' saying by whom, 'not-now' when it was dropped, 'which-one' about `came` when a part it
 * needs is still on order.
 */
export function finishJob(record: TeamRecord, job: Job, by: By, came?: Came): Said<Job> {
  if (job.doneOn !== null) {
    throw new UserError(
      'already-done',
      `#${job.id} ${job.name} is done already: ${job.doneByName}, ${sayDay(job.doneOn, by.on)}. Nothing was changed.`,
    );
  }
  if (job.dropped) {
    throw new UserError(
      'not-now',
      `#${job.id} ${job.name} was dropped. Nothing was changed. /job reopen takes it up again.`,
    );
  }
  const done = { ...job, doneOn: by.on, doneByName: by.name };
  record.jobs.change(done);
  const fitted = partNeeds(job).flatMap(({ partId, quantity }) => {
    const part = record.parts.find(partId);
    if (part === undefined) return [];
    // what is fitted already need not be fitted again, unless it is renewed each time
    const wanted = part.singleUse ? quantity : Math.max(0, quantity - countOf(record, part).fitted);
    return wanted === 0 ? [] : fitPart(record, part, { quantity: wanted, came }, saidBy(by)).said;
  });
  const said = fitted.length === 0 ? '' : `; ${fitted.join(', ')}`;
  return { value: done, said: `job #${job.id} "${job.name}" done${said}` };
}

const saidBy = ({ name, on }: By): { readonly today: Day; readonly byName: string } => ({
  today: on,
  byName: name,
});

const partNeeds = ({ needs }: Job): readonly Extract<JobNeed, { readonly kind: 'part' }>[] =>
  needs.filter((need) => need.kind === 'part');

/**
 * Takes a job up again that was done or dropped. What it used once is used up then, and must be there anew.
 *
 * @throws UserError 'already-done' when it is open.
 */
export function reopenJob(record: TeamRecord, job: Job, by: By): Said<Job> {
  if (job.doneOn === null && !job.dropped) {
    throw new UserError('already-done', `#${job.id} ${job.name} is open as it is. Nothing was changed.`);
  }
  const open = { ...job, doneOn: null, doneByName: null, dropped: false };
  record.jobs.change(open);
  const used = (job.doneOn === null ? [] : partNeeds(job)).flatMap(({ partId, quantity }) => {
    const part = record.parts.find(partId);
    if (part === undefined || !part.singleUse) return [];
    const count = Math.min(quantity, countOf(record, part).fitted);
    return count === 0 ? [] : takeOff(record, part, { quantity: count, keep: false }, saidBy(by)).said;
  });
  const said = used.length === 0 ? '' : `; ${used.join(', ')}`;
  return { value: open, said: `job #${job.id} "${job.name}" reopened${said}` };
}

/** Gives a job up. @throws UserError 'already-done' when it is done or given up. */
export function dropJob(record: TeamRecord, job: Job): Said<Job> {
  if (job.dropped || job.doneOn !== null) {
    throw new UserError(
      'already-done',
      `#${job.id} ${job.name} is ${job.dropped ? 'dropped' : 'done'} already. Nothing was changed.`,
    );
  }
  const dropped = { ...job, dropped: true };
  record.jobs.change(dropped);
  return { value: dropped, said: `job #${job.id} "${job.name}" dropped` };
}

/**
 * Changes what is said of a job.
 *
 * @throws UserError 'already-done' when another job has the new name or nothing would change.
 */
export function editJob(
  record: TeamRecord,
  job: Job,
  changes: Partial<Omit<Job, 'id' | 'needs'>>,
): Said<Job> {
  const edited = { ...job, ...changes };
  if (JSON.stringify(edited) === JSON.stringify(job)) {
    throw new UserError('already-done', `#${job.id} ${job.name} is like that already. Nothing was changed.`);
  }
  const same = record.jobs
    .ofBuild(job.buildId)
    .find(({ id, name }) => id !== job.id && plain(name) === plain(edited.name));
  if (same !== undefined) throw takenName(same);
  record.jobs.change(edited);
  return { value: edited, said: `job #${job.id} "${edited.name}" changed` };
}
