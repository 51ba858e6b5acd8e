import { blockers } from './blockers.ts';
import { isOpen } from './facts.ts';
import type { Job } from './job.ts';
import { freesCount, openNetwork } from './network.ts';
import type { JobBook } from './read-facts.ts';
import { type Waiting, waiting } from './waits.ts';

/** What there is to do it with; what is left out limits nothing. */
export interface AtHand {
  readonly minutes?: number | undefined;
  readonly people?: number | undefined;
  readonly tools?: readonly string[] | undefined;
}

/** A job that can be done, and how many open jobs wait for it, directly or through others. */
export interface CanDo {
  readonly job: Job;
  readonly frees: number;
}

export interface NowList {
  /** The most freeing first, then by stage, then the shortest. */
  readonly ready: readonly CanDo[];
  /** Nothing blocks these, but they take more than is at hand. */
  readonly tooMuch: readonly CanDo[];
  readonly blocked: readonly Waiting[];
}

/** What can be done now with what is at hand, and what keeps the rest. */
export function whatNow({ jobs, stages, facts }: JobBook, atHand: AtHand = {}): NowList {
  const open = jobs.filter(isOpen);
  const frees = freesCount(openNetwork(jobs, stages));
  const rank = ({ stage }: Job): number =>
    (stage === null ? undefined : facts.stages.get(stage)?.rank) ?? Number.MAX_SAFE_INTEGER;
  const likely = ({ minutes }: Job): number => minutes?.likely ?? Number.MAX_SAFE_INTEGER;
  const unblocked = open
    .filter((job) => blockers(job, facts).length === 0)
    .map((job) => ({ job, frees: frees.get(job.id) ?? 0 }))
    .toSorted(
      (a, b) =>
        b.frees - a.frees ||
        rank(a.job) - rank(b.job) ||
        likely(a.job) - likely(b.job) ||
        a.job.id - b.job.id,
    );
  const ready = unblocked.filter(({ job }) => fits(job, atHand));
  return {
    ready,
    tooMuch: unblocked.filter((one) => !ready.includes(one)),
    blocked: waiting(open, facts).toSorted(
      (a, b) => (frees.get(b.job.id) ?? 0) - (frees.get(a.job.id) ?? 0) || rank(a.job) - rank(b.job),
    ),
  };
}

/** A job of unknown length is offered: whoever reads it knows. */
function fits({ minutes, people, tools }: Job, atHand: AtHand): boolean {
  if (atHand.minutes !== undefined && minutes !== null && minutes.likely > atHand.minutes) return false;
  if (atHand.people !== undefined && people > atHand.people) return false;
  const have = atHand.tools?.map((tool) => tool.toLowerCase());
  return have === undefined || tools.every((tool) => have.some((one) => tool.toLowerCase().includes(one)));
}
