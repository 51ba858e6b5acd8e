import type { Day } from '../../core/time.ts';

/** Where a plan comes from: marked, so that nobody takes custom for the builder's word. */
export type PlanOrigin = 'common practice' | 'builder';

/** What progress along the ceilings is counted in. */
export type Measure = 'km' | 'h' | 'days';

/** From the first start, whichever is reached first; what is null does not count. */
export interface Mark {
  readonly km: number | null;
  readonly h: number | null;
  readonly days: number | null;
}

export interface Snooze {
  readonly id: number;
  readonly due: Mark;
  readonly reason: string;
  readonly onDay: Day;
  readonly byName: string;
}

/** Something to do once in running in: change the oil, check the fasteners. */
export interface RunInStep {
  readonly id: number;
  readonly planId: number;
  readonly what: string;
  /** What to look for. */
  readonly hint: string | null;
  readonly origin: PlanOrigin;
  readonly due: Mark;
  readonly doneOn: Day | null;
  readonly doneByName: string | null;
  /** Distance and hours from the first start at which it was done, as far as they were known. */
  readonly doneKm: number | null;
  readonly doneH: number | null;
  readonly found: string | null;
  readonly link: string | null;
  /** Left out on purpose. */
  readonly dropped: boolean;
  /** The oldest first; the newest one counts. */
  readonly snoozes: readonly Snooze[];
}

/** How hard it may be driven from a point on; between two points rev and boost rise in a straight line. */
export interface Ceiling {
  readonly id: number;
  /** In the plan's measure, from the first start. */
  readonly at: number;
  /** A share of the engine's limit; `speedRpm` where the limit is not known. */
  readonly speedRatio: number | null;
  readonly speedRpm: number | null;
  /** A share of the boost it is to make in the end. */
  readonly boostRatio: number | null;
  readonly load: string;
}

/** How one build's engine is run in. */
export interface RunInPlan {
  readonly id: number;
  readonly buildId: number;
  readonly name: string;
  readonly origin: PlanOrigin;
  readonly measure: Measure;
  readonly startedOn: Day;
  /** What odometer and hour meter showed at the first start. */
  readonly startKm: number;
  readonly startH: number;
  readonly limitRpm: number | null;
  readonly boostKPa: number | null;
  readonly steps: readonly RunInStep[];
  /** By `at`, the first first. */
  readonly ceilings: readonly Ceiling[];
}
