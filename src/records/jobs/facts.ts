import type { FluidCase } from '../fluids/fluid.ts';
import type { PartStanding } from '../parts/part.ts';
import type { Job } from './job.ts';

/** A case, and what its bottles on the shelf fall short of filling it, in litres; 0 when there is enough. */
export interface FluidFact {
  readonly fluid: Pick<FluidCase, 'id' | 'name' | 'grade'>;
  readonly shortL: number;
}

/** A stage as far as jobs are concerned with it. */
export interface StageFact {
  readonly key: string;
  readonly name: string;
  readonly rank: number;
  /** Passed, and not reopened since. */
  readonly passed: boolean;
}

/** Everything that decides whether a job can be done. */
export interface JobFacts {
  readonly jobs: ReadonlyMap<number, Job>;
  readonly parts: ReadonlyMap<number, PartStanding>;
  readonly fluids: ReadonlyMap<number, FluidFact>;
  readonly stages: ReadonlyMap<string, StageFact>;
}

/** Still to be done. */
export const isOpen = ({ doneOn, dropped }: Job): boolean => doneOn === null && !dropped;
