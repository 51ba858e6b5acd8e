import { UserError } from '../core/user-error.ts';
import { readDecimal } from './quantity/decimal.ts';
import { tidy } from './quantity/tidy.ts';

export interface ThermistorPointTyped {
  readonly resistanceOhm: number;
  readonly temperatureC: number;
}

const EXAMPLE = 'points:"2500 ohm @ 20 C; 320 ohm @ 80 C"';
const POINT =
  /^(?<ohm>[\d.,' ]*\d) ?(?<prefix>k|kilo)? ?(?:ohms?|ω|r)? ?(?:@|at|=|:) ?(?<degrees>-?[\d.,' ]*\d) ?°? ?(?<scale>c|f|celsius|fahrenheit)?$/u;

/**
 * Measured points of a thermistor as people type them: `2500 ohm @ 20 C; 320 @ 80`, `10k at 77 F`. Semicolons, new lines
 * or "and" part them; ohms and °C where no unit is said.
 *
 * @throws UserError 'bad-input' naming the point that cannot be read, 'which-one' for a comma that can be either sign.
 */
export function readThermistorPoints(typed: string): readonly ThermistorPointTyped[] {
  const parts = tidy(typed.replace(/[\n\r]+/gu, ';'))
    .split(/;| and | und |(?<=[a-z\d]) *, +/u)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length === 0) throw new UserError('bad-input', `points: nothing was typed. Try ${EXAMPLE}`);
  return parts.map(readPoint);
}

function readPoint(part: string): ThermistorPointTyped {
  const groups = POINT.exec(part)?.groups;
  const { ohm = '', prefix, degrees = '', scale = 'c' } = groups ?? {};
  if (groups === undefined) {
    throw new UserError('bad-input', `points: “${part}” is no resistance at a temperature. Try ${EXAMPLE}`);
  }
  const temperature = figure(degrees.replace('-', ''), part) * (degrees.startsWith('-') ? -1 : 1);
  return {
    resistanceOhm: figure(ohm, part) * (prefix === undefined ? 1 : 1000),
    temperatureC: scale.startsWith('f') ? (temperature - 32) / 1.8 : temperature,
  };
}

function figure(text: string, part: string): number {
  const read = readDecimal(text);
  if (read === null)
    throw new UserError('bad-input', `points: “${text}” in “${part}” is no number. Try ${EXAMPLE}`);
  if (read.orElse !== undefined) {
    throw new UserError(
      'bad-input',
      `points: “${text}” can be ${read.value} or ${read.orElse}. Write it without the comma, e.g. ${EXAMPLE}`,
    );
  }
  return read.value;
}
