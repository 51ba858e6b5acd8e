import Database from 'better-sqlite3';
import { StoreProblem, type StoreTrouble } from '../core/store-problem.ts';

/** SQLite's primary result codes that say something about the disk or the file rather than about our SQL. */
const FROM_SQLITE: Readonly<Record<string, readonly [StoreTrouble, string]>> = {
  SQLITE_FULL: [
    'full',
    'Not saved: the disk is full. Everything saved before is kept. Free some space, then send it again.',
  ],
  SQLITE_READONLY: [
    'read-only',
    'Nothing was saved: the file of records may not be written to. Everything saved before is kept. ' +
      'Check who owns the file and whether its disk is mounted read-only.',
  ],
  SQLITE_BUSY: [
    'busy',
    'Not saved: another program is writing to the records at this moment. Send it again; ' +
      'if it stays so, close whatever else has the file open.',
  ],
  SQLITE_IOERR: [
    'disk-error',
    'Not saved: the disk answered with an error. Everything saved before is kept as far as the disk can read it. ' +
      'Check the disk, then start again.',
  ],
  SQLITE_CORRUPT: [
    'damaged',
    'The file of records is damaged. Nothing was written. Stop the program, put the file aside and restore the newest backup.',
  ],
  SQLITE_NOTADB: [
    'not-a-database',
    'The file is not a file of records, or its beginning has been overwritten. Nothing was written to it. ' +
      'Check the path, or put the file aside and restore the newest backup.',
  ],
  SQLITE_CANTOPEN: [
    'cannot-open',
    'The file of records cannot be opened. Check that its folder exists and that this user may read and write there.',
  ],
};

/** What Node's file functions answer, by the same words. Codes: POSIX.1-2017, <errno.h>. */
const FROM_SYSTEM: Readonly<Record<string, string>> = {
  ENOSPC: 'SQLITE_FULL',
  EDQUOT: 'SQLITE_FULL',
  EROFS: 'SQLITE_READONLY',
  EIO: 'SQLITE_IOERR',
  EACCES: 'SQLITE_CANTOPEN',
  EPERM: 'SQLITE_CANTOPEN',
  ENOTDIR: 'SQLITE_CANTOPEN',
  EEXIST: 'SQLITE_CANTOPEN',
};

/**
 * The same error, in words for people when it is the disk's or the file's doing; any other error comes back untouched.
 * Extended codes (`SQLITE_IOERR_FSYNC`) speak with their primary code's words; the original is kept as the cause.
 */
export function inPlainWords(error: unknown): unknown {
  const known = FROM_SQLITE[codeOf(error)];
  return known === undefined ? error : new StoreProblem(known[0], known[1], { cause: error });
}

function codeOf(error: unknown): string {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return '';
  if (error instanceof Database.SqliteError) return error.code.split('_').slice(0, 2).join('_');
  return FROM_SYSTEM[error.code] ?? '';
}
