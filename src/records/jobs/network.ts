import { chainBetween, countsBehind, type Prerequisites } from '../../calc/schedule/graph.ts';
import { isOpen, type StageFact } from './facts.ts';
import type { Job } from './job.ts';

/**
 * What waits for what, jobs first and then stages, each by its place. A stage waits for its own open jobs and for the
 * stage before it; a job waits for the open jobs and the unpassed stages it needs.
 */
export interface JobNetwork {
  readonly jobs: readonly Job[];
  readonly stages: readonly StageFact[];
  readonly needs: Prerequisites;
  placeOfJob(id: number): number | undefined;
  placeOfStage(key: string): number | undefined;
}

/** The network of what is still to be done; done, dropped and passed things hold nothing up and are left out of it. */
export function openNetwork(all: readonly Job[], stages: readonly StageFact[]): JobNetwork {
  return networkOf(
    all.filter(isOpen),
    stages.filter(({ passed }) => !passed),
  );
}

/** The network as if nothing were done yet: what a loop is looked for in, since whatever is done may be reopened. */
export function wholeNetwork(all: readonly Job[], stages: readonly StageFact[]): JobNetwork {
  return networkOf(all, stages);
}

function networkOf(jobs: readonly Job[], unordered: readonly StageFact[]): JobNetwork {
  const stages = unordered.toSorted((a, b) => a.rank - b.rank);
  const jobPlace = new Map(jobs.map(({ id }, index) => [id, index]));
  const stagePlace = new Map(stages.map(({ key }, index) => [key, jobs.length + index]));
  const ofStage = new Map<string, number[]>();
  for (const [index, { stage, dropped }] of jobs.entries()) {
    if (stage === null || dropped) continue;
    const same = ofStage.get(stage);
    if (same === undefined) ofStage.set(stage, [index]);
    else same.push(index);
  }
  const needsOfJob = ({ needs }: Job): readonly number[] =>
    needs.flatMap((need) => {
      const place =
        need.kind === 'job'
          ? jobPlace.get(need.jobId)
          : need.kind === 'stage'
            ? stagePlace.get(need.stage)
            : undefined;
      return place ?? [];
    });
  const needsOfStage = ({ key }: StageFact, index: number): readonly number[] => [
    ...(ofStage.get(key) ?? []),
    ...(index === 0 ? [] : [jobs.length + index - 1]),
  ];
  return {
    jobs,
    stages,
    needs: [...jobs.map(needsOfJob), ...stages.map(needsOfStage)],
    placeOfJob: (id) => jobPlace.get(id),
    placeOfStage: (key) => stagePlace.get(key),
  };
}

/**
 * Whether the first thing would wait for itself if it waited for the second: the names round the loop, from the first
 * and back to it; null when it may.
 */
export function loopIf(network: JobNetwork, waits: number, needed: number): readonly string[] | null {
  const chain = chainBetween(network.needs, needed, waits);
  return chain === null ? null : [waits, ...chain].map((place) => nameOf(network, place));
}

export function nameOf({ jobs, stages }: JobNetwork, place: number): string {
  return jobs[place]?.name ?? `the stage ${stages[place - jobs.length]?.name ?? ''}`;
}

/** How many open jobs wait for each job, directly or through others, by the job's number. */
export function freesCount({ jobs, needs }: JobNetwork): ReadonlyMap<number, number> {
  const counts = countsBehind(needs, jobs.length);
  return new Map(jobs.map(({ id }, index) => [id, counts[index] ?? 0]));
}
