import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What a program asked of the disk, in order, and when it said that something was saved. */
export type DiskEvent =
  | { readonly kind: 'create'; readonly path: string }
  | { readonly kind: 'write'; readonly path: string; readonly at: number; readonly bytes: Buffer }
  | { readonly kind: 'truncate'; readonly path: string; readonly size: number }
  | { readonly kind: 'remove'; readonly path: string }
  | { readonly kind: 'sync'; readonly path: string }
  | { readonly kind: 'ack'; readonly change: number };

/**
 * Whether system calls can be recorded here. Where the checks are meant to be complete (`CI` is set) it is an error if
 * not; elsewhere it is said aloud what was left out.
 */
export function canRecord(): boolean {
  if (spawnSync('strace', ['-o', '/dev/null', 'true']).status === 0) return true;
  const why = 'strace is not installed or may not trace here';
  if (process.env['CI'] !== undefined) throw new Error(`the power-cut proof cannot run: ${why}`);
  console.warn(`LEFT OUT: the power-cut proof of the records (${why})`);
  return false;
}

/** Runs a TypeScript file of ours under strace, to its end, and returns what it did to the files in `folder`. */
export function recordDisk(
  script: URL,
  args: readonly string[],
  folder: string,
  scratch: string,
): readonly DiskEvent[] {
  const log = join(scratch, 'system-calls');
  const calls =
    'trace=openat,write,pwrite64,pwritev,fdatasync,fsync,ftruncate,unlink,unlinkat,rename,renameat2';
  const strace = ['-f', '-y', '-xx', '-s', '1000000', '-e', calls, '-o', log];
  const run = spawnSync('strace', [...strace, process.execPath, script.pathname, ...args], {
    encoding: 'utf8',
  });
  if (run.status !== 0) throw new Error(`the recorded program failed: ${run.stderr}`);
  return wholeLines(readFileSync(log, 'latin1')).flatMap((line) => eventOf(line, folder));
}

/** Joins calls that another thread's line has split in two. */
function wholeLines(log: string): readonly string[] {
  const begun = new Map<string, string>();
  return log.split('\n').flatMap((line) => {
    const [, thread = '', rest = ''] = /^(\d+)\s+(.*)$/.exec(line) ?? [];
    const unfinished = /^(.*) <unfinished \.\.\.>$/.exec(rest)?.[1];
    if (unfinished !== undefined) {
      begun.set(thread, unfinished);
      return [];
    }
    const resumed = /^<\.\.\. \w+ resumed>(.*)$/.exec(rest)?.[1];
    return [resumed === undefined ? rest : (begun.get(thread) ?? '') + resumed];
  });
}

function eventOf(line: string, folder: string): readonly DiskEvent[] {
  const [, name = '', given = '', result = '-1'] = /^(\w+)\((.*)\)\s+= (.*)$/.exec(line) ?? [];
  if (result.startsWith('-1')) return [];
  const text = bytesOf(/"((?:\\x[0-9a-f]{2})*)"/.exec(given)?.[1]);
  const file = bytesOf(/^\d+<((?:\\x[0-9a-f]{2})*)>/.exec(given)?.[1]);
  if (name === 'write' && given.startsWith('1<')) {
    const change = /^ack (\d+)\n$/.exec(text.toString())?.[1];
    return change === undefined ? [] : [{ kind: 'ack', change: Number(change) }];
  }
  const path = (name === 'openat' || name === 'unlink' ? text : file).toString();
  if (!path.startsWith(folder) || path.endsWith('-shm')) return []; // shared memory is made anew after a crash
  const lastNumber = Number(/(\d+)$/.exec(given)?.[1]);
  switch (name) {
    case 'openat':
      return given.includes('O_CREAT') ? [{ kind: 'create', path }] : [];
    case 'pwrite64':
      return [{ kind: 'write', path, at: lastNumber, bytes: text }];
    case 'ftruncate':
      return [{ kind: 'truncate', path, size: lastNumber }];
    case 'unlink':
      return [{ kind: 'remove', path }];
    case 'fsync':
    case 'fdatasync':
      return [{ kind: 'sync', path }];
    default:
      throw new Error(`the recording has a call it does not understand: ${line.slice(0, 200)}`);
  }
}

/** strace's `\x41\x42` as bytes. */
function bytesOf(hex = ''): Buffer {
  return Buffer.from(hex.replaceAll('\\x', ''), 'hex');
}
