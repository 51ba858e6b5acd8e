import { readPairs, type TypedPair } from './pairs.ts';

const TIME_IN_S = { ms: 0.001, s: 1, us: 1e-6, µs: 1e-6 } as const;
const VOLTS = { v: 1, volt: 1, volts: 1 } as const;
const ALONE = /^ *(\d*[.,]?\d+) *(ms|µs|us)? *$/u;

/** A dead time as a data sheet has it: one figure, or a table of them by battery voltage. */
export type DeadTimeText =
  | { readonly verdict: 'one'; readonly deadTimeS: number }
  | { readonly verdict: 'table'; readonly pairs: readonly TypedPair[] }
  | { readonly verdict: 'refuse'; readonly why: string };

/** `0.9 ms`, or `8V 2.1ms, 12V 1.1ms, 14V 0.9ms`. A figure without a unit is in ms. */
export function readDeadTime(typed: string): DeadTimeText {
  const alone = ALONE.exec(typed);
  if (alone !== null) {
    const [, figure = '', unit = 'ms'] = alone;
    return { verdict: 'one', deadTimeS: Number(figure.replace(',', '.')) * (unit === 'ms' ? 1e-3 : 1e-6) };
  }
  const table = readPairs(typed, VOLTS, TIME_IN_S);
  if (table.verdict === 'read') return { verdict: 'table', pairs: table.pairs };
  return { ...table, why: `${table.why} What would be read: 0.9 ms, or 8V 2.1ms, 12V 1.1ms, 14V 0.9ms.` };
}

export type PulseLogText =
  | {
      readonly verdict: 'read';
      readonly points: readonly { readonly speedRpm: number; readonly pulseS: number }[];
    }
  | { readonly verdict: 'refuse'; readonly why: string };

/** Speeds and pulse widths out of a log, rpm and ms: `5000 9.1, 6000 10.4, 7000 11.2`. */
export function readPulseLog(typed: string): PulseLogText {
  const read = readPairs(typed, { rpm: 1 }, TIME_IN_S);
  if (read.verdict === 'read') {
    return { verdict: 'read', points: read.pairs.map(({ at, value }) => ({ speedRpm: at, pulseS: value })) };
  }
  return { ...read, why: `${read.why} What would be read: 5000 9.1, 6000 10.4, 7000 11.2 (rpm and ms).` };
}
