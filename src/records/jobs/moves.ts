import { type Day, sayDay } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { countPart } from '../parts/count-part.ts';
import { ordersOf } from '../parts/standings.ts';
import { plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Job } from './job.ts';
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
 * @throws UserError 'already-done' saying by whom, 'not-now' when it was dropped.
 */
export function finishJob(record: TeamRecord, job: Job, by: By): Said<Job> {
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
  const fitted = job.needs.flatMap((need) =>
    need.kind === 'part' ? (markFitted(record, need.partId, need.quantity, by) ?? []) : [],
  );
  const said = fitted.length === 0 ? '' : `, fitted: ${fitted.join(', ')}`;
  return { value: done, said: `job #${job.id} "${job.name}" done${said}` };
}

/** Counts what is in hand of a part as fitted, as far as it goes; its name when anything was. */
function markFitted(record: TeamRecord, partId: number, quantity: number, by: By): string | undefined {
  const part = record.parts.find(partId);
  if (part === undefined) return undefined;
  const { inHand, fitted, hadCome } = countPart(
    part.needed,
    ordersOf(record, part),
    record.parts.movesOf(partId),
  );
  // what is fitted already need not be fitted again, unless it is renewed each time
  const wanted = part.singleUse ? quantity : Math.max(0, quantity - fitted);
  const count = Math.min(wanted, inHand);
  if (count === 0) return undefined;
  const said = { saidOn: by.on, byName: by.name, place: null, note: null, hadCome };
  record.parts.say({ partId, kind: 'fitted', quantity: count, ...said });
  return count === 1 ? part.name : `${count} × ${part.name}`;
}

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
  const used =
    job.doneOn === null
      ? []
      : job.needs.flatMap((need) =>
          need.kind === 'part' ? (useUp(record, need.partId, need.quantity, by) ?? []) : [],
        );
  const said = used.length === 0 ? '' : `, to be renewed: ${used.join(', ')}`;
  return { value: open, said: `job #${job.id} "${job.name}" reopened${said}` };
}

function useUp(record: TeamRecord, partId: number, quantity: number, by: By): string | undefined {
  const part = record.parts.find(partId);
  if (part === undefined || !part.singleUse) return undefined;
  const { fitted, hadCome } = countPart(part.needed, ordersOf(record, part), record.parts.movesOf(partId));
  const count = Math.min(quantity, fitted);
  if (count === 0) return undefined;
  const said = { saidOn: by.on, byName: by.name, place: null, note: null, hadCome };
  record.parts.say({ partId, kind: 'used up', quantity: count, ...said });
  return count === 1 ? part.name : `${count} × ${part.name}`;
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
