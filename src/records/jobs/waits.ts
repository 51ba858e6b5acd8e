import type { Day } from '../../core/time.ts';
import { type Blocker, blockers } from './blockers.ts';
import type { JobFacts } from './facts.ts';
import type { Job } from './job.ts';

/** An open job, and what keeps it. */
export interface Waiting {
  readonly job: Job;
  readonly blockers: readonly Blocker[];
  /** When every part it waits for is expected, also through the jobs it waits for; null when that cannot be said. */
  readonly partsOn: Day | null;
}

/**
 * What each blocked job waits for and until when its parts are expected. A job that waits for others waits for their
 * parts as well; how long the work takes is not counted.
 */
export function waiting(open: readonly Job[], facts: JobFacts): readonly Waiting[] {
  const known = new Map<number, Day | null | undefined>();
  const kept = open.flatMap((job) => {
    const found = blockers(job, facts);
    return found.length === 0 ? [] : [{ job, blockers: found }];
  });
  return kept.map((one) => ({ ...one, partsOn: partsOn(one.job, facts, known) ?? null }));
}

/** Undefined when no part is waited for; null when one has not been ordered. */
function partsOn(
  job: Job,
  facts: JobFacts,
  known: Map<number, Day | null | undefined>,
): Day | null | undefined {
  if (known.has(job.id)) return known.get(job.id);
  known.set(job.id, undefined); // a loop ends here
  const days = blockers(job, facts).map((blocker) => awaitedOn(blocker, facts, known));
  const found = days.includes(null)
    ? null
    : days
        .filter((day) => typeof day === 'string')
        .toSorted()
        .at(-1);
  known.set(job.id, found);
  return found;
}

function awaitedOn(
  blocker: Blocker,
  facts: JobFacts,
  known: Map<number, Day | null | undefined>,
): Day | null | undefined {
  switch (blocker.kind) {
    case 'part':
      return blocker.expectedOn;
    case 'job': {
      const other = facts.jobs.get(blocker.jobId);
      return other && partsOn(other, facts, known);
    }
    case 'stage':
      return undefined;
    case 'fluid':
    case 'unknown':
      return null;
  }
}
