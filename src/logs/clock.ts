import { numberIn } from './cell.ts';
import type { LogUnit } from './unit-words.ts';

/** Reads a log's own clock, in seconds since whatever it counts from; NaN where a cell holds no time. */
export interface ClockReader {
  readonly read: (cell: string) => number;
  readonly as: string;
}

const HOURS = /(?:^|[T\s])(\d{1,2}):(\d{1,2}):(\d{1,2})(?:[.,:](\d{1,9}))?\s*(am|pm)?/i;
const MINUTES = /^(\d{1,3}):(\d{1,2})(?:[.,](\d{1,9}))?$/;

/**
 * What a time column counts in: as its unit says, else as its first cells look: hh:mm:ss, minutes and seconds, a date with a time,
 * an epoch, days of a spreadsheet, or plain numbers by how far they step.
 */
export function clockReader(
  sample: readonly string[],
  unit: LogUnit | undefined,
  decimalComma: boolean,
): ClockReader {
  const filled = sample.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (filled.some((cell) => HOURS.test(cell))) return { read: timeOfDay, as: 'a time of day' };
  if (filled.some((cell) => MINUTES.test(cell))) return { read: minutesIn, as: 'minutes and seconds' };
  const plain = (cell: string): number => numberIn(cell, decimalComma);
  const per = (seconds: number, as: string): ClockReader => ({ read: (cell) => plain(cell) * seconds, as });
  const known = unit === undefined ? undefined : COUNTED[unit.unit];
  if (known !== undefined) return per(...known);
  return byLooks(
    filled.map(plain).filter((value) => !Number.isNaN(value)),
    per,
  );
}

/** Seconds to a unit of time, and what it is called. */
const COUNTED: Readonly<Partial<Record<LogUnit['unit'], readonly [number, string]>>> = {
  s: [1, 's'],
  'epoch-s': [1, 's'],
  ms: [1e-3, 'ms'],
  'epoch-ms': [1e-3, 'ms'],
  us: [1e-6, 'µs'],
  min: [60, 'min'],
  h: [3600, 'h'],
};

function byLooks(values: readonly number[], per: (seconds: number, as: string) => ClockReader): ClockReader {
  const largest = Math.max(...values);
  if (largest > 1e17) return per(1e-9, 'an epoch in ns');
  if (largest > 1e14) return per(1e-6, 'an epoch in µs');
  if (largest > 1e11) return per(1e-3, 'an epoch in ms');
  if (largest > 1e9) return per(1, 'an epoch in s');
  const steps = values.slice(1).flatMap((value, index) => {
    const step = value - (values[index] ?? value);
    return step > 0 ? [step] : [];
  });
  const typical = steps.sort((a, b) => a - b)[steps.length >> 1] ?? 1;
  if (largest > 20_000 && largest < 80_000 && typical < 1e-3) return per(86_400, 'days');
  if (typical >= 5_000) return per(1e-6, 'µs, by its steps');
  return typical >= 2 ? per(1e-3, 'ms, by its steps') : per(1, 's, by its steps');
}

function timeOfDay(cell: string): number {
  const [, hours, minutes, seconds, part = '', half = ''] = HOURS.exec(cell) ?? [];
  if (hours === undefined) return Number.NaN;
  const twelve = half === '' ? Number(hours) : (Number(hours) % 12) + (half.toLowerCase() === 'pm' ? 12 : 0);
  return twelve * 3600 + Number(minutes) * 60 + Number(seconds) + fraction(part);
}

function minutesIn(cell: string): number {
  const [, minutes, seconds, part = ''] = MINUTES.exec(cell.trim()) ?? [];
  return minutes === undefined ? Number.NaN : Number(minutes) * 60 + Number(seconds) + fraction(part);
}

const fraction = (digits: string): number => (digits === '' ? 0 : Number(digits) / 10 ** digits.length);

const DAY_S = 86_400;
/** A step back of less is a row out of its order, of more the clock begun anew. */
const OUT_OF_ORDER_S = 0.6;
const LONGEST_GAP_S = 3_600;
/** What lies on the two sides of a reset or jump has nothing to do with each other. */
const APART_S = 30;

/** Makes one rising time out of a clock that may be reset, jump, or pass midnight. */
export class RisingTime {
  #offsetS = 0;
  #last: number | undefined;
  #begun = false;
  resets = 0;
  jumps = 0;
  outOfOrder = 0;

  /** The time to go by; undefined for a row that is out of its order or has none, which is then left out. */
  next(rawS: number): number | undefined {
    if (Number.isNaN(rawS)) return undefined;
    const last = this.#last;
    if (last === undefined) {
      // a record counted from 1970 loses its milliseconds in single precision: it begins at nothing
      this.#offsetS = -rawS;
      this.#last = 0;
      return 0;
    }
    let time = rawS + this.#offsetS;
    if (time < last - DAY_S / 2 && time + DAY_S - last < LONGEST_GAP_S) {
      this.#offsetS += DAY_S;
      time += DAY_S;
    }
    if (time < last && last - time < OUT_OF_ORDER_S && last > 2 * OUT_OF_ORDER_S) {
      // after a real reset the rows that follow rise again from there
      if (this.#begun) return this.#startAnew(rawS, last);
      this.#begun = true;
      this.outOfOrder++;
      return undefined;
    }
    this.#begun = false;
    if (time < last) {
      this.resets++;
      return this.#startAnew(rawS, last);
    }
    if (time - last > LONGEST_GAP_S) {
      this.jumps++;
      return this.#startAnew(rawS, last);
    }
    this.#last = time;
    return time;
  }

  #startAnew(rawS: number, last: number): number {
    this.#offsetS = last + APART_S - rawS;
    this.#last = last + APART_S;
    this.#begun = false;
    return this.#last;
  }
}
