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
}

/** @throws UserError 'out-of-range' naming the first number outside its range, and the range. */
export function requireRange(...numbers: readonly Ranged[]): void {
  for (const { what, value, min, max, unit } of numbers) {
    if (value >= min && value <= max) continue;
    const suffix = unit === '' ? '' : ` ${unit}`;
    throw new UserError(
      'out-of-range',
      `${what} is ${Number.isFinite(value) ? `${Number(value.toPrecision(6))}${suffix}` : 'beyond any figure'}; this sum takes ${min} to ${max}${suffix}.`,
    );
  }
}
