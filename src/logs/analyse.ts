import { type Axes, usualAxes } from '../calc/fuelling/axes.ts';
import { type Danger, DangerWatch } from '../calc/fuelling/dangers.ts';
import { type Drive, DriveRecorder } from '../calc/fuelling/drive.ts';
import { type FuellingResult, fuelling } from '../calc/fuelling/fuelling.ts';
import { quantiles } from '../calc/fuelling/quantiles.ts';
import { SAFE_TARGET, type TargetAt, type TargetPoint, targetTable } from '../calc/fuelling/target.ts';
import { type LogTally, type OpenLog, openLog } from './read-log.ts';
import type { Assignment, OpenColumn, UsedColumn } from './recognise.ts';
import { settle } from './settle.ts';

export interface LogOrder {
  readonly bytes: AsyncIterable<Uint8Array>;
  /** How many bytes there will be, for saying how far it has come. */
  readonly size: number;
  readonly assigned: (fingerprint: string) => Assignment;
  /** What an AFR in the log is divided by. */
  readonly stoichiometricAfr: number;
  /** The table's breakpoints; without them usual ones over where the engine has been. */
  readonly axes: Partial<Axes>;
  /** λ wanted; without it the log's own column, and where it has none, safe figures. */
  readonly target: readonly TargetPoint[] | undefined;
  readonly capRatio: number;
  /** Correct also what a leak or a misfire may have spoilt. */
  readonly correctSuspects?: boolean;
  readonly breathe: () => Promise<void>;
  readonly progress: (said: string) => void;
}

/** A log that cannot be read before somebody says which column is which. */
export interface Undecided {
  readonly kind: 'undecided';
  readonly fingerprint: string;
  readonly names: readonly string[];
  readonly open: readonly OpenColumn[];
  readonly columns: readonly UsedColumn[];
}

export interface Analysed {
  readonly kind: 'analysed';
  readonly fingerprint: string;
  readonly columns: readonly UsedColumn[];
  readonly unused: readonly string[];
  readonly tally: LogTally;
  readonly axes: Axes;
  readonly axesFrom: 'given' | 'usual';
  readonly targetFrom: 'given' | 'log' | 'safe';
  readonly result: FuellingResult;
  readonly dangers: readonly Danger[];
  readonly notes: readonly string[];
}

/** Reads a log to its end and works out what it says of the fuel table, letting others in between all the time. */
export async function analyse(order: LogOrder): Promise<Analysed | Undecided> {
  const counted = counting(order.bytes);
  const log = await openLog({ ...order, bytes: counted.bytes });
  const { columns, open, unused } = log.recognised;
  const { fingerprint } = log;
  if (open.length > 0) {
    await log.close();
    return { kind: 'undecided', fingerprint, names: log.layout.names, open, columns };
  }
  const { targetAt, targetFrom } = targetOf(order.target, columns);
  const recorder = new DriveRecorder();
  const watch = new DangerWatch(targetAt);
  for await (const rows of log.rows()) {
    recorder.add(rows);
    watch.add(rows);
    order.progress(howFar(counted.read(), order.size, log));
  }
  const drive = recorder.finish();
  const notes = [...settle(drive), ...(recorder.full ? ['Only its first fourteen hours are used.'] : [])];
  const given = order.axes.loadKPa !== undefined && order.axes.speedRpm !== undefined;
  const axes = { ...usualAxes(rangeOf(drive)), ...order.axes };
  order.progress(`${log.tally.rows.toLocaleString('en-GB')} rows read. Fitting the table.`);
  const result = await inSteps(
    fuelling({
      drive,
      axes,
      targetAt,
      capRatio: order.capRatio,
      correctSuspects: order.correctSuspects ?? false,
    }),
    order.breathe,
  );
  return {
    kind: 'analysed',
    fingerprint,
    columns,
    unused,
    tally: log.tally,
    axes,
    axesFrom: given ? 'given' : 'usual',
    targetFrom,
    result,
    dangers: watch.finish(),
    notes: [...notes, ...result.notes],
  };
}

/** Runs a sum that stops often, with a breath between. */
export async function inSteps<Value>(
  work: Generator<void, Value>,
  breathe: () => Promise<void>,
): Promise<Value> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    await breathe();
  }
}

function targetOf(
  given: readonly TargetPoint[] | undefined,
  columns: readonly UsedColumn[],
): { readonly targetAt: TargetAt; readonly targetFrom: Analysed['targetFrom'] } {
  const safe = targetTable(SAFE_TARGET);
  if (given !== undefined) return { targetAt: targetTable(given), targetFrom: 'given' };
  const logged = columns.some(({ role }) => role === 'targetLambda');
  return {
    targetAt: logged ? (load, rpm, lambda) => (Number.isNaN(lambda) ? safe(load, rpm) : lambda) : safe,
    targetFrom: logged ? 'log' : 'safe',
  };
}

function rangeOf({ at }: Drive): {
  readonly loadKPa: readonly [number, number];
  readonly speedRpm: readonly [number, number];
} {
  const running = (at.speedRpm ?? new Float32Array(0)).filter((rpm) => rpm > 400);
  const [lowRpm = 800, highRpm = 3000] = quantiles(running, [0.005, 0.995]);
  const [lowKPa = 30, highKPa = 100] = quantiles(at.loadKPa ?? [], [0.01, 0.995]);
  return { loadKPa: [lowKPa, highKPa], speedRpm: [lowRpm, highRpm] };
}

function counting(bytes: AsyncIterable<Uint8Array>) {
  let read = 0;
  async function* count(): AsyncGenerator<Uint8Array> {
    for await (const piece of bytes) {
      read += piece.byteLength;
      yield piece;
    }
  }
  return { bytes: count(), read: () => read };
}

function howFar(read: number, size: number, { tally }: OpenLog): string {
  const share = size > 0 ? `${Math.min(99, Math.floor((100 * read) / size))} %, ` : '';
  return `Reading the log: ${share}${tally.rows.toLocaleString('en-GB')} rows.`;
}
