import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';
import Database from 'better-sqlite3';

/** What a copy holds, found by opening it as a restore would. */
export interface CopyFacts {
  /** Rows by table, in the order of the tables' names. */
  readonly rows: Readonly<Record<string, number>>;
  /** Lower-case hex, as `sha256sum` prints it. */
  readonly sha256: string;
}

/** A sound copy's facts, or the first fault found in it, in SQLite's words. */
export type CopyFinding = { readonly facts: CopyFacts } | { readonly fault: string };

const CHUNK_BYTES = 1024 * 1024;

/** Opens a copy for reading alone and goes through all of it: structure, indexes, foreign keys, number of rows. */
export function checkCopy(path: string): CopyFinding {
  try {
    const db = new Database(path, { readonly: true, fileMustExist: true });
    try {
      const fault = faultIn(db);
      return fault === null ? { facts: { rows: countRows(db), sha256: sha256Of(path) } } : { fault };
    } finally {
      db.close();
    }
  } catch (error) {
    if (error instanceof Database.SqliteError) return { fault: error.message };
    throw error;
  }
}

function faultIn(db: Database.Database): string | null {
  const structure = String(db.pragma('integrity_check(1)', { simple: true }));
  if (structure !== 'ok') return structure;
  const dangling = JSON.stringify(db.pragma('foreign_key_check'));
  return dangling === '[]' ? null : `foreign keys dangle: ${dangling}`;
}

export function countRows(db: Database.Database): Readonly<Record<string, number>> {
  const tables = db
    .prepare<[], string>(
      "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' ORDER BY name",
    )
    .pluck()
    .all();
  const count = (table: string) =>
    db
      .prepare<[], number>(`SELECT count(*) FROM main."${table.replaceAll('"', '""')}"`)
      .pluck()
      .get() ?? 0;
  return Object.fromEntries(tables.map((table) => [table, count(table)]));
}

function sha256Of(path: string): string {
  const hash = createHash('sha256');
  const chunk = Buffer.alloc(CHUNK_BYTES);
  const file = openSync(path, 'r');
  try {
    for (let read = readSync(file, chunk); read > 0; read = readSync(file, chunk))
      hash.update(chunk.subarray(0, read));
  } finally {
    closeSync(file);
  }
  return hash.digest('hex');
}
