import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import type { StageFact } from './facts.ts';
import type { Job, JobNeed } from './job.ts';
import type { Said } from './moves.ts';
import { loopIf, wholeNetwork } from './network.ts';

/** A need and its words: "head gasket", "#3 fit head". */
export interface NamedNeed {
  readonly need: JobNeed;
  readonly name: string;
}

/** Gives jobs of a build their needs; the build is read once, however many are given. */
export interface NeedGiver {
  /**
   * Gives a job what it needs, of a part so many of it from now on. Returns the names of what it did not need before.
   *
   * @throws UserError 'not-now' naming the loop when the job would wait for itself.
   */
  give(job: Job, needs: readonly NamedNeed[]): readonly string[];
}

export function openNeedGiver(record: TeamRecord, buildId: number, stages: readonly StageFact[]): NeedGiver {
  const jobs = new Map(record.jobs.ofBuild(buildId).map((job) => [job.id, job]));
  return {
    give(job, needs) {
      let now = jobs.get(job.id) ?? job;
      const added = needs.filter(({ need }) => {
        if (now.needs.some((one) => sameThing(one, need) && sameCount(one, need))) return false;
        refuseLoop([...jobs.values()], now, need, stages);
        record.jobs.unneed(job.id, need);
        record.jobs.need(job.id, need);
        now = { ...now, needs: [...now.needs.filter((one) => !sameThing(one, need)), need] };
        jobs.set(job.id, now);
        if (need.kind === 'part') needAtLeast(record, jobs.values(), need.partId);
        return true;
      });
      return added.map(({ name }) => name);
    },
  };
}

/**
 * Gives one job what it needs.
 *
 * @throws UserError 'not-now' naming the loop when it would wait for itself, 'already-done' when it needs all of it already.
 */
export function addNeeds(
  record: TeamRecord,
  job: Job,
  needs: readonly NamedNeed[],
  stages: readonly StageFact[],
): Said<Job> {
  const added = openNeedGiver(record, job.buildId, stages).give(job, needs);
  if (added.length === 0 && needs.length > 0) {
    const names = needs.map(({ name }) => name).join(', ');
    throw new UserError(
      'already-done',
      `#${job.id} ${job.name} needs ${names} already. Nothing was changed.`,
    );
  }
  return { value: again(record, job), said: `job #${job.id} "${job.name}" needs ${added.join(', ')}` };
}

/** @throws UserError 'not-found' when the job does not need one of them. */
export function removeNeeds(record: TeamRecord, job: Job, needs: readonly NamedNeed[]): Said<Job> {
  for (const { need, name } of needs) {
    if (!job.needs.some((one) => sameThing(one, need))) {
      throw new UserError('not-found', `#${job.id} ${job.name} does not need ${name}. Nothing was changed.`);
    }
    record.jobs.unneed(job.id, need);
  }
  const names = needs.map(({ name }) => name).join(', ');
  return { value: again(record, job), said: `job #${job.id} "${job.name}" no longer needs ${names}` };
}

/**
 * Refuses a stage for a job that would then wait for itself: it needs a stage that comes only after its own.
 *
 * @throws UserError 'not-now' naming the loop.
 */
export function refuseStageLoop(record: TeamRecord, job: Job, stages: readonly StageFact[]): void {
  const jobs = record.jobs.ofBuild(job.buildId);
  for (const need of job.needs) refuseLoop(jobs, job, need, stages);
}

/** @throws UserError 'not-now' in words naming the loop, each thing waiting for the next: "a → b → c → a". */
function refuseLoop(all: readonly Job[], job: Job, need: JobNeed, stages: readonly StageFact[]): void {
  if (need.kind !== 'job' && need.kind !== 'stage') return;
  const network = wholeNetwork(
    all.map((one) => (one.id === job.id ? job : one)),
    stages,
  );
  const waits = network.placeOfJob(job.id);
  const needed = need.kind === 'job' ? network.placeOfJob(need.jobId) : network.placeOfStage(need.stage);
  if (waits === undefined || needed === undefined) return;
  const loop = loopIf(network, waits, needed);
  if (loop === null) return;
  throw new UserError(
    'not-now',
    `Then ${job.name} would wait for itself: ${loop.join(' → ')}. Nothing was changed. Take one of these off first: /job needs with remove.`,
  );
}

/** A build needs as many of a part as its open jobs do: of what is used once all together, else the most of any. */
function needAtLeast(record: TeamRecord, jobs: Iterable<Job>, partId: number): void {
  const part = record.parts.find(partId);
  if (part === undefined) return;
  const wanted = [...jobs]
    .filter(({ dropped }) => !dropped)
    .flatMap(({ needs }) => needs)
    .flatMap((need) => (need.kind === 'part' && need.partId === partId ? [need.quantity] : []));
  const needed = part.singleUse ? wanted.reduce((sum, count) => sum + count, 0) : Math.max(0, ...wanted);
  if (needed > part.needed) record.parts.correct({ ...part, needed });
}

export function sameThing(a: JobNeed, b: JobNeed): boolean {
  if (a.kind === 'part') return b.kind === 'part' && a.partId === b.partId;
  if (a.kind === 'job') return b.kind === 'job' && a.jobId === b.jobId;
  if (a.kind === 'fluid') return b.kind === 'fluid' && a.caseId === b.caseId;
  return b.kind === 'stage' && a.stage === b.stage;
}

const sameCount = (a: JobNeed, b: JobNeed): boolean =>
  a.kind !== 'part' || (b.kind === 'part' && a.quantity === b.quantity);

function again(record: TeamRecord, { id }: Job): Job {
  const job = record.jobs.find(id);
  if (!job) throw new Error(`job ${id} vanished inside its own change`);
  return job;
}
