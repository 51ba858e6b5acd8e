import './require-runtime.ts';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import type { Result } from './bot/request.ts';
import { clockAt, systemClock, systemTimer } from './core/clock.ts';
import { StoreProblem } from './core/store-problem.ts';
import { instantOf } from './core/time.ts';
import { UserError } from './core/user-error.ts';
import { demo } from './demo/demo.ts';
import { openLocal } from './local.ts';
import { openHeardBook } from './say/heard.ts';
import { openScript, type Spoken } from './say/script.ts';

const USAGE = `npm run say -- [--json] [--db FILE] [--at 2026-12-21T08:31] [--as NAME] [--files FOLDER] [LINE ...]
Without a LINE, lines are read from standard input.`;

try {
  process.exitCode = await say();
} catch (error) {
  if (!(error instanceof UserError || error instanceof StoreProblem)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 1;
}

/** Runs the lines given, or those on standard input; resolves to the exit code. */
async function say(): Promise<number> {
  const { json, db, at, as, files, lines } = readArguments();
  const folder = db === undefined ? mkdtempSync(join(tmpdir(), 'chargehand-')) : undefined;
  const clock = at === undefined ? undefined : clockAt(systemClock.nowMs());
  const results = new Map<string, Result>();
  const heard = openHeardBook();
  const { channel, chargehand, stop } = await openLocal({
    file: db ?? join(folder ?? '', 'crew.sqlite'),
    clock: clock ?? systemClock,
    timer: systemTimer,
    guildName: demo.team,
    channels: [demo.channel],
    crew: [as],
    writeLog: (line) => void process.stderr.write(line),
    onLost: (why) => {
      throw new Error(`the connection was lost: ${why}`);
    },
    onResult: (interactionId, result) => void results.set(interactionId, result),
    onHeard: heard.note,
  });
  try {
    const setClock = (wall: string): void => {
      if (!clock) throw new UserError('bad-input', '@at needs a clock that can be set: start with --at.');
      const { zone } = chargehand.teams.at(channel.guildId).record.settings.read();
      clock.set(instantAt(wall, zone));
    };
    if (at !== undefined) setClock(at);
    const script = openScript({
      channel,
      chargehand,
      results,
      heard: (messageId) => heard.of(messageId),
      as,
      setClock,
      ...(files === undefined ? {} : { filesTo: files }),
    });
    let failed = 0;
    for await (const line of lines) {
      if (line.trim() === '') continue;
      const spoken = await script.run(line.trim());
      print(spoken, json);
      if (!spoken.ok) failed++;
    }
    return failed > 0 ? 1 : 0;
  } finally {
    await stop();
    if (folder !== undefined) rmSync(folder, { recursive: true });
  }
}

interface Arguments {
  readonly json: boolean;
  readonly db?: string;
  readonly at?: string;
  readonly as: string;
  readonly files?: string;
  readonly lines: Iterable<string> | AsyncIterable<string>;
}

/** @throws UserError with the usage when an option is not known. */
function readArguments(): Arguments {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: {
        json: { type: 'boolean', default: false },
        db: { type: 'string' },
        at: { type: 'string' },
        as: { type: 'string', default: demo.crew[0] ?? 'Crew' },
        files: { type: 'string' },
      },
    });
    const { json, db, at, as, files } = values;
    const lines = positionals.length > 0 ? positionals : typedLines();
    return {
      json,
      as,
      lines,
      ...(db === undefined ? {} : { db }),
      ...(at === undefined ? {} : { at }),
      ...(files === undefined ? {} : { files: folderOf(files) }),
    };
  } catch (error) {
    if (error instanceof TypeError) throw new UserError('bad-input', `${error.message}\n${USAGE}`);
    throw error;
  }
}

/** @throws UserError when the folder cannot be made. */
function folderOf(path: string): string {
  try {
    mkdirSync(path, { recursive: true });
    return path;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    throw new UserError('bad-input', `--files cannot be used as a folder (${code}: ${path}).`);
  }
}

/** Opened only when it is read: an interface opened earlier drops the lines that come before anybody listens. */
async function* typedLines(): AsyncGenerator<string> {
  yield* createInterface({ input: process.stdin });
}

/** @throws UserError when it is no date with a time. */
function instantAt(wall: string, zone: string): number {
  const [day = '', time = '00:00'] = wall.split('T');
  try {
    return instantOf(day, time, zone);
  } catch (error) {
    if (error instanceof RangeError)
      throw new UserError('bad-input', `"${wall}" is no time. Type it like 2026-12-21T08:31.`);
    throw error;
  }
}

function print(spoken: Spoken, json: boolean): void {
  process.stdout.write(json ? `${JSON.stringify(spoken)}\n` : `${spoken.text}\n\n`);
}
