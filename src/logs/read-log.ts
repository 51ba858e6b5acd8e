import type { Channel, Rows } from '../calc/fuelling/drive.ts';
import { UserError } from '../core/user-error.ts';
import { isReading } from './cell.ts';
import { RisingTime } from './clock.ts';
import { textOf } from './decode.ts';
import { type Layout, layoutOf } from './layout.ts';
import { type Assignment, fingerprintOf, type Recognised, recognise, type UsedColumn } from './recognise.ts';
import { recordReader } from './records.ts';
import { RowsBuilder } from './rows-builder.ts';

/** So much of a log is looked at before anything is said of its columns, in characters. */
const HEAD = 96 * 1024;
/** Rows read before others are let in: a few milliseconds' worth. */
const AT_A_TIME = 400;
/** Text taken apart at a time, in characters: a millisecond or two. */
const PIECE = 32_768;
/** Ten drives of fourteen hours: a log with more is no log. */
const MOST_ROWS = 5_000_000;

/** A log that has been opened: its columns, and its readings still to come. */
export interface OpenLog {
  readonly layout: Layout;
  readonly fingerprint: string;
  readonly recognised: Recognised;
  /** The readings, a batch at a time, in rising time. To be read once, or closed. */
  rows(): AsyncGenerator<Rows>;
  /** What has been read and mended so far. */
  readonly tally: LogTally;
  close(): Promise<void>;
}

export interface LogTally {
  rows: number;
  characters: number;
  /** Rows without a time, or out of their order. */
  withoutTime: number;
  repeatedHeaders: number;
  notRows: number;
  clockResets: number;
  clockJumps: number;
}

export interface LogQuestion {
  readonly bytes: AsyncIterable<Uint8Array>;
  /** What the crew has said of this log's columns, by the mark of its header. */
  readonly assigned: (fingerprint: string) => Assignment;
  readonly stoichiometricAfr: number;
  /** Lets others in between; called every few milliseconds of work. */
  readonly breathe: () => Promise<void>;
}

/**
 * Opens a log: finds out how it is packed, written and laid out, and which column is which. Nothing of it stands in memory but what
 * is being read.
 *
 * @throws UserError when it is no text, or holds no columns of numbers under names.
 */
export async function openLog({
  bytes,
  assigned,
  stoichiometricAfr,
  breathe,
}: LogQuestion): Promise<OpenLog> {
  const text = textOf(bytes);
  let head = '';
  let ended = false;
  while (head.length < HEAD && !ended) {
    const next = await text.next();
    if (next.done) ended = true;
    else head += next.value;
  }
  if (head.trim() === '') throw new UserError('bad-input', 'That file is empty. Nothing was changed.');
  const layout = await layoutOf(head);
  await breathe();
  const fingerprint = fingerprintOf(layout);
  const assignment = assigned(fingerprint);
  const recognised = recognise(layout, assignment, stoichiometricAfr);
  const tally: LogTally = {
    rows: 0,
    characters: 0,
    withoutTime: 0,
    repeatedHeaders: 0,
    notRows: 0,
    clockResets: 0,
    clockJumps: 0,
  };
  async function* body(): AsyncGenerator<string> {
    yield head.slice(layout.bodyAt);
    if (!ended) yield* text;
  }
  return {
    layout,
    fingerprint,
    recognised,
    tally,
    rows: () => readRows({ body: body(), layout, recognised, assignment, stoichiometricAfr, tally, breathe }),
    close: async () => void (await text.return(undefined)),
  };
}

interface Reading {
  readonly body: AsyncGenerator<string>;
  readonly layout: Layout;
  readonly recognised: Recognised;
  readonly assignment: Assignment;
  readonly stoichiometricAfr: number;
  readonly tally: LogTally;
  readonly breathe: () => Promise<void>;
}

async function* readRows(reading: Reading): AsyncGenerator<Rows> {
  const { layout, tally, breathe } = reading;
  let plan = planOf(reading.recognised.columns);
  const rising = new RisingTime();
  let builder = new RowsBuilder(plan.channels);
  const reader = recordReader(layout.delimiter);
  let since = 0;
  const take = async function* (records: readonly (readonly string[])[]): AsyncGenerator<Rows> {
    for (const record of records) {
      if (++since >= AT_A_TIME) {
        since = 0;
        await breathe();
      }
      const time = rising.next(plan.time(record[plan.timeAt] ?? ''));
      if (time === undefined) {
        const again = headerAgain(record, reading);
        if (again === undefined) {
          if (record.some((cell) => cell.trim() !== '')) countStray(record, tally);
          continue;
        }
        tally.repeatedHeaders++;
        if (again === 'same') continue;
        yield* builder.finish();
        plan = planOf(again);
        builder = new RowsBuilder(plan.channels);
        continue;
      }
      if (++tally.rows > MOST_ROWS) throw tooLong();
      const full = builder.add(time, record, plan.cells);
      if (full !== undefined) yield full;
    }
  };
  try {
    for await (const text of reading.body) {
      for (let at = 0; at < text.length; at += PIECE) {
        const piece = text.slice(at, at + PIECE);
        tally.characters += piece.length;
        yield* take(readable(() => reader.take(piece)));
        await breathe();
      }
    }
    yield* take(await reader.finish().catch(unreadable));
    yield* builder.finish();
    tally.clockResets = rising.resets;
    tally.clockJumps = rising.jumps;
  } finally {
    reader.close();
    await reading.body.return(undefined);
  }
}

/** What to do with each row. */
interface Plan {
  readonly timeAt: number;
  readonly time: (cell: string) => number;
  readonly channels: readonly Channel[];
  /** Fills in the readings of one row, in the channels' order. */
  readonly cells: (record: readonly string[], into: Float64Array) => void;
}

function planOf(columns: readonly UsedColumn[]): Plan {
  const time = columns.find(({ role }) => role === 'timeS');
  const timeAt = time?.index ?? 0;
  const of = (role: UsedColumn['role']): UsedColumn | undefined =>
    columns.find((column) => column.role === role);
  const [load, vacuum, baro, trim, longTrim] = [
    of('loadKPa'),
    of('vacuumKPa'),
    of('barometerKPa'),
    of('trimRatio'),
    of('longTrimRatio'),
  ];
  const plain = columns.filter(({ role }) => !SPECIAL.has(role));
  const channels: Channel[] = plain.map(({ role }) => role as Channel); // the roles that are no channels are special
  const steps: ((record: readonly string[]) => number)[] = plain.map(
    ({ index, reader }) =>
      (record) =>
        reader.read(record[index] ?? ''),
  );
  const air = (record: readonly string[]): number => {
    const value = baro === undefined ? Number.NaN : baro.reader.read(record[baro.index] ?? '');
    return Number.isNaN(value) ? 101.3 : value;
  };
  if (load !== undefined) {
    const gauge = load.reader.as.endsWith('above the air outside');
    channels.push('loadKPa');
    steps.push((record) => load.reader.read(record[load.index] ?? '') + (gauge ? air(record) - 101.3 : 0));
  } else if (vacuum !== undefined) {
    channels.push('loadKPa');
    steps.push((record) => air(record) - vacuum.reader.read(record[vacuum.index] ?? ''));
  }
  if (trim !== undefined || longTrim !== undefined) {
    channels.push('trimRatio');
    const part = (column: UsedColumn | undefined, record: readonly string[]): number => {
      const value = column === undefined ? 1 : column.reader.read(record[column.index] ?? '');
      return Number.isNaN(value) ? 1 : value;
    };
    steps.push((record) => part(trim, record) * part(longTrim, record));
  }
  return {
    timeAt,
    time: time?.reader.read ?? (() => Number.NaN),
    channels,
    cells(record, into) {
      for (const [place, step] of steps.entries()) into[place] = step(record);
    },
  };
}

const SPECIAL: ReadonlySet<string> = new Set([
  'timeS',
  'dateOnly',
  'loadKPa',
  'vacuumKPa',
  'barometerKPa',
  'trimRatio',
  'longTrimRatio',
]);

/** A header in the midst of a log: the same as above, or one whose columns stand otherwise from there on. */
function headerAgain(
  record: readonly string[],
  { layout, assignment, stoichiometricAfr }: Reading,
): 'same' | readonly UsedColumn[] | undefined {
  const names = record.map((cell) => cell.trim());
  if (names.length === layout.names.length && names.every((name, index) => name === layout.names[index]))
    return 'same';
  const known = names.filter((name) => layout.names.includes(name)).length;
  const readings = names.filter(isReading).length;
  if (known < 3 || readings > names.length / 2) return undefined;
  const places = names.map((name) => layout.names.indexOf(name));
  const moved: Layout = {
    ...layout,
    names,
    units: places.map((place) => layout.units[place] ?? ''),
    sample: layout.sample.map((row) => places.map((place) => row[place] ?? '')),
  };
  const { columns, open } = recognise(moved, assignment, stoichiometricAfr);
  return open.length > 0 ? undefined : columns;
}

function countStray(record: readonly string[], tally: LogTally): void {
  const readings = record.filter((cell) => cell.trim() !== '' && isReading(cell)).length;
  if (readings > record.length / 2) tally.withoutTime++;
  else tally.notRows++;
}

const tooLong = (): UserError =>
  new UserError(
    'out-of-range',
    'That log has more than five million rows. Nothing was changed. Send one drive at a time.',
  );

/** Reads on, with words for a person when the library cannot. */
function readable<Value>(read: () => Value): Value {
  try {
    return read();
  } catch (error) {
    return unreadable(error);
  }
}

function unreadable(cause: unknown): never {
  throw Object.assign(
    new UserError(
      'bad-input',
      'That log cannot be read to its end: its columns fall apart on the way. Nothing was changed. Export it once more as CSV.',
    ),
    { cause },
  );
}
