import type { z } from 'zod';
import type { Day } from '../../core/time.ts';
import type { ConditionForm } from '../../tables/stages.ts';

/**
 * What must hold for a stage. Those with `proof` show that it has been gone through (oil pressure while cranking); the
 * others must hold before it is begun.
 *
 * `jobs`: every job of the stage is done. `measures`: temporary measures stand as the stage needs them. `measure`: one that
 * the stage requires is in place; `word` is what the crew is asked for and `signs` are words that show a measure is it.
 * `fluids`: every case holds what it takes; `fluid`: one of them. `reading`: one of this kind under these states, within
 * limits in its base unit and no older than so many days. `said`: something only a person can say yes to.
 */
export type Condition = z.output<typeof ConditionForm>;
export type ConditionOf<Kind extends Condition['kind']> = Extract<Condition, { readonly kind: Kind }>;

export interface StageCondition {
  /** Negative for one of the starting set: the same in every build, written down or not. */
  readonly id: number;
  readonly condition: Condition;
}

/** What a pass rests on, so that it can be seen when it no longer holds. */
export interface Rests {
  /** The conditions the stage had. */
  readonly conditionIds: readonly number[];
  /** What was open all the same, by its name among the findings: it can change nothing. */
  readonly except: readonly string[];
  /** Readings that showed it. */
  readonly readingIds: readonly number[];
}

/** Passing a stage: who, when, and what it rested on. */
export interface Pass {
  readonly id: number;
  readonly passedOn: Day;
  readonly byName: string;
  /** Why it was passed with something open; null when nothing was. */
  readonly reason: string | null;
  /** Each condition in words as it stood. */
  readonly against: readonly string[];
  readonly restsOn: Rests;
  /** Set when what it rested on changed: the day, and what it was. */
  readonly reopenedOn: Day | null;
  readonly reopenedBy: string | null;
}

/** A person's yes to something that only a person can say. */
export interface Said {
  readonly id: number;
  readonly conditionId: number;
  readonly saidOn: Day;
  readonly byName: string;
  /** Why it no longer counts; null while it does. */
  readonly lapsed: string | null;
}

export interface Stage {
  /** Negative while the build still goes by the starting set. */
  readonly id: number;
  readonly buildId: number;
  /** Names it across a build's records: `oil-pressure`. */
  readonly key: string;
  readonly name: string;
  /** Its place in the order of stages. */
  readonly rank: number;
  readonly conditions: readonly StageCondition[];
  readonly passes: readonly Pass[];
}

/** Whether the condition is met by going through the stage rather than before it. */
export const isProof = (condition: Condition): boolean => 'proof' in condition && condition.proof === true;

/** The pass that stands as far as the record says so: the newest, unless it was reopened. */
export function standingPass({ passes }: Pick<Stage, 'passes'>): Pass | undefined {
  const last = passes.at(-1);
  return last?.reopenedOn === null ? last : undefined;
}
