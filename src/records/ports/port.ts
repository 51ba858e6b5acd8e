import type { Day } from '../../core/time.ts';

/** A port or end of the build that somebody measured once. */
export interface Port {
  readonly id: number;
  readonly buildId: number;
  /** What the crew calls it: "catch-tank return". */
  readonly name: string;
  /** The end by its own name: `ORB -8 female`. */
  readonly endId: string;
  /** The end as it was typed. */
  readonly typed: string;
  /** The reading behind it, or anything worth remembering. */
  readonly note: string | null;
  /** A photograph. */
  readonly link: string | null;
  readonly notedBy: string;
  readonly notedOn: Day;
}
