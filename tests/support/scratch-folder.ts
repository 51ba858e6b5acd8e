import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder of its own for the running test, gone when the test is. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'chargehand-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
