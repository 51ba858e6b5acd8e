import type { Day } from '../../core/time.ts';

/** What must hold before a stage is passed. */
export type Condition =
  /** Every job of this stage is done. */
  | { readonly kind: 'jobs' }
  | { readonly kind: 'job'; readonly jobId: number }
  | { readonly kind: 'part'; readonly partId: number }
  /** Measures that name this stage stand as it needs them. */
  | { readonly kind: 'measures' }
  /** A measure of this kind is in place: "ignition and fuel off". `word` is what the crew is asked for. */
  | { readonly kind: 'measure'; readonly word: string }
  /** The case holds what it takes. */
  | { readonly kind: 'fluid'; readonly case: string }
  /** A reading of this kind, within limits and no older than so many days. */
  | {
      readonly kind: 'reading';
      readonly reading: string;
      readonly min: number | null;
      readonly max: number | null;
      readonly freshDays: number;
    }
  /** Something only a person can say yes to. */
  | { readonly kind: 'said'; readonly what: string };

export interface StageCondition {
  readonly id: number;
  readonly condition: Condition;
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
  /** Set when what it rested on changed: the day, and what it was. */
  readonly reopenedOn: Day | null;
  readonly reopenedBy: string | null;
}

export interface Stage {
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
