import type { Day } from '../../core/time.ts';
import type { WorkingDays } from '../../core/working-days.ts';

/** What a phrase is read against. Nothing else is known to the reader: no clock, no settings. */
export interface DateContext {
  /** Wall time where the crew is. */
  readonly now: Temporal.PlainDateTime;
  /** IANA name of the zone of `now`. */
  readonly zone: string;
  /** BCP 47 tag, or null when the person's language is not known; it decides what `5/12` is. */
  readonly locale: string | null;
  /** Which way a date of this field may lie. */
  readonly direction: 'future' | 'past' | 'any';
  readonly workingDays: WorkingDays;
}

/** One fair reading, worth a button. */
export interface DateOption {
  readonly day: Day;
  /** Wall time `HH:MM`. */
  readonly time?: string;
}

/**
 * What a phrase means: one day, a question with its fair answers (perhaps none), or nothing.
 *
 * `instantMs` goes with `time` and settles the nights on which clocks change; `assumed` is a sentence to show with the
 * answer where something had to be taken for granted.
 */
export type DateReading =
  | {
      readonly verdict: 'read';
      readonly day: Day;
      readonly time?: string;
      readonly instantMs?: number;
      readonly assumed?: string;
    }
  | { readonly verdict: 'ask'; readonly question: string; readonly options: readonly DateOption[] }
  | { readonly verdict: 'refuse'; readonly problem: string };
