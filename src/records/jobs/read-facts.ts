import type { Day } from '../../core/time.ts';
import { fluidBudget } from '../fluids/budget.ts';
import type { Bottle, FluidCase } from '../fluids/fluid.ts';
import { standings } from '../parts/standings.ts';
import { type Stage, standingPass } from '../stages/stage.ts';
import type { TeamRecord } from '../team-record.ts';
import type { FluidFact, JobFacts, StageFact } from './facts.ts';
import type { Job } from './job.ts';

/** The jobs of a build in the order they were entered, and everything that decides whether they can be done. */
export interface JobBook {
  readonly jobs: readonly Job[];
  readonly stages: readonly StageFact[];
  /** The same stages with all that is recorded of them. */
  readonly stagesWhole: readonly Stage[];
  readonly facts: JobFacts;
}

/** Reads a build's jobs, parts, fluids and stages; a fixed number of queries, however many there are of each. */
export function readJobBook(record: TeamRecord, buildId: number, today: Day): JobBook {
  const jobs = record.jobs.ofBuild(buildId);
  const stagesWhole = record.stages.ofBuild(buildId);
  const stages = stageFacts(stagesWhole);
  return {
    jobs,
    stages,
    stagesWhole,
    facts: {
      jobs: new Map(jobs.map((job) => [job.id, job])),
      parts: new Map(standings(record, buildId, today).map((one) => [one.part.id, one])),
      fluids: fluidFacts(record.fluids.casesOf(buildId), record.fluids.shelf(buildId)),
      stages: new Map(stages.map((stage) => [stage.key, stage])),
    },
  };
}

export function stageFacts(stages: readonly Stage[]): readonly StageFact[] {
  return stages.map((stage) => ({
    key: stage.key,
    name: stage.name,
    rank: stage.rank,
    passed: standingPass(stage) !== undefined,
  }));
}

/** A drop, in litres: what sums of decimal litres are off by is no shortage. */
const DROP_L = 1e-6;

/** What each case falls short of; bottles serve the cases of their grade in turn, no litre counted for two. */
export function fluidFacts(
  cases: readonly FluidCase[],
  shelf: readonly Bottle[],
): ReadonlyMap<number, FluidFact> {
  const shares = fluidBudget(cases, shelf).flatMap((grade) => grade.shares);
  return new Map(
    shares.map(({ fluidCase, lackingL, fromShelfL }) => {
      const short = lackingL - fromShelfL;
      return [fluidCase.id, { fluid: fluidCase, shortL: short > DROP_L ? short : 0 }];
    }),
  );
}
