import { buildHere, crewOf } from '../../bot/crew.ts';
import type { Changed, Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer, Button } from '../../core/reply.ts';
import { type Choice, UserError } from '../../core/user-error.ts';
import type { Build } from '../../records/builds/build.ts';
import { blockers } from '../../records/jobs/blockers.ts';
import { isOpen } from '../../records/jobs/facts.ts';
import { findJob, suggestJobs } from '../../records/jobs/find-job.ts';
import type { Job } from '../../records/jobs/job.ts';
import { jobAnswer } from '../../records/jobs/job-answer.ts';
import { type By, finishJob, type Said } from '../../records/jobs/moves.ts';
import { type JobBook, readJobBook } from '../../records/jobs/read-facts.ts';
import { sayBlocker, sayFew } from '../../records/jobs/say-job.ts';
import type { Came } from '../../records/parts/part-moves.ts';
import { suggestStages } from '../../records/stages/find-stage.ts';
import type { TeamRecord } from '../../records/team-record.ts';

/** A build's number before there is a build: it holds nothing. */
const NO_BUILD = 0;

/** The jobs of this channel's build with all that decides them; empty where nothing is recorded yet. */
export function jobBookHere(hand: Hand): JobBook {
  return readJobBook(hand.record, buildHere(hand)?.id ?? NO_BUILD, crewOf(hand).today);
}

/** @throws UserError 'not-found' saying how a build is opened. */
export function buildWithJobs(hand: Hand): Build {
  const build = buildHere(hand);
  if (build) return build;
  throw new UserError(
    'not-found',
    'Nothing is recorded in this channel yet. /job add writes the first job down, /job from-set offers a starting set.',
  );
}

/** The job meant by its number or name in this channel. @throws UserError 'not-found' or 'which-one'. */
export function jobHere(hand: Hand, typed: string, field = 'job'): Job {
  return findJob(hand.record.jobs.ofBuild(buildHere(hand)?.id ?? NO_BUILD), typed, field);
}

export function suggestJobsHere(typed: string, hand: Hand): readonly Choice[] {
  return suggestJobs(hand.record.jobs.ofBuild(buildHere(hand)?.id ?? NO_BUILD), typed);
}

/** Only what can be done or given up. */
export function suggestOpenJobs(typed: string, hand: Hand): readonly Choice[] {
  return suggestJobs(hand.record.jobs.ofBuild(buildHere(hand)?.id ?? NO_BUILD).filter(isOpen), typed);
}

/** Only what can be taken up again. */
export function suggestClosedJobs(typed: string, hand: Hand): readonly Choice[] {
  const jobs = hand.record.jobs.ofBuild(buildHere(hand)?.id ?? NO_BUILD);
  return suggestJobs(
    jobs.filter((job) => !isOpen(job)),
    typed,
  );
}

export function suggestStagesHere(typed: string, hand: Hand): readonly Choice[] {
  return suggestStages(hand.record.stages.ofBuild(buildHere(hand)?.id ?? NO_BUILD), typed);
}

export const byHand = (hand: Hand): By => ({ name: hand.who.name, on: crewOf(hand).today });

/** The job meant by its number or name, as a card. @throws UserError 'not-found' or 'which-one'. */
export function showJob(hand: Hand, typed: string): Answer {
  const book = jobBookHere(hand);
  return jobAnswer({ job: findJob(book.jobs, typed), book, today: crewOf(hand).today });
}

/** The card of a job that has just been changed. */
export function reportJob(hand: Hand, changed: Changed<Job>, how: JobReport = {}): Answer {
  const { certainty, extraButtons = [] } = how;
  const card = jobAnswer({
    job: changed.value,
    book: jobBookHere(hand),
    today: crewOf(hand).today,
    said: changed.said,
    ...(certainty === undefined ? {} : { certainty }),
    extraButtons: [...extraButtons, undoButton(changed)],
  });
  return { ...card, data: { ...card.data, change: changed.changeId } };
}

export interface JobReport {
  readonly certainty?: string;
  readonly extraButtons?: readonly Button[];
}

/** Does one thing to one job, as it is by then, and shows it. */
export function moveJob(
  hand: Hand,
  typed: string,
  what: (record: TeamRecord, job: Job) => Said<Job>,
  how?: JobReport,
): Answer {
  const { id } = jobHere(hand, typed);
  const changed = hand.change((record) => what(record, jobAgain(record, id)));
  return reportJob(hand, changed, how);
}

function jobAgain(record: TeamRecord, id: number): Job {
  const job = record.jobs.find(id);
  if (job) return job;
  throw new UserError('changed-since', 'That job has just been taken off the list. Nothing was changed.');
}

const NOW_BUTTON: Button = {
  label: 'What can be done now',
  does: { command: 'now', action: 'page', args: {} },
};

/** Marks a job as done, says what it was still thought to wait for, and what can be done because of it. */
export function finishHere(hand: Hand, typed: string, came?: Came): Answer {
  const before = jobBookHere(hand);
  const job = findJob(before.jobs, typed);
  const { id } = job;
  const { today } = crewOf(hand);
  const waited = isOpen(job) ? blockers(job, before.facts).map((blocker) => sayBlocker(blocker, today)) : [];
  const changed = hand.change((record) => finishJob(record, jobAgain(record, id), byHand(hand), came));
  const after = jobBookHere(hand);
  const freed = after.jobs.filter((one) => canBeDone(one, after) && !wasFree(one.id, before));
  const certainty = [
    waited.length > 0 && `The record had it waiting for: ${sayFew(waited)}.`,
    freed.length > 0 &&
      `Can be done now: ${sayFew(freed.map(({ id: number, name }) => `#${number} ${name}`))}.`,
  ]
    .filter(Boolean)
    .join(' ');
  return reportJob(hand, changed, {
    ...(certainty === '' ? {} : { certainty }),
    extraButtons: [NOW_BUTTON],
  });
}

const canBeDone = (job: Job, { facts }: JobBook): boolean => isOpen(job) && blockers(job, facts).length === 0;

function wasFree(id: number, before: JobBook): boolean {
  const job = before.facts.jobs.get(id);
  return job !== undefined && canBeDone(job, before);
}
