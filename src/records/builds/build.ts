import type { Day } from '../../core/time.ts';

/** One car being put back together. A build belongs to a channel. */
export interface Build {
  readonly id: number;
  readonly channelId: string;
  readonly name: string;
  /** The last day on which the morning message was decided; none is ever decided twice. */
  readonly lastMorning: Day | null;
}

/** Something the crew has said of the car or its engine: "compression ratio", "8.6". */
export interface BuildFact {
  readonly id: number;
  readonly name: string;
  readonly value: string;
}
