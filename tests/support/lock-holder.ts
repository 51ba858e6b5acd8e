import { hostname } from 'node:os';
import { holdWriterLock } from '../../src/sqlite/writer-lock.ts';

/** Takes the writer's lock at the given path, says so or why not, and stays until it is ended. */
const [path = '', sinceMs = '0'] = process.argv.slice(2);
try {
  holdWriterLock(path, {
    pid: process.pid,
    host: hostname(),
    sinceMs: Number(sinceMs),
    what: 'the other bot',
  });
  console.log(`holds ${process.pid}`);
  setInterval(() => undefined, 60_000);
} catch (error) {
  console.log(`refused ${error instanceof Error ? error.message : String(error)}`);
}
