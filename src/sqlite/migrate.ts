import type { Database } from 'better-sqlite3';
import { StoreProblem } from '../core/store-problem.ts';

/** One step of the schema. Steps are only ever added at the end; a released one is never edited. */
export interface Migration {
  /** The file's name, `0002-orders`. */
  readonly name: string;
  readonly sql: string;
}

/** How many steps a file has been through. */
export function schemaVersion(db: Database): number {
  return Number(db.pragma('user_version', { simple: true }));
}

/**
 * Brings a file up to the last of `migrations`, one transaction each: after a crash a file is at one step or the next,
 * never between. Foreign keys rest meanwhile, so that a table can be rebuilt, and are checked before each commit.
 * @throws StoreProblem 'newer' when the file has been through more steps than we know, 'migration-failed' when a step
 * fails; that step is rolled back.
 */
export function migrate(db: Database, migrations: readonly Migration[]): void {
  const from = schemaVersion(db);
  refuseNewer(from, migrations.length);
  if (from === migrations.length) return;
  db.pragma('foreign_keys = OFF');
  try {
    migrations.slice(from).forEach((step, index) => {
      takeStep(db, step, from + index + 1);
    });
  } finally {
    db.pragma('foreign_keys = ON');
  }
}

function refuseNewer(fileVersion: number, known: number): void {
  if (fileVersion <= known) return;
  throw new StoreProblem(
    'newer',
    `The file of records was written by a newer version of this program (step ${fileVersion}; this one knows ${known}). ` +
      'Nothing was changed. Start the newer version, or restore a backup made before the update.',
  );
}

function takeStep(db: Database, step: Migration, version: number): void {
  try {
    db.transaction(() => {
      db.exec(step.sql);
      const dangling = db.pragma('foreign_key_check');
      if (!Array.isArray(dangling) || dangling.length > 0) {
        throw new Error(`foreign keys dangle: ${JSON.stringify(dangling)}`);
      }
      db.pragma(`user_version = ${version}`);
    }).immediate();
  } catch (cause) {
    throw new StoreProblem(
      'migration-failed',
      `The records could not be brought to this version of the program: step ${step.name} failed and was taken back. ` +
        'No record was changed. Start the version you had before, and report this.',
      { cause },
    );
  }
}
