import type { Day } from '../../core/time.ts';
import type { Bottle, FluidCase } from '../fluids/fluid.ts';
import { standings } from '../parts/standings.ts';
import type { Stage } from '../stages/stage.ts';
import { plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import type { FluidFact, JobFacts, StageFact } from './facts.ts';
import type { Job } from './job.ts';

/** The jobs of a build in the order they were entered, and everything that decides whether they can be done. */
export interface JobBook {
  readonly jobs: readonly Job[];
  readonly stages: readonly StageFact[];
  readonly facts: JobFacts;
}

/** Reads a build's jobs, parts, fluids and stages; a fixed number of queries, however many there are of each. */
export function readJobBook(record: TeamRecord, buildId: number, today: Day): JobBook {
  const jobs = record.jobs.ofBuild(buildId);
  const stages = stageFacts(record.stages.ofBuild(buildId));
  return {
    jobs,
    stages,
    facts: {
      jobs: new Map(jobs.map((job) => [job.id, job])),
      parts: new Map(standings(record, buildId, today).map((one) => [one.part.id, one])),
      fluids: fluidFacts(record.fluids.casesOf(buildId), record.fluids.shelf(buildId)),
      stages: new Map(stages.map((stage) => [stage.key, stage])),
    },
  };
}

export function stageFacts(stages: readonly Stage[]): readonly StageFact[] {
  return stages.map(({ key, name, rank, passes }) => ({
    key,
    name,
    rank,
    passed: passes.some(({ reopenedOn }) => reopenedOn === null),
  }));
}

/** What each case falls short of, every bottle of its grade counted for it. */
export function fluidFacts(
  cases: readonly FluidCase[],
  shelf: readonly Bottle[],
): ReadonlyMap<number, FluidFact> {
  const onShelf = new Map<string, number>();
  for (const { grade, leftL } of shelf) {
    onShelf.set(plain(grade), (onShelf.get(plain(grade)) ?? 0) + leftL);
  }
  return new Map(
    cases.map((one) => {
      const short = one.capacityL - one.inL - (onShelf.get(plain(one.grade)) ?? 0);
      // a millilitre is what a sum of bottles may be out by
      return [one.id, { fluid: one, shortL: short > 0.001 ? short : 0 }];
    }),
  );
}
