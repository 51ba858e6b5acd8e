import { hostname } from 'node:os';
import type { LockHolder } from './sqlite/writer-lock.ts';

/** How this process names itself to one that wants the same records. */
export function thisProcess(sinceMs: number): LockHolder {
  return { pid: process.pid, host: hostname(), sinceMs, what: 'Chargehand' };
}
