import { carries, type Trend, trendOf } from '../../calc/readings/trend.ts';
import { alike } from './alike.ts';
import type { Kind } from './kinds.ts';
import type { Reading, Sample } from './reading.ts';
import { sayChange } from './say.ts';

const DAY_MS = 86_400_000;
/** Older ones tell of an engine that has been worked on since; more make it slow. */
const MOST_POINTS = 60;
/** A trend smaller than this over all its readings is there, and does not matter. Common practice. */
const LEAST_SHARE = 0.04;

/** What readings under like conditions do over time. */
export interface SeriesTrend {
  readonly trend: Trend;
  /** In the kind's unit, over a week. */
  readonly perWeek: number;
  /** In the kind's unit, from the first to the last of them. */
  readonly over: number;
  readonly days: number;
  readonly count: number;
}

/** Those taken under conditions like one of them, up to it, the oldest first. */
export function likeOnes<Like extends Sample>(samples: readonly Like[], newest: Sample): readonly Like[] {
  return samples
    .filter(
      (each) =>
        (each.takenAtMs < newest.takenAtMs ||
          (each.takenAtMs === newest.takenAtMs && each.id <= newest.id)) &&
        alike(each.conditions, newest.conditions),
    )
    .slice(-MOST_POINTS);
}

/**
 * The trend of readings under like conditions by Theil and Sen, with Kendall's test; nothing where the data do not carry
 * it, or where it is too small to matter.
 */
export function seriesTrend(like: readonly Sample[]): SeriesTrend | undefined {
  const [first] = like;
  const last = like.at(-1);
  if (first === undefined || last === undefined) return undefined;
  const trend = trendOf(
    like.map(({ takenAtMs, value }) => ({ at: (takenAtMs - first.takenAtMs) / DAY_MS, value })),
  );
  const days = (last.takenAtMs - first.takenAtMs) / DAY_MS;
  if (trend === null || !carries(trend)) return undefined;
  const over = trend.slope * days;
  const size = Math.max(...like.map(({ value }) => Math.abs(value)));
  if (Math.abs(over) < LEAST_SHARE * size) return undefined;
  return { trend, perWeek: trend.slope * 7, over, days, count: like.length };
}

/** "falls 0.1 bar a week (7 readings under like conditions)". */
export function sayTrend({ perWeek, over, days, count }: SeriesTrend, kind: Kind, shownIn: string): string {
  const verb = perWeek < 0 ? 'falls' : 'rises';
  const rate =
    days < 7
      ? `${sayChange(over, kind.unit, shownIn)} in ${sayDays(days)}`
      : `${sayChange(perWeek, kind.unit, shownIn)} a week`;
  return `${verb} ${rate}, by ${count} readings under like conditions`;
}

function sayDays(days: number): string {
  if (days < 1) return `${Math.max(1, Math.round(days * 24))} hours`;
  return `${Math.round(days)} ${Math.round(days) === 1 ? 'day' : 'days'}`;
}

/** In how many days the line of the trend reaches a limit; undefined when it goes the other way or is past it. */
export function daysUntil(limit: number, { trend, days }: SeriesTrend): number | undefined {
  const now = trend.intercept + trend.slope * days;
  const left = (limit - now) / trend.slope;
  return left > 0 && Number.isFinite(left) ? left : undefined;
}

/** The reading before, under like conditions. */
export const previousOf = (like: readonly Reading[]): Reading | undefined => like.at(-2);
