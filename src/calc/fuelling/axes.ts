import { UserError } from '../../core/user-error.ts';

/** The breakpoints of a fuel table, rising. */
export interface Axes {
  readonly loadKPa: readonly number[];
  readonly speedRpm: readonly number[];
}

/** More than a table has on either side. */
const MOST_POINTS = 32;

/**
 * @throws UserError 'bad-input' when an axis has fewer than two points or more than 32, or they do not rise.
 */
export function checkAxis(points: readonly number[], field: string): readonly number[] {
  if (points.length < 2 || points.length > MOST_POINTS) {
    throw new UserError(
      'bad-input',
      `${field}: an axis has 2 to ${MOST_POINTS} breakpoints; these are ${points.length}. Type them from the lowest to the highest, with spaces between.`,
    );
  }
  const falls = points.findIndex((point, index) => index > 0 && !(point > (points[index - 1] ?? 0)));
  if (falls > 0) {
    throw new UserError(
      'bad-input',
      `${field}: ${points[falls]} stands after ${points[falls - 1]}. Type the breakpoints from the lowest to the highest, with spaces between.`,
    );
  }
  return points;
}

/** Where a value stands on an axis: 2.25 is a quarter of the way from the third point to the fourth. Held at the ends. */
export function placeOn(axis: readonly number[], value: number): number {
  const last = axis.length - 1;
  let low = 0;
  let high = last;
  if (value <= (axis[0] ?? 0)) return 0;
  if (value >= (axis[last] ?? 0)) return last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (value < (axis[middle] ?? 0)) high = middle;
    else low = middle;
  }
  const [from = 0, to = 1] = [axis[low], axis[high]];
  return low + (value - from) / (to - from);
}

/** Breakpoints for where an engine has been, when nobody says which the table has: every 500 rpm and 10 or 20 kPa. */
export function usualAxes(range: {
  readonly loadKPa: readonly [number, number];
  readonly speedRpm: readonly [number, number];
}): Axes {
  const loadStep = range.loadKPa[1] - range.loadKPa[0] > 110 ? 20 : 10;
  return { loadKPa: steps(range.loadKPa, loadStep), speedRpm: steps(range.speedRpm, 500) };
}

function steps([least, most]: readonly [number, number], step: number): readonly number[] {
  const first = Math.floor(least / step);
  const last = Math.max(first + 1, Math.ceil(most / step));
  return Array.from(
    { length: Math.min(MOST_POINTS, last - first + 1) },
    (_, index) => (first + index) * step,
  );
}
