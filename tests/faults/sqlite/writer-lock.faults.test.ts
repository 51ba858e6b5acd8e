import { hostname } from 'node:os';
import { join } from 'node:path';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { holdWriterLock } from '../../../src/sqlite/writer-lock.ts';
import { startChild } from '../../support/child.ts';
import { scratchFolder } from '../../support/scratch-folder.ts';

const SCRIPT = new URL('../../support/lock-holder.ts', import.meta.url);
const SINCE_MS = Temporal.Instant.from('2026-11-24T08:15:00Z').epochMilliseconds;
const US = { pid: process.pid, host: hostname(), sinceMs: SINCE_MS + 1, what: 'this bot' };

describe('the writer’s lock', () => {
  it('refuses a second process, saying who holds it and since when, and is free when the first is killed', async () => {
    const path = join(scratchFolder(), 'writer.lock');
    const other = startChild(SCRIPT, [path, String(SINCE_MS)]);
    const pid = (await other.nextLine())?.replace('holds ', '');
    expect(() => holdWriterLock(path, US)).toThrow(
      expect.objectContaining({
        name: 'StoreProblem',
        trouble: 'in-use',
        message: expect.stringContaining(
          `in use by the other bot (process ${pid} on ${hostname()}, since 2026-11-24 08:15 UTC)`,
        ) as unknown,
      }),
    );
    await other.kill();
    holdWriterLock(path, US).release();
  });

  it('refuses another process while we hold it, and names us', async () => {
    const path = join(scratchFolder(), 'writer.lock');
    const lock = holdWriterLock(path, US);
    const other = startChild(SCRIPT, [path]);
    expect(await other.nextLine()).toContain(`in use by this bot (process ${process.pid} on `);
    lock.release();
    expect(await startChild(SCRIPT, [path]).nextLine()).toMatch(/^holds /);
  });

  it('is given to exactly one of several that start at once', async () => {
    const path = join(scratchFolder(), 'writer.lock');
    for (let round = 0; round < 3; round += 1) {
      const starters = [0, 1, 2, 3].map((since) => startChild(SCRIPT, [path, String(since)]));
      const answers = await Promise.all(starters.map((starter) => starter.nextLine()));
      expect(answers.filter((answer) => answer?.startsWith('holds '))).toHaveLength(1);
      expect(
        answers.filter((answer) => answer?.startsWith('refused The records are in use by ')),
      ).toHaveLength(3);
      await Promise.all(starters.map((starter) => starter.kill()));
    }
  });

  it('is not lost when memory is cleaned up and nobody kept it', async () => {
    const path = join(scratchFolder(), 'writer.lock');
    holdWriterLock(path, US);
    setFlagsFromString('--expose-gc');
    const cleanUp = runInNewContext('gc') as () => void; // the flag makes it a global of new contexts only
    cleanUp();
    await nextTurn(); // connections found to be without owner are closed after the clean-up
    expect(() => holdWriterLock(path, { ...US, pid: 1 })).toThrow('in use by this bot');
  });
});
