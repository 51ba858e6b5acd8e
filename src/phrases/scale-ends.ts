import { UserError } from '../core/user-error.ts';
import { readDecimal } from './quantity/decimal.ts';
import { tidy } from './quantity/tidy.ts';

/** The two ends of a sensor's scale in whatever unit they were said, and a reading on it. */
export interface ScaleEnds {
  readonly low: number;
  readonly high: number;
  readonly reading: number | undefined;
  /** As it was typed; empty when none was. */
  readonly unit: string;
}

/**
 * Reads the ends of a scale, `0 bar` and `10 bar`, and a reading on it. Any unit does, since a line keeps it, but it must
 * be the same throughout; said once is enough.
 *
 * @throws UserError 'bad-input' for what is no number, or for units that differ.
 */
export function readScaleEnds(typed: {
  readonly low: string;
  readonly high: string;
  readonly reading?: string | undefined;
}): ScaleEnds {
  const low = readEnd('low', typed.low);
  const high = readEnd('high', typed.high);
  const reading = typed.reading === undefined ? undefined : readEnd('reading', typed.reading);
  const units = new Map(
    [low, high, ...(reading === undefined ? [] : [reading])].map((end) => [plain(end.unit), end.unit]),
  );
  units.delete('');
  if (units.size > 1) {
    throw new UserError(
      'bad-input',
      `The readings are in ${[...units.values()].join(' and ')}: say all in one unit, e.g. low:"0 bar" high:"10 bar".`,
    );
  }
  return { low: low.value, high: high.value, reading: reading?.value, unit: [...units.values()][0] ?? '' };
}

const plain = (unit: string): string => tidy(unit).replace(/[° .]/gu, '');

function readEnd(field: string, typed: string): { readonly value: number; readonly unit: string } {
  const [, sign = '', digits = '', unit = ''] = /^\s*([-−+]?)\s*([\d.,' ]*\d)\s*(.*?)\s*$/u.exec(typed) ?? [];
  const read = readDecimal(tidy(digits));
  if (read === null || /\d/u.test(unit.replace(/[²³]|H2O|h2o/gu, ''))) {
    throw new UserError('bad-input', `${field}: “${typed}” is no number with a unit. Try ${field}:"10 bar"`);
  }
  if (read.orElse !== undefined) {
    throw new UserError(
      'bad-input',
      `${field}: “${digits}” can be ${read.value} or ${read.orElse}. Write it without the comma.`,
    );
  }
  return { value: sign === '-' || sign === '−' ? -read.value : read.value, unit };
}
