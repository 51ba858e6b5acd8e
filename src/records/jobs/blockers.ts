import type { Day } from '../../core/time.ts';
import type { Coming, PartStanding, Whereabouts } from '../parts/part.ts';
import { isOpen, type JobFacts } from './facts.ts';
import type { Job, JobNeed } from './job.ts';

/** Something a job waits for. */
export type Blocker =
  | {
      readonly kind: 'part';
      readonly partId: number;
      readonly name: string;
      /** How many are not here. */
      readonly short: number;
      readonly whereabouts: Whereabouts;
      /** When enough are expected to be here; null when too few are on their way. */
      readonly expectedOn: Day | null;
      readonly latestOn: Day | null;
    }
  | { readonly kind: 'job'; readonly jobId: number; readonly name: string }
  | { readonly kind: 'fluid'; readonly caseId: number; readonly name: string; readonly shortL: number }
  | { readonly kind: 'stage'; readonly stage: string; readonly name: string }
  /** A part or case that is not on record any more. */
  | { readonly kind: 'unknown'; readonly what: string };

/** What an open job waits for; nothing when it can be done, or is done or given up. */
export function blockers(job: Job, facts: JobFacts): readonly Blocker[] {
  return isOpen(job) ? job.needs.flatMap((need) => blockerOf(need, facts) ?? []) : [];
}

function blockerOf(need: JobNeed, { jobs, parts, fluids, stages }: JobFacts): Blocker | undefined {
  switch (need.kind) {
    case 'part': {
      const standing = parts.get(need.partId);
      if (standing === undefined) return { kind: 'unknown', what: `part #${need.partId}` };
      return partBlocker(standing, need.quantity);
    }
    case 'job': {
      const other = jobs.get(need.jobId);
      if (other === undefined || !isOpen(other)) return undefined;
      return { kind: 'job', jobId: other.id, name: other.name };
    }
    case 'fluid': {
      const fact = fluids.get(need.caseId);
      if (fact === undefined) return { kind: 'unknown', what: `fluid case #${need.caseId}` };
      const { fluid, shortL } = fact;
      return shortL > 0 ? { kind: 'fluid', caseId: fluid.id, name: fluid.name, shortL } : undefined;
    }
    case 'stage': {
      const stage = stages.get(need.stage);
      if (stage === undefined) return { kind: 'unknown', what: `stage ${need.stage}` };
      return stage.passed ? undefined : { kind: 'stage', stage: need.stage, name: stage.name };
    }
  }
}

/** How many of a part a job can have: what is fitted counts too, unless it is renewed each time. */
export function usable({ part, inHand, fitted }: PartStanding): number {
  return part.singleUse ? inHand : inHand + fitted;
}

function partBlocker(standing: PartStanding, quantity: number): Blocker | undefined {
  const { part, whereabouts } = standing;
  const short = quantity - usable(standing);
  if (short <= 0) return undefined;
  const awaited = enoughOf(standing, short);
  return {
    kind: 'part',
    partId: part.id,
    name: part.name,
    short,
    whereabouts,
    expectedOn: latest(awaited?.map(({ expectedOn }) => expectedOn)),
    latestOn: latest(awaited?.map(({ latestOn }) => latestOn)),
  };
}

/** The orders that bring enough, those expected first taken first; undefined when they do not. */
export function enoughOf({ coming, out }: PartStanding, short: number): readonly Coming[] | undefined {
  const taken: Coming[] = [];
  let left = short;
  for (const one of [...coming, ...out].toSorted((a, b) => (a.expectedOn < b.expectedOn ? -1 : 1))) {
    if (left <= 0) break;
    taken.push(one);
    left -= one.quantity;
  }
  return left <= 0 ? taken : undefined;
}

function latest(days: readonly Day[] | undefined): Day | null {
  return days?.toSorted().at(-1) ?? null;
}
