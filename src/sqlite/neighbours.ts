import type { Database } from 'better-sqlite3';
import type { Step } from './history.ts';
import { valueIn } from './images.ts';
import type { RecordedTable } from './recorded-tables.ts';

export interface RowName {
  readonly table: string;
  readonly rowId: number;
}

/** Other rows that stand in the way of putting a row back. */
export interface Neighbours {
  /** A row that hangs on this one and that `touched` does not name: it would lose its hold if this one went. */
  hangingOn(table: RecordedTable, rowId: number, touched: (row: RowName) => boolean): RowName | null;
  /** The row, gone since, that this one needs by one of its foreign keys; `rowId` is null where the log knows none. */
  missingParent(table: RecordedTable, rowId: number): { table: string; rowId: number | null } | null;
  /** The row that has taken a value only one may have, told from SQLite's message about a step's image. */
  inThePlaceOf(table: RecordedTable, step: Step, message: string): RowName | null;
}

export function openNeighbours(db: Database, tables: readonly RecordedTable[]): Neighbours {
  const removed = db
    .prepare<[{ parent: string; column: string; value: unknown }], number>(
      `SELECT row_id FROM change_row WHERE table_name = @parent AND after IS NULL
         AND json_extract(before, '$.' || @column) = @value ORDER BY id DESC LIMIT 1`,
    )
    .pluck();

  return {
    hangingOn(table, rowId, touched) {
      for (const child of tables) {
        for (const { column, parent, parentColumn } of child.references) {
          if (parent !== table.name) continue;
          const rows = db
            .prepare<[number], number>(
              `SELECT c."${child.key}" FROM main."${parent}" p JOIN main."${child.name}" c ON c."${column}" = p."${parentColumn}"
               WHERE p."${table.key}" = ?`,
            )
            .pluck();
          for (const id of rows.all(rowId)) {
            const row = { table: child.name, rowId: id };
            if (!touched(row)) return row;
          }
        }
      }
      return null;
    },
    missingParent(table, rowId) {
      for (const { column, parent, parentColumn } of table.references) {
        const value = db
          .prepare<[number], unknown>(
            `SELECT c."${column}" FROM main."${table.name}" c WHERE c."${table.key}" = ? AND c."${column}" IS NOT NULL
               AND NOT EXISTS (SELECT 1 FROM main."${parent}" p WHERE p."${parentColumn}" = c."${column}")`,
          )
          .pluck()
          .get(rowId);
        if (value === undefined) continue;
        return { table: parent, rowId: removed.get({ parent, column: parentColumn, value }) ?? null };
      }
      return null;
    },
    inThePlaceOf(table, { before, rowId }, message) {
      const columns = table.columns.filter((column) =>
        message.split(/[\s,]+/).includes(`${table.name}.${column}`),
      );
      if (columns.length === 0 || before === null) return null;
      const same = columns.map((column) => `r."${column}" = ${valueIn(column)}`).join(' AND ');
      const id = db
        .prepare<[{ image: string; rowId: number }], number>(
          `SELECT r."${table.key}" FROM main."${table.name}" r WHERE ${same} AND r."${table.key}" <> @rowId`,
        )
        .pluck()
        .get({ image: before, rowId });
      return id === undefined ? null : { table: table.name, rowId: id };
    },
  };
}
