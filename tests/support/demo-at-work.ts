import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { instantOf } from '../../src/core/time.ts';
import { demo, loadDemo } from '../../src/demo/demo.ts';
import { type Local, openLocal } from '../../src/local.ts';
import { HandClock } from './channel.ts';

/** The whole program as `npm start` opens it, on a clock set by hand. */
export interface DemoAtWork extends Local, AsyncDisposable {
  readonly clock: HandClock;
  /** Lines of the log, and what the connection was lost for; none in a good run. */
  readonly logged: readonly string[];
}

/** Opens it with the demonstration at this time in London, in a folder of its own; `await using` stops and removes it. */
export async function demoAtWork(day = '2026-12-09', time = '09:00'): Promise<DemoAtWork> {
  const folder = mkdtempSync(join(tmpdir(), 'chargehand-'));
  const clock = new HandClock(instantOf(day, time, 'Europe/London'));
  const logged: string[] = [];
  const local = await openLocal({
    file: join(folder, 'local.sqlite'),
    clock,
    timer: clock,
    guildName: demo.team,
    channels: [demo.channel],
    crew: demo.crew,
    starters: demo.starters,
    writeLog: (line) => void logged.push(line),
    onLost: (why) => void logged.push(`lost: ${why}`),
  });
  await loadDemo(local.chargehand, local.channel, clock.nowMs());
  return {
    ...local,
    clock,
    logged,
    async [Symbol.asyncDispose]() {
      await local.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
