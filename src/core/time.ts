/** A calendar day as `YYYY-MM-DD`; sorts and compares as text. */
export type Day = string;

/** The calendar day and wall time in `zone` at an instant. */
export function wallTime(nowMs: number, zone: string): Temporal.PlainDateTime {
  return Temporal.Instant.fromEpochMilliseconds(nowMs).toZonedDateTimeISO(zone).toPlainDateTime();
}

export function dayAt(nowMs: number, zone: string): Day {
  return wallTime(nowMs, zone).toPlainDate().toString();
}

/**
 * The instant at which a wall clock in `zone` shows this day and time. An hour that the clocks skip is moved on by the
 * gap; one that comes twice is the first (Temporal's "compatible", as RFC 5545 has it).
 */
export function instantOf(day: Day, time: string, zone: string): number {
  return Temporal.PlainDate.from(day).toZonedDateTime({
    timeZone: zone,
    plainTime: Temporal.PlainTime.from(time),
  }).epochMilliseconds;
}

export function addDays(day: Day, days: number): Day {
  return Temporal.PlainDate.from(day).add({ days }).toString();
}

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** "Fri 4 Dec"; the year is added when it is not that of `today`. Always with the weekday, so a slip is seen. */
export function sayDay(day: Day, today: Day): string {
  const inFull = sayFullDay(day);
  return day.slice(0, 4) === today.slice(0, 4) ? inFull.slice(0, -' 0000'.length) : inFull;
}

/** "Fri 4 Dec 2026": for what is read in another year. */
export function sayFullDay(day: Day): string {
  const date = Temporal.PlainDate.from(day);
  const words = `${WEEKDAYS[date.dayOfWeek - 1]} ${date.day} ${MONTHS[date.month - 1]}`;
  return `${words} ${String(date.year).padStart(4, '0')}`;
}

export function isZone(zone: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}
