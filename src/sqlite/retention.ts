/** How many backups of each fineness are kept. */
export interface Retention {
  readonly hourly: number;
  readonly daily: number;
  readonly monthly: number;
}

export const RETENTION: Retention = { hourly: 24, daily: 30, monthly: 12 };

/**
 * Which of these backups may go. Of the newest `hourly` hours that have a backup the newest one of each is kept, and
 * likewise for days and months (all UTC); so a long outage, or a clock set back, never empties the shelf. Pure.
 *
 * @param takenAtMs when each backup was taken, in any order
 * @returns those to remove, oldest first
 */
export function expired(takenAtMs: readonly number[], retention: Retention = RETENTION): readonly number[] {
  const newestFirst = takenAtMs.toSorted((a, b) => b - a);
  const kept = new Set([
    ...newestOfEach(newestFirst, retention.hourly, 'YYYY-MM-DDTHH'.length),
    ...newestOfEach(newestFirst, retention.daily, 'YYYY-MM-DD'.length),
    ...newestOfEach(newestFirst, retention.monthly, 'YYYY-MM'.length),
  ]);
  return newestFirst.filter((taken) => !kept.has(taken)).toReversed();
}

function newestOfEach(newestFirst: readonly number[], count: number, prefix: number): readonly number[] {
  const periods = new Map<string, number>();
  for (const taken of newestFirst) {
    const period = Temporal.Instant.fromEpochMilliseconds(taken).toString().slice(0, prefix);
    if (!periods.has(period)) periods.set(period, taken);
  }
  return [...periods.values()].slice(0, count);
}
