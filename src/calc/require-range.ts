import { UserError } from '../core/user-error.ts';

/** One number with the words to refuse it by. */
export interface Ranged {
  /** As a person would say it: "the pressure ratio". */
  readonly what: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  /** Behind the numbers; empty for a plain ratio. */
  readonly unit: string;
  /** A share that people count in per cent is said so. */
  readonly shown?: 'percent';
}

/** Enough to tell a figure from its limit, and no binary dust behind it. */
const FIGURES = 6;

/** @throws UserError 'out-of-range' naming the first number outside its range, and the range. */
export function requireRange(...numbers: readonly Ranged[]): void {
  for (const { what, value, min, max, unit, shown } of numbers) {
    if (value >= min && value <= max) continue;
    const [scale, sign] = shown === 'percent' ? [100, '%'] : [1, unit];
    const suffix = sign === '' ? '' : ` ${sign}`;
    const say = (figure: number): string => String(Number((figure * scale).toPrecision(FIGURES)));
    throw new UserError(
      'out-of-range',
      `${what} is ${Number.isFinite(value) ? `${say(value)}${suffix}` : 'beyond any figure'}; this sum takes ${say(min)} to ${say(max)}${suffix}.`,
    );
  }
}
