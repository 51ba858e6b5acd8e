import Database from 'better-sqlite3';
import { BOOKKEEPING } from '../../src/records/team-record.ts';

/** Everything the crew's record holds, table by table, without the bookkeeping around it. */
export function tableState(file: string): Readonly<Record<string, readonly unknown[]>> {
  const db = new Database(file, { readonly: true });
  try {
    const unrecorded: readonly string[] = BOOKKEEPING;
    const tables = db
      .prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
      .pluck()
      .all()
      .filter((name) => !unrecorded.includes(name));
    return Object.fromEntries(
      tables.map((name) => [name, db.prepare(`SELECT * FROM "${name}" ORDER BY id`).all()]),
    );
  } finally {
    db.close();
  }
}

/** What SQLite itself says of the file; `ok` when all is well. */
export function integrityOf(file: string): unknown {
  const db = new Database(file, { readonly: true });
  try {
    return db.pragma('integrity_check', { simple: true });
  } finally {
    db.close();
  }
}
