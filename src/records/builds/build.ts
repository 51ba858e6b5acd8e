import type { Day } from '../../core/time.ts';

/** One car being put back together. A build belongs to a channel. */
export interface Build {
  readonly id: number;
  readonly channelId: string;
  readonly name: string;
  /** The last day on which the morning message was decided; none is ever decided twice. */
  readonly lastMorning: Day | null;
}
