import Database from 'better-sqlite3';
import { UserError } from '../core/user-error.ts';
import type { Change, History, Step } from './history.ts';
import { openNeighbours, type RowName } from './neighbours.ts';
import type { RecordedTable } from './recorded-tables.ts';
import { openRestorer } from './restore.ts';

/** Characters of another change's words quoted in a refusal, so that the whole stays short enough to read at the car. */
const QUOTE = 100;

/** The work of an undo; runs inside the change that records it. `authors` are those whose changes it may take back. */
export type UndoWork = (changeId: number, authors: readonly string[] | null) => { value: null; said: string };

/**
 * Undo replays a change's writes backwards. Each row passes through the states it had, in reverse, so no constraint can
 * fail that did not then, unless another row has changed since; and that is refused by the name of who changed it.
 *
 * A row of a `standing` table that the change opened on its way (the supplier of a first order) stays where others have
 * come to rest on it or have changed it: taking the order back does not need the supplier gone.
 */
export function openUndo(
  db: Database.Database,
  tables: readonly RecordedTable[],
  history: History,
  standing: readonly string[],
): UndoWork {
  const restorer = openRestorer(db);
  const neighbours = openNeighbours(db, tables);

  return (changeId, authors) => {
    const change = requireUndoable(history, changeId, authors);
    const written = history.steps(changeId).map((step) => ({ step, table: tableOf(tables, step.table) }));
    const all = netEffect(written);
    const kept = keptRows(all);
    const steps = written.filter(({ step }) => !kept.has(nameOf(step)));
    const rows = new Map([...all].filter(([name]) => !kept.has(name)));
    for (const row of rows.values()) requireUnchanged(row, changeId);
    for (const row of rows.values()) requireNothingHangsOn(row, rows, changeId);
    db.pragma('defer_foreign_keys = ON');
    for (const one of steps.toReversed()) takeBack(one, changeId);
    for (const row of rows.values()) requireRestored(row, changeId);
    requireNoOthersTouched(rows, changeId);
    return { value: null, said: wording(history, change) };
  };

  /** Opened by the change in a standing table, and needed or changed by others since; none when nothing else is left. */
  function keptRows(all: Rows): ReadonlySet<string> {
    const opened = [...all].filter(
      ([, { table, before, after }]) => before === null && after !== null && standing.includes(table.name),
    );
    const kept = new Set<string>();
    const isTakenBack = (row: RowName): boolean => all.has(nameOf(row)) && !kept.has(nameOf(row));
    for (let known = -1; known < kept.size; ) {
      known = kept.size;
      for (const [name, { table, rowId, after }] of opened) {
        const needed = neighbours.hangingOn(table, rowId, isTakenBack) !== null;
        if (needed || !restorer.isAs(table, rowId, after)) kept.add(name);
      }
    }
    return kept.size === all.size ? new Set() : kept;
  }

  function requireUnchanged({ table, rowId, before, after }: Net, changeId: number): void {
    if ([before, after].some((image) => restorer.hasOutgrown(table, image))) throw rebuilt();
    if (restorer.isAs(table, rowId, after)) return;
    throw changedSince(history.lastOfRow(table.name, rowId, changeId));
  }

  function requireNothingHangsOn({ table, rowId, before, after }: Net, rows: Rows, changeId: number): void {
    if (before !== null || after === null) return;
    const other = neighbours.hangingOn(table, rowId, (row) => rows.has(nameOf(row)));
    if (other !== null) throw changedSince(history.lastOfRow(other.table, other.rowId, changeId));
  }

  function takeBack({ table, step }: Written, changeId: number): void {
    try {
      restorer.takeBack(table, step);
    } catch (error) {
      if (!(error instanceof Database.SqliteError) || error.code !== 'SQLITE_CONSTRAINT_UNIQUE') throw error;
      const other = neighbours.inThePlaceOf(table, step, error.message);
      throw changedSince(other === null ? null : history.lastOfRow(other.table, other.rowId, changeId));
    }
  }

  function requireRestored({ table, rowId, before }: Net, changeId: number): void {
    const gone = neighbours.missingParent(table, rowId);
    if (gone !== null) {
      throw changedSince(gone.rowId === null ? null : history.lastOfRow(gone.table, gone.rowId, changeId));
    }
    if (!restorer.isAs(table, rowId, before)) {
      throw new Error(`undo of change ${changeId} did not restore row ${rowId} of ${table.name}`);
    }
  }

  function requireNoOthersTouched(rows: Rows, changeId: number): void {
    const undoing = db.prepare<[], number>('SELECT id FROM temp.open_change').pluck().get();
    if (undoing === undefined) throw new Error('an undo runs inside a change');
    const other = history.steps(undoing).find((step) => !rows.has(nameOf(step)));
    if (other !== undefined) {
      throw changedSince(history.lastOfRow(other.table, other.rowId, changeId, undoing));
    }
  }
}

interface Written {
  readonly table: RecordedTable;
  readonly step: Step;
}

/** What a change did to one row in all, however often it wrote it. */
interface Net {
  readonly table: RecordedTable;
  readonly rowId: number;
  readonly before: string | null;
  readonly after: string | null;
}

type Rows = ReadonlyMap<string, Net>;

const nameOf = ({ table, rowId }: RowName): string => `${table} ${rowId}`;

function netEffect(steps: readonly Written[]): Rows {
  const rows = new Map<string, Net>();
  for (const { table, step } of steps) {
    const { rowId, before, after } = step;
    const first = rows.get(nameOf(step));
    rows.set(nameOf(step), { table, rowId, before: first === undefined ? before : first.before, after });
  }
  return rows;
}

function requireUndoable(history: History, changeId: number, authors: readonly string[] | null): Change {
  const change = history.find(changeId);
  if (change === null || history.steps(changeId).length === 0) {
    throw new UserError(
      'not-found',
      `Nothing was undone: there is no change #${changeId} with anything to take back.`,
    );
  }
  if (authors !== null && !authors.includes(change.personId)) {
    throw new UserError(
      'not-yours',
      `Nothing was undone: ${quoted(change)} is ${change.personName}'s to undo.`,
    );
  }
  const undo = history.undoneBy(changeId);
  if (undo !== null) {
    throw new UserError(
      'already-done',
      `${undo.personName} has undone this already. Undo that to have it back.`,
    );
  }
  return change;
}

function tableOf(tables: readonly RecordedTable[], name: string): RecordedTable {
  const table = tables.find((candidate) => candidate.name === name);
  if (table === undefined) throw rebuilt();
  return table;
}

function rebuilt(): UserError {
  return new UserError(
    'changed-since',
    'Nothing was undone: an update of the program has rebuilt these records since. Make the change by hand.',
  );
}

/** `since` is null when no change in the log explains it: the file was edited with another tool. */
function changedSince(since: Change | null): UserError {
  const why =
    since === null
      ? 'the records are no longer as that change left them, and the log does not say who changed them. Make the change by hand.'
      : `${since.personName} has changed this since: ${quoted(since)}. Undo that first, or make the change by hand.`;
  return new UserError('changed-since', `Nothing was undone: ${why}`);
}

function quoted({ said }: Change): string {
  return `“${said.length > QUOTE ? `${said.slice(0, QUOTE - 1)}…` : said}”`;
}

/** An undo of an undo puts back; what is named is always the change that began it. */
function wording(history: History, change: Change): string {
  let root = change;
  let undone = true;
  while (root.undoes !== null) {
    const earlier = history.find(root.undoes);
    if (earlier === null) throw new Error(`change ${root.undoes} has left the log`);
    root = earlier;
    undone = !undone;
  }
  return `${undone ? 'Undone' : 'Put back'}: ${root.said}`;
}
