import { UserError } from '../../core/user-error.ts';

/** A point of a curve that somebody typed from a data sheet. */
export interface CurvePoint {
  readonly at: number;
  readonly value: number;
}

/** What a curve is of, to refuse it in words. */
export interface CurveWords {
  /** "The dead times", "The pump's flow". */
  readonly what: string;
  /** Unit of `at`: "V", "kPa". */
  readonly unit: string;
}

/**
 * Value of a typed curve between its points, straight from one to the next.
 *
 * @throws UserError 'bad-input' for fewer than two points or one place twice, 'out-of-range' beyond the ends: a curve is
 * never drawn further than it was typed.
 */
export function onCurve(points: readonly CurvePoint[], at: number, { what, unit }: CurveWords): number {
  const sorted = points.toSorted((a, b) => a.at - b.at);
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined || sorted.length < 2) {
    throw new UserError('bad-input', `${what}: at least two points, please.`);
  }
  const twice = sorted.find((point, index) => sorted[index + 1]?.at === point.at);
  if (twice !== undefined) {
    throw new UserError('bad-input', `${what}: ${twice.at} ${unit} stands twice.`);
  }
  if (at < first.at || at > last.at) {
    throw new UserError(
      'out-of-range',
      `${what} were typed from ${first.at} to ${last.at} ${unit}; ${Number(at.toPrecision(4))} ${unit} lies outside. Add a point there.`,
    );
  }
  const upper = Math.max(
    1,
    sorted.findIndex((point) => point.at >= at),
  );
  const [low, high] = [sorted[upper - 1] ?? first, sorted[upper] ?? last];
  return low.value + ((at - low.at) / (high.at - low.at)) * (high.value - low.value);
}
