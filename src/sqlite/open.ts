import { existsSync, mkdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { StoreProblem } from '../core/store-problem.ts';
import { checkCopy } from './check-copy.ts';
import { inPlainWords } from './in-plain-words.ts';
import { prepareFolder } from './local-disk.ts';
import { type Migration, migrate, schemaVersion } from './migrate.ts';
import { syncFile, syncFolder } from './sync.ts';

/** Milliseconds a statement may wait for a lock. The whole program waits with it, and an answer is due within 3,000. */
const BUSY_TIMEOUT_MS = 250;

/** Before it, two connections writing at a checkpoint could lose a saved transaction (sqlite.org/wal.html, "WAL-reset"). */
const OLDEST_SQLITE = [3, 51, 3] as const;

export interface OpenOptions {
  readonly migrations: readonly Migration[];
  readonly nowMs: number;
  /** Where the copy made before a migration goes; `backups/` beside the file when left out. */
  readonly backups?: string;
}

/**
 * Opens a team's file so that what is said to be saved is saved: write-ahead log, one fsync per commit, checked; then
 * brings it to the newest schema, with a copy made first. `:memory:` is for tests and skips what needs a disk.
 *
 * @throws StoreProblem with a sentence for people; the file is closed and, but for finished migrations, as it was.
 */
export function openDatabase(path: string, options: OpenOptions): Database.Database {
  const onDisk = path !== ':memory:';
  const folder = dirname(resolve(path));
  if (onDisk) prepareFolder(folder);
  const isNew = onDisk && !existsSync(path);
  const db = connect(path);
  try {
    requireSqlite(db);
    setPragmas(db, onDisk);
    requireSound(db, path);
    if (onDisk) copyBeforeMigrating(db, options, join(folder, 'backups'));
    migrate(db, options.migrations);
    requireDurable(db, onDisk);
    if (isNew) syncFolder(folder);
    return db;
  } catch (error) {
    db.close();
    throw inPlainWords(error);
  }
}

function connect(path: string): Database.Database {
  try {
    return new Database(path, { timeout: BUSY_TIMEOUT_MS });
  } catch (error) {
    throw inPlainWords(error);
  }
}

function requireSqlite(db: Database.Database): void {
  const version = db.prepare<[], string>('SELECT sqlite_version()').pluck().get() ?? '';
  if (isAtLeast(version, OLDEST_SQLITE)) return;
  throw new StoreProblem(
    'old-library',
    `SQLite ${version} can lose saved records; ${OLDEST_SQLITE.join('.')} or newer is needed. ` +
      'Nothing was written. Install the dependencies again from the lock file.',
  );
}

/** Compares dotted version numbers part by part. */
export function isAtLeast(version: string, least: readonly number[]): boolean {
  const parts = version.split('.').map(Number);
  for (const [index, wanted] of least.entries()) {
    const have = parts[index] ?? 0;
    if (have !== wanted) return have > wanted;
  }
  return true;
}

function setPragmas(db: Database.Database, onDisk: boolean): void {
  const mode = db.pragma('journal_mode = WAL', { simple: true });
  if (onDisk && mode !== 'wal') {
    throw new StoreProblem(
      'not-durable',
      `The file of records cannot keep a write-ahead log here (it answered "${String(mode)}"). Nothing was written. ` +
        'Move it to an ordinary disk of this machine.',
    );
  }
  db.pragma('synchronous = FULL');
  // macOS only: a plain fsync there leaves the data in the drive's own cache (sqlite.org/pragma.html#pragma_fullfsync).
  db.pragma('fullfsync = ON');
  db.pragma('checkpoint_fullfsync = ON');
  db.pragma('foreign_keys = ON');
  db.pragma('trusted_schema = OFF');
  db.pragma('cell_size_check = ON');
  // Without it REPLACE removes rows unseen by the change log's triggers (sqlite.org/lang_conflict.html).
  db.pragma('recursive_triggers = ON');
  db.pragma('temp_store = MEMORY');
}

function requireSound(db: Database.Database, path: string): void {
  const finding = db.pragma('quick_check(1)', { simple: true });
  if (finding === 'ok') return;
  throw new StoreProblem(
    'damaged',
    `The file of records ${path} is damaged. Nothing was written. Put it aside, keep it, and restore the newest backup.`,
    { cause: new Error(String(finding)) },
  );
}

function copyBeforeMigrating(db: Database.Database, options: OpenOptions, beside: string): void {
  const from = schemaVersion(db);
  if (from === 0 || from >= options.migrations.length) return;
  const folder = options.backups ?? beside;
  mkdirSync(folder, { recursive: true });
  const copy = join(folder, `before-step-${from + 1}-${options.nowMs}.sqlite`);
  db.prepare('VACUUM INTO ?').run(copy);
  syncFile(copy);
  syncFolder(folder);
  const finding = checkCopy(copy);
  if ('facts' in finding) return;
  throw new StoreProblem(
    'damaged',
    `The records need an update of their form, but the copy made first (${copy}) is not sound, so it was not begun. ` +
      'No record was changed. Check the disk that the copies are on, then start again.',
    { cause: new Error(finding.fault) },
  );
}

/**
 * SQLite reads back `synchronous = 2` until the first write and only then what is truly in force, so we write first:
 * the schema version onto itself.
 */
function requireDurable(db: Database.Database, onDisk: boolean): void {
  db.pragma(`user_version = ${schemaVersion(db)}`);
  const inForce = db.pragma('synchronous', { simple: true });
  if (!onDisk || inForce === 2) return;
  throw new StoreProblem(
    'not-durable',
    `SQLite would not sync each save to the disk (synchronous is ${String(inForce)}, 2 is needed). ` +
      'No record was written. Report this: it must not happen.',
  );
}
