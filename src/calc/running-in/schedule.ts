import type { SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** Where a counter stands among the marks of a plan. */
export interface Schedule {
  /** From the first start, in the counter's unit. */
  readonly run: number;
  readonly dueCount: number;
  /** What the counter shows when the next one is due; null when none is left. */
  readonly nextAt: number | null;
  readonly remaining: number | null;
}

/**
 * Which marks of a plan are reached: run = now − start; due where mark ≤ run; next the first mark above.
 *
 * Source: arithmetic (key DEFINITION); the marks are given. Valid: any counter that counts up: km, miles, hours, days.
 * @throws UserError 'out-of-range' for a counter that shows less than at the first start.
 */
export function scheduleAt(counter: {
  readonly start: number;
  readonly now: number;
  readonly marks: readonly number[];
}): Schedule {
  const { start, now, marks } = counter;
  requireRange({ what: 'The counter', value: now, min: start, max: start + 1e7, unit: '' });
  const run = now - start;
  const next = marks.filter((mark) => mark > run).toSorted((a, b) => a - b)[0];
  return {
    run,
    dueCount: marks.filter((mark) => mark <= run).length,
    nextAt: next === undefined ? null : start + next,
    remaining: next === undefined ? null : next - run,
  };
}

/**
 * Distance that engine hours stand for: d = t·v.
 *
 * Source: arithmetic (key DEFINITION); 60 to 80 km in an engine hour on the road is common practice, no source. Valid: 0 to
 * 100 000 h, mean speeds of 1 to 300 km/h.
 * @throws UserError 'out-of-range' outside it.
 */
export function distanceOfHours({
  hours,
  meanKmH,
}: {
  readonly hours: number;
  readonly meanKmH: number;
}): number {
  requireRange(
    { what: 'The hours', value: hours, min: 0, max: 100_000, unit: 'h' },
    { what: 'The mean speed', value: meanKmH, min: 1, max: 300, unit: 'km/h' },
  );
  return hours * meanKmH;
}

export const scheduleSheet: SumSheet = {
  title: 'Steps of running in that are due',
  formula: 'run = now − start; due where mark ≤ run; d = t·v',
  symbols: {
    now: 'what the counter shows',
    start: 'what it showed at the first start',
    d: 'distance of t engine hours at a mean speed v',
  },
  sources: ['DEFINITION', 'COMMON'],
  range: 'any counter that counts up; marks by distance, hours or days',
};
