import type { FluidCase } from '../fluids/fluid.ts';
import type { Job } from '../jobs/job.ts';
import type { Measure } from '../measures/measure.ts';
import type { PartStanding } from '../parts/part.ts';
import type { Stage } from './stage.ts';

/** What can be done about something that is open. */
export type Lead =
  | { readonly to: 'job'; readonly job: Job }
  | { readonly to: 'undo'; readonly measure: Measure }
  /** Put in what the condition asks for, or once more what was undone too early. */
  | { readonly to: 'put'; readonly word: string; readonly again: Measure | null }
  | { readonly to: 'answers'; readonly measure: Measure; readonly word: string }
  | { readonly to: 'part'; readonly name: string; readonly standing: PartStanding | null }
  | { readonly to: 'pour'; readonly fluidCase: FluidCase }
  | { readonly to: 'case'; readonly name: string }
  | { readonly to: 'reading'; readonly kind: string; readonly states: readonly string[] }
  | { readonly to: 'said' }
  | { readonly to: 'stage'; readonly stage: Stage }
  /** Only the conditions themselves can be put right. */
  | { readonly to: 'edit' };

/** How one thing that a stage asks for stands. */
export interface Finding {
  /** The same for the same thing however often it is looked at: `job:12`. */
  readonly key: string;
  /** The condition it comes from; null for what every stage asks for: those before it. */
  readonly conditionId: number | null;
  readonly state: 'met' | 'open' | 'doubtful';
  /** In one line: what holds, or what is lacking. */
  readonly says: string;
  /** Whether going through the stage is what meets it. */
  readonly proof: boolean;
  /** Whether a pass that rested on it is reopened when it no longer holds. */
  readonly lasting: boolean;
  readonly leads: readonly Lead[];
  /** The reading that meets it. */
  readonly readingId?: number;
}

/** What a rule finds, before the condition's own marks are put on it. */
export type Found = Pick<Finding, 'key' | 'state' | 'says'> &
  Partial<Pick<Finding, 'leads' | 'lasting' | 'readingId'>>;
