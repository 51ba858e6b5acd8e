import { addDays, type Day } from '../../core/time.ts';

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

/** What is taken until a crew has said when it works: two evenings and a Saturday, two people. */
export const USUAL_WEEK: WorkWeek = { minutes: [0, 150, 0, 150, 0, 360, 0], people: 2 };

/** How many minutes the crew works on each day, counted from today as 0. */
export function workedOn(
  { minutes }: WorkWeek,
  away: readonly Away[],
  today: Day,
  worksToday: boolean,
): (day: number) => number {
  const weekday = Temporal.PlainDate.from(today).dayOfWeek - 1;
  return (day) => {
    if (day === 0 && !worksToday) return 0;
    const planned = minutes[(weekday + day) % 7] ?? 0;
    if (planned === 0 || away.length === 0) return planned;
    const on = addDays(today, day);
    return away.some(({ from, to }) => from <= on && on <= to) ? 0 : planned;
  };
}
