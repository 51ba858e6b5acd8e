import type { Day } from '../../core/time.ts';

/** Something done for now: a port blanked, a connector left off, a part borrowed. */
export interface Measure {
  readonly id: number;
  readonly buildId: number;
  readonly what: string;
  readonly putOn: Day;
  readonly putByName: string;
  /** What undoes it, as it was said: "the hose". */
  readonly until: string | null;
  /** What undoes it when it comes or is done. */
  readonly partId: number | null;
  readonly jobId: number | null;
  /** Measures that stages require, by the stages' own words for them, that this one is: "no spark". */
  readonly answers: readonly string[];
  /** The stage that it must be in place for, by its key: no spark while cranking for oil pressure. */
  readonly requiredAt: string | null;
  /** The stage that it must not outlive: it has to be undone before that one is passed. */
  readonly undoneBefore: string | null;
  readonly undoneOn: Day | null;
  readonly undoneByName: string | null;
  readonly note: string | null;
}

export const isInPlace = ({ undoneOn }: Pick<Measure, 'undoneOn'>): boolean => undoneOn === null;
