import Database from 'better-sqlite3';
import { UserError } from '../core/user-error.ts';
import type { RecordedTable } from './recorded-tables.ts';

/** A value of a recorded column; STRICT tables of ours hold no BLOB. */
export type Cell = string | number | null;
export type Row = Readonly<Record<string, Cell>>;

/** Everything recorded of a team, table by table, as it stands. */
export interface WholeRecord {
  /** The last step of the schema it was written under: `0007-fluids`. */
  readonly step: string;
  readonly tables: Readonly<Record<string, readonly Row[]>>;
}

/** Reads the whole of a record, and puts another in its place. */
export interface WholeRecordDesk {
  read(): WholeRecord;
  /**
   * Takes every recorded row away and writes these instead; call it inside a change, whose undo brings the old ones
   * back. Columns that came after the copy was made get their defaults.
   * @throws UserError 'bad-input' when the copy is of a newer program, or holds something no record can.
   */
  replaceWith(whole: WholeRecord): void;
}

/** @param steps names of the schema's steps in order, the last one being this file's. */
export function openWholeRecord(
  db: Database.Database,
  tables: readonly RecordedTable[],
  steps: readonly string[],
): WholeRecordDesk {
  return {
    read: () => ({
      step: steps.at(-1) ?? '',
      tables: Object.fromEntries(
        tables.map(({ name, key }) => [
          name,
          db.prepare<[], Row>(`SELECT * FROM main."${name}" ORDER BY "${key}"`).all(),
        ]),
      ),
    }),
    replaceWith(whole) {
      if (!steps.includes(whole.step)) {
        throw refused('It was written by a newer Chargehand than this one. Update this one first.');
      }
      db.pragma('defer_foreign_keys = ON');
      for (const { name } of tables.toReversed()) db.prepare(`DELETE FROM main."${name}"`).run();
      for (const table of tables) {
        const insert = inserter(db, table);
        for (const row of whole.tables[table.name] ?? []) insert(row);
      }
      const dangling = db.pragma('foreign_key_check');
      if (!Array.isArray(dangling) || dangling.length > 0) {
        throw refused('Some of its entries name others that are not in it.');
      }
    },
  };
}

/** Writes rows into one table; those of the same columns, which is nearly all, by the same statement. */
function inserter(db: Database.Database, table: RecordedTable): (row: Row) => void {
  const statements = new Map<string, Database.Statement>();
  return (row) => {
    const columns = Object.keys(row);
    const key = columns.join();
    const statement = statements.get(key) ?? insertion(db, table, columns);
    statements.set(key, statement);
    try {
      statement.run(row);
    } catch (error) {
      if (!(error instanceof Database.SqliteError) || !error.code.startsWith('SQLITE_CONSTRAINT'))
        throw error;
      throw refused(`An entry of its ${table.name} cannot be: ${error.message}.`);
    }
  };
}

/** @throws UserError when the copy has a column that the table has not. */
function insertion(
  db: Database.Database,
  table: RecordedTable,
  columns: readonly string[],
): Database.Statement {
  const unknown = columns.find((column) => !table.columns.includes(column));
  if (unknown !== undefined) throw refused(`Its ${table.name} has a ${unknown}, which no record here has.`);
  const names = columns.map((column) => `"${column}"`).join(', ');
  const values = columns.map((column) => `@${column}`).join(', ');
  return db.prepare(`INSERT INTO main."${table.name}" (${names}) VALUES (${values})`);
}

function refused(why: string): UserError {
  return new UserError(
    'bad-input',
    `This copy cannot be brought in. ${why} Nothing was changed. Export it again, and bring that in as it comes.`,
  );
}
