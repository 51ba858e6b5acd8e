import { dayAt, instantOf, sayDay, wallTime } from '../core/time.ts';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
const DAY_STEPS = [1, 2, 3, 7, 14, 28, 61, 91, 182, 365] as const;
const HOUR_STEPS = [0.25, 0.5, 1, 2, 3, 6, 12] as const;

/** An instant with the words below it. */
export interface TimeTick {
  readonly atMs: number;
  readonly words: string;
}

/** Round instants between two others, as a person in `zone` names them: days, or the time of day within two of them. */
export function timeTicks(fromMs: number, toMs: number, zone: string, most: number): readonly TimeTick[] {
  const span = toMs - fromMs;
  if (span < 2 * DAY_MS) return hours(fromMs, toMs, zone, most);
  const step = DAY_STEPS.find((days) => span / (days * DAY_MS) <= most) ?? Math.ceil(span / (DAY_MS * most));
  const ticks: TimeTick[] = [];
  let day = Temporal.PlainDate.from(dayAt(fromMs, zone));
  const thisYear = dayAt(toMs, zone);
  for (;;) {
    const atMs = instantOf(day.toString(), '00:00', zone);
    if (atMs > toMs) return ticks;
    // without the weekday: a chart has no room for it
    if (atMs >= fromMs) ticks.push({ atMs, words: sayDay(day.toString(), thisYear).slice('Mon '.length) });
    day = day.add({ days: step });
  }
}

function hours(fromMs: number, toMs: number, zone: string, most: number): readonly TimeTick[] {
  const step = (HOUR_STEPS.find((hour) => (toMs - fromMs) / (hour * HOUR_MS) <= most) ?? 24) * HOUR_MS;
  const midnight = instantOf(dayAt(fromMs, zone), '00:00', zone);
  const ticks: TimeTick[] = [];
  for (let atMs = midnight; atMs <= toMs; atMs += step) {
    const words = wallTime(atMs, zone).toPlainTime().toString({ smallestUnit: 'minute' });
    if (atMs >= fromMs) ticks.push({ atMs, words });
  }
  return ticks;
}
