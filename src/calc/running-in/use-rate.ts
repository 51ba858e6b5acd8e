import type { SumSheet } from '../../core/calculation.ts';
import { type Point, trendOf } from '../readings/trend.ts';

/** Counter readings older than this say nothing of how it is used now. */
const RECENT_DAYS = 45;

/**
 * How fast a counter counts of late, for a day: the median slope over all pairs of its readings of the last 45 days, so that one
 * long trip or one slip of the pen does not set the pace.
 *
 * Source: Theil and Sen (key SEN). Valid: readings in days and the counter's unit; two readings give the plain slope.
 * @returns null for fewer than two recent readings on different days, or when it does not count up.
 */
export function useRate(points: readonly Point[], nowDays: number): number | null {
  const recent = points.filter(({ at }) => at <= nowDays && nowDays - at <= RECENT_DAYS);
  const [first] = recent;
  const last = recent.at(-1);
  if (first === undefined || last === undefined || last.at - first.at < LEAST_DAYS) return null;
  const slope =
    recent.length > 2 ? trendOf(recent)?.slope : (last.value - first.value) / (last.at - first.at);
  return slope !== undefined && slope > 0 ? slope : null;
}

/** Within half a day one drive would stand for all days. */
const LEAST_DAYS = 0.5;

/** In how many days from the last reading a mark is reached; 0 when it is. */
export function daysToMark(
  rate: number,
  { value, mark }: { readonly value: number; readonly mark: number },
): number {
  return Math.max(0, (mark - value) / rate);
}

export const useRateSheet: SumSheet = {
  title: 'When a step of running in will be due',
  formula: 'r = median((yⱼ − yᵢ)/(tⱼ − tᵢ)); days = (mark − y)/r',
  symbols: { r: 'use in a day, over the last 45 days', y: 'what the counter shows', t: 'days' },
  sources: ['SEN'],
  range: 'a guess from recent use; two readings on different days at the least',
};
