import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';

export type Program = 'main' | 'say';

export interface Started {
  /** The next line it prints, or null when it prints no more. */
  nextLine(): Promise<string | null>;
  /** Types a line on its standard input. */
  type(line: string): void;
  /** Ends its standard input. */
  endInput(): void;
  signal(name: NodeJS.Signals): void;
  /** Its exit code and everything it printed that was not read as a line, once it has ended. */
  ended(): Promise<Ended>;
}

export interface Ended {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface StartOptions {
  readonly args?: readonly string[];
  /** Instead of all that this process has but the path; nothing of the tester's own settings gets in. */
  readonly environment?: Readonly<Record<string, string>>;
  /** The folder it runs in: one of its own, so that no .env of the project is read. */
  readonly folder: string;
}

/** No program here runs longer than this; one that hangs is killed. */
const LONGEST_MS = 50_000;

/** Starts a program of ours as its npm script does. */
export function startProgram(
  program: Program,
  { args = [], environment = {}, folder }: StartOptions,
): Started {
  const script = new URL(`../../src/${program}.ts`, import.meta.url).pathname;
  const child = spawn(process.execPath, ['--disable-warning=ExperimentalWarning', script, ...args], {
    cwd: folder,
    env: { PATH: process.env['PATH'] ?? '', TMPDIR: folder, ...environment },
    timeout: LONGEST_MS,
    killSignal: 'SIGKILL',
  });
  let stdout = '';
  let stderr = '';
  child.stdout.on('data', (chunk: Buffer) => {
    stdout += chunk.toString();
  });
  child.stderr.on('data', (chunk: Buffer) => {
    stderr += chunk.toString();
  });
  child.stdin.on('error', () => {}); // it ended without reading what was typed
  const closed = once(child, 'close');
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  return {
    async nextLine() {
      const line = await lines.next();
      return line.done === true ? null : line.value;
    },
    type: (line) => void child.stdin.write(`${line}\n`),
    endInput: () => void child.stdin.end(),
    signal: (name) => void child.kill(name),
    async ended() {
      await closed;
      return { code: child.exitCode, stdout, stderr };
    },
  };
}

/** Runs it to its end, with these lines on its standard input. */
export async function runProgram(
  program: Program,
  options: StartOptions,
  input: readonly string[] = [],
): Promise<Ended> {
  const started = startProgram(program, options);
  for (const line of input) started.type(line);
  started.endInput();
  return started.ended();
}
