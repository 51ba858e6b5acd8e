import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import Database from 'better-sqlite3';
import { StoreProblem } from '../core/store-problem.ts';
import { type CopyFacts, type CopyFinding, countRows } from './check-copy.ts';
import { inPlainWords } from './in-plain-words.ts';
import { expired, RETENTION, type Retention } from './retention.ts';
import { syncFile, syncFolder } from './sync.ts';

export interface Backup extends CopyFacts {
  readonly path: string;
  readonly takenAtMs: number;
}

/** Pages copied before the program gets a turn: a few milliseconds' work. */
const PAGES_A_TURN = 100;

const NAME = /^(\d{4}-\d\d-\d\d)T(\d\d)(\d\d)(\d\d)Z\.sqlite$/;

/**
 * Copies the records while they are in use, checks the copy from end to end beside the running program, and only then
 * gives it its name: `2026-11-24T081500Z.sqlite`, with its SHA-256 beside it in the form that `sha256sum -c` reads.
 * Call it on the connection that writes; writes of any other would make the copy start again.
 *
 * @throws StoreProblem when there is no room, or the copy is not sound; no backup of that name is left then.
 */
export async function makeBackup(db: Database.Database, folder: string, nowMs: number): Promise<Backup> {
  const path = join(folder, backupName(nowMs));
  const part = `${path}.part`;
  try {
    mkdirSync(folder, { recursive: true });
    rmSync(part, { force: true });
    await db.backup(part, { progress: () => PAGES_A_TURN });
    const rows = countRows(db); // in the turn in which the last page was copied: nothing can have been written since
    leaveWal(part);
    syncFile(part);
    const facts = requireSound(part, await checkBeside(part), rows);
    renameSync(part, path);
    writeFileSync(`${path}.sha256`, `${facts.sha256}  ${backupName(nowMs)}\n`);
    syncFile(`${path}.sha256`);
    syncFolder(folder);
    return { path, takenAtMs: nowMs, ...facts };
  } catch (error) {
    if (existsSync(part)) rmSync(part);
    throw inPlainWords(error);
  }
}

/** Removes the backups that have had their time, and says which. Files of any other name are left alone. */
export function removeExpired(folder: string, retention: Retention = RETENTION): readonly string[] {
  const backups = readdirSync(folder).flatMap((name) => {
    const takenAtMs = timeIn(name);
    return takenAtMs === null ? [] : [{ name, takenAtMs }];
  });
  const going = new Set(
    expired(
      backups.map(({ takenAtMs }) => takenAtMs),
      retention,
    ),
  );
  const names = backups.filter(({ takenAtMs }) => going.has(takenAtMs)).map(({ name }) => name);
  for (const name of names) {
    rmSync(join(folder, name));
    rmSync(join(folder, `${name}.sha256`), { force: true });
  }
  return names.toSorted();
}

export function backupName(nowMs: number): string {
  const second = Temporal.Instant.fromEpochMilliseconds(nowMs).toString({ smallestUnit: 'second' });
  return `${second.replaceAll(':', '')}.sqlite`;
}

function timeIn(name: string): number | null {
  const [, day, hour, minute, second] = NAME.exec(name) ?? [];
  if (day === undefined) return null;
  return Temporal.Instant.from(`${day}T${hour}:${minute}:${second}Z`).epochMilliseconds;
}

/** Makes the copy one file that can be read where nothing may be written; only the live file needs its log. */
function leaveWal(path: string): void {
  const copy = new Database(path);
  copy.pragma('journal_mode = DELETE');
  copy.close();
}

function checkBeside(path: string): Promise<CopyFinding> {
  const { promise, resolve, reject } = Promise.withResolvers<CopyFinding>();
  const worker = new Worker(new URL('./check-copy-worker.ts', import.meta.url), { workerData: path });
  worker.once('message', resolve);
  worker.once('error', reject);
  worker.once('exit', (code) => reject(new Error(`the check of ${path} ended with ${code} and no answer`)));
  return promise;
}

function requireSound(path: string, finding: CopyFinding, live: CopyFacts['rows']): CopyFacts {
  if ('fault' in finding) throw unsound(path, finding.fault);
  const [there, here] = [JSON.stringify(finding.facts.rows), JSON.stringify(live)];
  if (there !== here) throw unsound(path, `it holds ${there} of ${here}`);
  return finding.facts;
}

function unsound(path: string, fault: string): StoreProblem {
  return new StoreProblem(
    'damaged',
    `The backup ${path} was not sound and has been thrown away. The records themselves were not touched. ` +
      'Check the disk that the backups are on; the next backup tries again.',
    { cause: new Error(fault) },
  );
}
