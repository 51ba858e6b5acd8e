import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { onTestFinished } from 'vitest';
import type { WireTap } from './wire-tap.ts';

const BOT = new URL('./bot-child.ts', import.meta.url).pathname;

/** The bot as a process of its own that can be killed where it stands. */
export interface MortalBot {
  readonly dead: boolean;
  /** Resolves once it has ended, however. */
  readonly gone: Promise<void>;
  /** Lets it look at the reminders as of now; resolves when it has looked, or is gone. */
  look(nowMs: number): Promise<void>;
  /** Kills it as the nth request from now reaches the channel, before or after it takes effect there. */
  killAt(nth: number, when: 'before' | 'after'): void;
  kill(): void;
  errors(): string;
}

/** Starts it on a channel; resolves when it is connected. @throws Error with what it said, when it ended instead. */
export async function mortalBot(
  wire: WireTap,
  token: string,
  folder: string,
  nowMs: number,
): Promise<MortalBot> {
  const child: ChildProcess = spawn(
    process.execPath,
    ['--disable-warning=ExperimentalWarning', BOT, wire.apiUrl, token, folder, String(nowMs)],
    { stdio: ['pipe', 'pipe', 'pipe'] },
  );
  const { stdin, stdout, stderr } = child;
  if (stdin === null || stdout === null || stderr === null) throw new Error('a child without pipes');
  let errors = '';
  stderr.on('data', (chunk: Buffer) => {
    errors += chunk.toString();
  });
  stdin.on('error', () => {}); // it was killed before it read the line
  let dead = false;
  const kill = (): void => {
    dead = true;
    child.kill('SIGKILL');
  };
  onTestFinished(kill);
  const gone = once(child, 'close').then(() => {
    dead = true;
  });
  const lines = createInterface({ input: stdout })[Symbol.asyncIterator]();
  const nextLine = async (): Promise<string | undefined> => {
    const { value, done } = await lines.next();
    return done === true ? undefined : value;
  };
  if ((await nextLine()) !== 'ready') throw new Error(`the bot did not start: ${errors}`);
  return {
    get dead() {
      return dead;
    },
    gone,
    kill,
    errors: () => errors,
    async look(atMs) {
      stdin.write(`${atMs}\n`);
      await Promise.race([nextLine(), gone]);
    },
    killAt(nth, when) {
      let left = nth;
      wire.onRequest = (phase) => {
        if (phase !== when || dead) return;
        left -= 1;
        if (left === 0) kill();
      };
    },
  };
}
