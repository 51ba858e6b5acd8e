import type { Database } from 'better-sqlite3';
import { imageOf } from './images.ts';
import type { RecordedTable } from './recorded-tables.ts';

/**
 * Makes the database itself log every write of this connection to a recorded table, and refuse one made while no change
 * is open. The triggers are TEMP: they are made from the schema at each open and are never in the file. The number of
 * the open change stands in `temp.open_change` and so leaves with its transaction, whatever becomes of it.
 */
export function installTriggers(db: Database, tables: readonly RecordedTable[]): void {
  db.exec('CREATE TEMP TABLE open_change (id INTEGER PRIMARY KEY)');
  for (const table of tables) {
    db.exec(trigger(table, 'INSERT', 'NULL', imageOf(table, 'NEW')));
    db.exec(trigger(table, 'UPDATE', imageOf(table, 'OLD'), imageOf(table, 'NEW')));
    db.exec(trigger(table, 'DELETE', imageOf(table, 'OLD'), 'NULL'));
  }
}

function trigger(
  table: RecordedTable,
  event: 'INSERT' | 'UPDATE' | 'DELETE',
  before: string,
  after: string,
): string {
  const row = event === 'DELETE' ? 'OLD' : 'NEW';
  const keepsId =
    event === 'UPDATE'
      ? `SELECT RAISE(ABORT, 'the id of a row of ${table.name} never changes')
           WHERE OLD."${table.key}" IS NOT NEW."${table.key}";`
      : '';
  return `
    CREATE TEMP TRIGGER "log ${event} ${table.name}" AFTER ${event} ON main."${table.name}" BEGIN
      SELECT RAISE(ABORT, '${table.name} was written outside a change') WHERE NOT EXISTS (SELECT 1 FROM open_change);
      ${keepsId}
      INSERT INTO change_row (change_id, table_name, row_id, before, after)
        SELECT id, '${table.name}', ${row}."${table.key}", image.before, image.after
        FROM open_change, (SELECT ${before} AS before, ${after} AS after) image
        WHERE image.before IS NOT image.after;
    END`;
}
