import type { Database } from 'better-sqlite3';
import type { Step } from './history.ts';
import { imageOf, stillAs, valueIn } from './images.ts';
import type { RecordedTable } from './recorded-tables.ts';

/** Reads rows as images and puts images back; the SQL half of an undo. */
export interface Restorer {
  /** Whether a row still is what its image says; a null image says that there is none. */
  isAs(table: RecordedTable, rowId: number, image: string | null): boolean;
  /** Whether the table has lost a column that the image has. */
  hasOutgrown(table: RecordedTable, image: string | null): boolean;
  /** Takes one logged write back. Columns that came after the image keep their value, or get their default. */
  takeBack(table: RecordedTable, step: Step): void;
}

export function openRestorer(db: Database): Restorer {
  const agree = db
    .prepare<[{ current: string | null; image: string | null }], number>(
      `SELECT ${stillAs('@current', '@image')}`,
    )
    .pluck();
  const keysOf = db.prepare<[string], string>('SELECT key FROM json_each(?)').pluck();

  return {
    isAs(table, rowId, image) {
      const current = db
        .prepare<[number], string>(
          `SELECT ${imageOf(table, 'r')} FROM main."${table.name}" r WHERE r."${table.key}" = ?`,
        )
        .pluck()
        .get(rowId);
      return agree.get({ current: current ?? null, image }) === 1;
    },
    hasOutgrown(table, image) {
      return image !== null && keysOf.all(image).some((column) => !table.columns.includes(column));
    },
    takeBack(table, { rowId, before, after }) {
      if (before === null) {
        db.prepare(`DELETE FROM main."${table.name}" WHERE "${table.key}" = ?`).run(rowId);
        return;
      }
      const columns = keysOf.all(before);
      db.prepare(after === null ? insertOf(table, columns) : updateOf(table, columns)).run({ image: before });
    },
  };
}

function insertOf(table: RecordedTable, columns: readonly string[]): string {
  const names = columns.map((column) => `"${column}"`).join(', ');
  return `INSERT INTO main."${table.name}" (${names}) SELECT ${columns.map(valueIn).join(', ')}`;
}

function updateOf(table: RecordedTable, columns: readonly string[]): string {
  const sets = columns.map((column) => `"${column}" = ${valueIn(column)}`).join(', ');
  return `UPDATE main."${table.name}" SET ${sets} WHERE "${table.key}" = ${valueIn(table.key)}`;
}
