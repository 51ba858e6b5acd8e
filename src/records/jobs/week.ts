import type { Day } from '../../core/time.ts';

/** When a crew works on a build. */
export interface WorkWeek {
  /** Minutes of work by weekday, Monday first. */
  readonly minutes: readonly number[];
  /** How many hands there are on such a day. */
  readonly people: number;
}

/** Days on which nobody works on the build; both ends are away. */
export interface Away {
  readonly from: Day;
  readonly to: Day;
}

/** What is taken until a crew has said when it works: three evenings and a Saturday, two people. */
export const USUAL_WEEK: WorkWeek = { minutes: [0, 150, 0, 150, 0, 360, 0], people: 2 };
