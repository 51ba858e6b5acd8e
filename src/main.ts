import './require-runtime.ts';
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type Chargehand, startChargehand } from './chargehand.ts';
import { type Config, readConfig, TOKEN_REFUSED } from './config.ts';
import { systemClock, systemTimer } from './core/clock.ts';
import { StoreProblem } from './core/store-problem.ts';
import { UserError } from './core/user-error.ts';
import { demo, loadDemo } from './demo/demo.ts';
import { openLocal } from './local.ts';
import { openLog, redact } from './log.ts';
import { startTicker } from './reminders/ticker.ts';
import { holdWriterLock } from './sqlite/writer-lock.ts';
import { thisProcess } from './this-process.ts';

/** Exit codes for whoever looks after the process: 1 mend the settings, 2 start it again. */
const EXIT_SETTINGS = 1;
const EXIT_LOST = 2;

if (existsSync('.env')) process.loadEnvFile('.env');

const secrets = [process.env['DISCORD_TOKEN'] ?? ''];
const writeLog = (line: string): void => void process.stderr.write(line);
const log = openLog(writeLog, secrets);

process.on('uncaughtException', (fault) => {
  log.error(fault, 'stopped by a fault nothing caught; what was saved is kept');
  process.exit(EXIT_LOST);
});

try {
  await start(readConfig(process.env));
} catch (error) {
  giveUp(error);
}

async function start(config: Config): Promise<void> {
  makeFolder(config.dataFolder);
  const { chargehand, stop, ready } = config.platform
    ? await onPlatform(config.platform, config.dataFolder)
    : await onLocalChannel(config);
  const work = async (): Promise<void> => {
    await chargehand.tick();
    await chargehand.teams.backUp(systemClock.nowMs());
  };
  await work();
  const ticker = startTicker(work);
  const end = async (): Promise<void> => {
    await ticker.stop();
    await stop();
    process.exit(0);
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void end());
  process.stdout.write(`${ready}\n`);
}

/** @throws UserError when the place is taken or not ours to write to. */
function makeFolder(path: string): void {
  try {
    mkdirSync(path, { recursive: true });
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    throw new UserError(
      'bad-input',
      `CHARGEHAND_DATA cannot be used as a folder (${code}: ${path}). Name one that this user may write to, or leave it out for data/var.`,
    );
  }
}

interface Running {
  readonly chargehand: Chargehand;
  /** What to say once it can be used, and stopped. */
  readonly ready: string;
  stop(): Promise<void>;
}

async function onPlatform(platform: NonNullable<Config['platform']>, folder: string): Promise<Running> {
  const lock = holdWriterLock(join(folder, 'teams.lock'), thisProcess(systemClock.nowMs()));
  const chargehand = await startChargehand({
    ...platform,
    shelf: { folder },
    clock: systemClock,
    timer: systemTimer,
    log,
    onLost: lost,
  });
  return {
    chargehand,
    ready: 'Chargehand is on the platform. Type /help in a channel it can see.',
    async stop() {
      await chargehand.stop();
      lock.release();
    },
  };
}

async function onLocalChannel({ dataFolder, page }: Config): Promise<Running> {
  const { channel, chargehand, stop } = await openLocal({
    file: join(dataFolder, 'local.sqlite'),
    clock: systemClock,
    timer: systemTimer,
    ...page,
    guildName: demo.team,
    channels: [demo.channel],
    crew: demo.crew,
    starters: demo.starters,
    writeLog,
    onLost: lost,
  });
  await loadDemo(chargehand, channel, systemClock.nowMs());
  return { chargehand, stop, ready: `Chargehand is ready: open ${channel.pageUrl}` };
}

function lost(why: string): void {
  log.warn(`the connection is lost for good: ${why}`);
  process.exit(EXIT_LOST);
}

/** One sentence for what people can mend, the log for the rest; never a token. */
function giveUp(error: unknown): never {
  const sentence = sentenceFor(error);
  if (sentence === undefined) log.error(error, 'could not start');
  else process.stderr.write(`${redact(sentence, secrets)}\n`);
  process.exit(EXIT_SETTINGS);
}

function sentenceFor(error: unknown): string | undefined {
  if (error instanceof UserError || error instanceof StoreProblem) return error.message;
  if (!(error instanceof Error)) return undefined;
  const code = 'code' in error ? error.code : undefined;
  if (code === 'TokenInvalid') return TOKEN_REFUSED;
  if (code === 'EADDRINUSE') {
    return 'The page’s port is taken, perhaps by another Chargehand. Stop that one, or set CHARGEHAND_PORT to a free port.';
  }
  if (code === 'EADDRNOTAVAIL') {
    return 'CHARGEHAND_HOST is no address of this machine. Give one that is, or leave it out for this machine only.';
  }
  if (code === 'EACCES') {
    return 'CHARGEHAND_PORT is not this user’s to open. Give a port above 1023, or leave it out for 4747.';
  }
  if (code === 'ECONNREFUSED' || code === 'ENOTFOUND' || code === 'EAI_AGAIN') {
    return 'The platform cannot be reached. Check this machine’s network, then start again; nothing was lost.';
  }
  return undefined;
}
