import type { Database } from 'better-sqlite3';
import { imageOf, stillAs } from './images.ts';
import type { RecordedTable } from './recorded-tables.ts';

/** A row that is not as the newest entry of the log left it. */
export interface Disagreement {
  readonly table: string;
  readonly rowId: number;
  /** Its values differ, it is gone, or the log has never heard of it (or knows it as deleted). */
  readonly how: 'differs' | 'gone' | 'unknown';
}

/**
 * Compares every record with the change log, which holds each value a second time, in another page of the file. Finds
 * what SQLite's own checks cannot: a value turned into another valid value by the disk, and edits past the program.
 * Rows that a migration has written are found too, for the log has not seen them.
 */
export function disagreements(db: Database, tables: readonly RecordedTable[]): readonly Disagreement[] {
  return tables.flatMap((table) => {
    const rows = db
      .prepare<[string], { rowId: number; how: Disagreement['how'] }>(
        `WITH newest AS (
           SELECT row_id, after, max(id) FROM change_row WHERE table_name = ? GROUP BY row_id
         ), live AS (
           SELECT r."${table.key}" AS row_id, ${imageOf(table, 'r')} AS image FROM main."${table.name}" r
         )
         SELECT live.row_id AS rowId, iif(after IS NULL, 'unknown', 'differs') AS how
           FROM live LEFT JOIN newest USING (row_id) WHERE NOT ${stillAs('live.image', 'newest.after')}
         UNION ALL
         SELECT row_id, 'gone' FROM newest WHERE after IS NOT NULL AND row_id NOT IN (SELECT row_id FROM live)
         ORDER BY rowId`,
      )
      .all(table.name);
    return rows.map((row) => ({ table: table.name, ...row }));
  });
}
