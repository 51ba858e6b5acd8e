import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { onTestFinished } from 'vitest';

export interface Child {
  /** The next line the child prints, or null when it has ended. */
  nextLine(): Promise<string | null>;
  /** The kernel ends it where it stands: no handler runs, nothing is flushed. */
  kill(): Promise<void>;
  /** Its exit code, once it has ended by itself. */
  ended(): Promise<number | null>;
  errors(): string;
}

/** Starts a TypeScript file of ours as a process of its own, which does not outlive the test. */
export function startChild(script: URL, args: readonly string[], command: readonly string[] = []): Child {
  const [program = process.execPath, ...before] = [...command, process.execPath, script.pathname, ...args];
  const child: ChildProcess = spawn(program, before, { stdio: ['ignore', 'pipe', 'pipe'] });
  if (child.stdout === null || child.stderr === null) throw new Error('a child without pipes');
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  let errors = '';
  child.stderr.on('data', (chunk: Buffer) => {
    errors += chunk.toString();
  });
  const exit = once(child, 'close');
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  return {
    async nextLine() {
      const line = await lines.next();
      return line.done === true ? null : line.value;
    },
    async kill() {
      child.kill('SIGKILL');
      await exit;
    },
    async ended() {
      await exit;
      return child.exitCode;
    },
    errors: () => errors,
  };
}
