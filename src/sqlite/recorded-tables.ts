import type { Database } from 'better-sqlite3';

/** A single-column foreign key of a recorded table. */
interface Reference {
  readonly column: string;
  readonly parent: string;
  readonly parentColumn: string;
}

/** What the change log has to know of a table: its name, its INTEGER PRIMARY KEY, its columns and what it hangs on. */
export interface RecordedTable {
  readonly name: string;
  readonly key: string;
  readonly columns: readonly string[];
  readonly references: readonly Reference[];
}

/** The change log's own tables; recording them would never end. */
const OWN_TABLES: readonly string[] = ['change', 'change_row'];

/**
 * Every table of the file but the log's own and the named bookkeeping ones. Taken from the schema itself, so that a
 * table added by a later migration is recorded without anybody having to remember it.
 * @throws Error for the developer when a table cannot be recorded, or an unrecorded one does not exist.
 */
export function recordedTables(db: Database, unrecorded: readonly string[]): readonly RecordedTable[] {
  const all = db
    .prepare<[], { name: string; type: string; wr: number }>(
      `SELECT name, type, wr FROM pragma_table_list
       WHERE schema = 'main' AND type IN ('table', 'virtual') AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'
       ORDER BY name`,
    )
    .all();
  const unknown = unrecorded.filter((name) => !all.some((table) => table.name === name));
  if (unknown.length > 0) throw new Error(`no such table to leave unrecorded: ${unknown.join(', ')}`);
  const left = new Set([...OWN_TABLES, ...unrecorded]);
  const recorded = all.filter((table) => !left.has(table.name));
  return recorded.map((table) => {
    if (table.type === 'virtual' || table.wr === 1)
      throw unrecordable(table.name, 'is virtual or WITHOUT ROWID');
    return describe(db, table.name);
  });
}

function describe(db: Database, name: string): RecordedTable {
  const columns = db
    .prepare<[string], { name: string; type: string; pk: number }>(
      'SELECT name, type, pk FROM pragma_table_info(?)',
    )
    .all(name);
  for (const word of [name, ...columns.map((column) => column.name)]) {
    if (!/^[A-Za-z_]\w*$/.test(word))
      throw unrecordable(name, `has a name that is not a plain word: ${word}`);
  }
  const [key, ...more] = columns.filter((column) => column.pk > 0);
  if (key === undefined || more.length > 0 || key.type.toUpperCase() !== 'INTEGER') {
    throw unrecordable(name, 'has no INTEGER PRIMARY KEY of one column to name its rows by');
  }
  return {
    name,
    key: key.name,
    columns: columns.map((column) => column.name),
    references: referencesOf(db, name),
  };
}

function referencesOf(db: Database, name: string): readonly Reference[] {
  const rows = db
    .prepare<[string], { seq: number; parent: string; column: string; parentColumn: string }>(
      `SELECT f.seq, f."table" AS parent, f."from" AS "column", coalesce(f."to", k.name) AS parentColumn
       FROM pragma_foreign_key_list(?) f LEFT JOIN pragma_table_info(f."table") k ON k.pk = 1`,
    )
    .all(name);
  if (rows.some((row) => row.seq > 0)) throw unrecordable(name, 'has a foreign key of several columns');
  return rows.map(({ column, parent, parentColumn }) => ({ column, parent, parentColumn }));
}

function unrecordable(table: string, why: string): Error {
  return new Error(
    `table ${table} ${why}; the change log cannot record it. Change it, or name it as unrecorded.`,
  );
}
