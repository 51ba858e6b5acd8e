import type { Day } from '../../core/time.ts';

/** What must be there before a job can be done. */
export type JobNeed =
  | { readonly kind: 'part'; readonly partId: number; readonly quantity: number }
  | { readonly kind: 'job'; readonly jobId: number }
  | { readonly kind: 'fluid'; readonly caseId: number }
  /** The stage that must have been passed. */
  | { readonly kind: 'stage'; readonly stage: string };

/** How long a job takes whoever does it, in minutes. */
export interface Minutes {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
}

/** A piece of work on the build. */
export interface Job {
  readonly id: number;
  readonly buildId: number;
  readonly name: string;
  /** The stage it belongs to, by its key: the stage cannot be passed while the job is open. */
  readonly stage: string | null;
  readonly system: string | null;
  readonly minutes: Minutes | null;
  /** How many people it takes. */
  readonly people: number;
  readonly tools: readonly string[];
  readonly note: string | null;
  readonly doneOn: Day | null;
  readonly doneByName: string | null;
  /** Given up: it need not be done, and blocks nothing. */
  readonly dropped: boolean;
  readonly needs: readonly JobNeed[];
}
