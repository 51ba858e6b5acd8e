import { dirname, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { StoreProblem } from '../core/store-problem.ts';
import { inPlainWords } from './in-plain-words.ts';
import { prepareFolder } from './local-disk.ts';

export interface LockHolder {
  readonly pid: number;
  readonly host: string;
  readonly sinceMs: number;
  /** What the process is: "the bot", "the demonstration". */
  readonly what: string;
}

export interface WriterLock {
  release(): void;
}

/** Two processes that start together may overwrite each other's name; each then steps back and tries again. */
const ATTEMPTS = 20;

/** A connection that nobody refers to is closed when memory is cleaned up, and its lock with it: so we refer to it. */
const held = new Set<Database.Database>();

/**
 * Takes the right to be the one process that writes the records, for life. The lock is the kernel's, on a small database
 * of its own at `path`: it goes with the process however that ends, and needs nobody to clear it. The holder's name is
 * committed first, where others can read it, and then a write transaction is kept open.
 *
 * @throws StoreProblem 'in-use' saying who holds it and since when.
 */
export function holdWriterLock(path: string, holder: LockHolder): WriterLock {
  prepareFolder(dirname(resolve(path)));
  const db = connect(path);
  try {
    for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
      if (!writeName(db, holder) || !beginHolding(db)) throw inUse(nameIn(db));
      if (sameHolder(nameIn(db), holder)) return keep(db);
      db.exec('ROLLBACK');
    }
    throw inUse(nameIn(db));
  } catch (error) {
    db.close();
    throw inPlainWords(error);
  }
}

function connect(path: string): Database.Database {
  try {
    return new Database(path, { timeout: 0 });
  } catch (error) {
    throw inPlainWords(error);
  }
}

function keep(db: Database.Database): WriterLock {
  held.add(db);
  return {
    release() {
      held.delete(db);
      db.close();
    },
  };
}

function writeName(db: Database.Database, holder: LockHolder): boolean {
  return unlessBusy(() => {
    db.transaction(() => {
      db.exec(
        `CREATE TABLE IF NOT EXISTS holder (
           one INTEGER PRIMARY KEY CHECK (one = 1), pid INTEGER, host TEXT, since_ms INTEGER, what TEXT) STRICT`,
      );
      db.prepare('REPLACE INTO holder VALUES (1, @pid, @host, @sinceMs, @what)').run(holder);
    }).immediate();
  });
}

function beginHolding(db: Database.Database): boolean {
  return unlessBusy(() => db.exec('BEGIN IMMEDIATE'));
}

function unlessBusy(step: () => unknown): boolean {
  try {
    step();
    return true;
  } catch (error) {
    if (error instanceof Database.SqliteError && error.code === 'SQLITE_BUSY') return false;
    throw error;
  }
}

/** The name last committed; null while the very first holder is still writing it. */
function nameIn(db: Database.Database): LockHolder | null {
  let name: LockHolder | undefined;
  const readable = unlessBusy(() => {
    const written = db.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'holder'").get() !== undefined;
    if (written) {
      name = db.prepare<[], LockHolder>('SELECT pid, host, since_ms AS sinceMs, what FROM holder').get();
    }
  });
  return readable ? (name ?? null) : null;
}

function sameHolder(name: LockHolder | null, holder: LockHolder): boolean {
  return (
    name !== null && name.pid === holder.pid && name.host === holder.host && name.sinceMs === holder.sinceMs
  );
}

function inUse(name: LockHolder | null): StoreProblem {
  const who =
    name === null
      ? 'another process that has just started'
      : `${name.what} (process ${name.pid} on ${name.host}, since ${minuteOf(name.sinceMs)})`;
  return new StoreProblem(
    'in-use',
    `The records are in use by ${who}. Only one process may write them, so this one stops; nothing was changed. ` +
      'Stop the other one first, or work with it.',
  );
}

function minuteOf(ms: number): string {
  return Temporal.Instant.fromEpochMilliseconds(ms)
    .toString({ smallestUnit: 'minute' })
    .replace('T', ' ')
    .replace('Z', ' UTC');
}
