import { existsSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { z } from 'zod';
import { testChannel } from '../support/channel.ts';
import { type Ended, runProgram, type Started, startProgram } from '../support/program.ts';
import { scratchFolder } from '../support/scratch-folder.ts';
import { integrityOf, tableState } from '../support/table-state.ts';

/** Of a bot token's shape, and nobody's. */
const TOKEN = `${'A'.repeat(24)}.${'b'.repeat(6)}.${'C9_-'.repeat(8)}`;

const PageState = z.object({
  channelId: z.string(),
  starters: z.array(z.string()),
  people: z.array(z.object({ name: z.string() })),
  botOnline: z.boolean(),
  entries: z.array(z.unknown()),
});

interface Running extends Started {
  readonly url: string;
}

/** Starts the bot as `npm start` does, in a folder of its own; resolves when it has said where the page is. */
async function running(folder: string): Promise<Running> {
  const started = startProgram('main', {
    folder,
    environment: { CHARGEHAND_DATA: join(folder, 'data'), CHARGEHAND_PORT: '0' },
  });
  const line = await started.nextLine();
  const url = /^Chargehand is ready: open (http:\/\/127\.0\.0\.1:\d+\/)$/.exec(line ?? '')?.[1];
  if (url === undefined) throw new Error(`it said ${line}: ${(await started.ended()).stderr}`);
  return { ...started, url };
}

async function stateOf({ url }: Running) {
  const answer = await fetch(`${url}page-api/state?as=Ada`);
  return PageState.parse(await answer.json());
}

/** The days whose morning messages stand in the channel, one entry for each message. */
const morningsIn = ({ entries }: z.output<typeof PageState>): readonly string[] =>
  entries.flatMap((entry) => /### (Morning, [^"\\]+)/.exec(JSON.stringify(entry))?.[1] ?? []);

describe('npm start', () => {
  it('opens a page with the demonstration in it and its morning message, and ends cleanly when told to', async () => {
    const folder = scratchFolder();
    const bot = await running(folder);
    const page = await fetch(bot.url);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<html');
    const state = await stateOf(bot);
    expect(state.botOnline).toBe(true);
    expect(state.people.map(({ name }) => name)).toEqual(expect.arrayContaining(['Ada', 'Bram', 'Cleo']));
    expect(state.starters.length).toBeGreaterThan(2);
    expect(morningsIn(state)).toHaveLength(1);
    bot.signal('SIGTERM');
    const { code, stdout, stderr } = await bot.ended();
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout.trim().split('\n')).toHaveLength(1);
    const file = join(folder, 'data', 'local.sqlite');
    for (const wal of [`${file}-wal`, join(folder, 'data', 'local.channel.sqlite-wal')]) {
      expect(existsSync(wal) ? statSync(wal).size : 0, wal).toBe(0);
    }
    expect(integrityOf(file)).toBe('ok');
    expect(readdirSync(folder)).toEqual(['data']);
  });

  it('loads the demonstration once, and posts nothing again that day', async () => {
    const folder = scratchFolder();
    const first = await running(folder);
    first.signal('SIGTERM');
    await first.ended();
    const file = join(folder, 'data', 'local.sqlite');
    const before = tableState(file);
    const second = await running(folder);
    const mornings = morningsIn(await stateOf(second));
    second.signal('SIGINT');
    expect((await second.ended()).code).toBe(0);
    expect(tableState(file)).toEqual(before);
    expect(before['orders']?.length).toBeGreaterThanOrEqual(5);
    expect(new Set(mornings).size).toBe(mornings.length);
  });

  it('keeps what was saved when it is killed, and starts again without a hand’s turn', async () => {
    const folder = scratchFolder();
    const first = await running(folder);
    const said = await fetch(`${first.url}page-api/type`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: first.url.slice(0, -1) },
      body: JSON.stringify({
        as: 'Ada',
        line: `/order place what:"oil filter" supplier:"Tarn Bearing Supply" due:${inAWeek()}`,
      }),
    });
    expect(await said.text()).toContain('oil filter');
    first.signal('SIGKILL');
    await first.ended();
    const second = await running(folder);
    second.signal('SIGTERM');
    await second.ended();
    expect(JSON.stringify(tableState(join(folder, 'data', 'local.sqlite'))['orders'])).toContain(
      'oil filter',
    );
  });

  it('refuses to start twice on the same records, saying who holds them', async () => {
    const folder = scratchFolder();
    const first = await running(folder);
    const second = await runProgram('main', {
      folder,
      environment: { CHARGEHAND_DATA: join(folder, 'data'), CHARGEHAND_PORT: '0' },
    });
    expect(second.code).toBe(1);
    expect(second.stderr).toMatch(/^The records are in use by Chargehand \(process \d+ on [^\n]*\n$/);
    first.signal('SIGTERM');
    await first.ended();
  });
});

/** Settings, what is wrong with them, and what the sentence has to name. */
const WRONG = [
  ['a token of the wrong shape', { DISCORD_TOKEN: 'my-secret-token-of-the-wrong-shape' }, 'DISCORD_TOKEN'],
  ['a token cut short', { DISCORD_TOKEN: TOKEN.slice(0, 40) }, 'DISCORD_TOKEN'],
  ['an empty token', { DISCORD_TOKEN: '' }, 'DISCORD_TOKEN'],
  ['a port that is a word', { CHARGEHAND_PORT: 'http' }, 'CHARGEHAND_PORT'],
  ['a port out of range', { CHARGEHAND_PORT: '99999' }, 'CHARGEHAND_PORT'],
  ['an empty port', { CHARGEHAND_PORT: '' }, 'CHARGEHAND_PORT'],
  ['an empty folder', { CHARGEHAND_DATA: '' }, 'CHARGEHAND_DATA'],
  ['a folder that is a file', { CHARGEHAND_DATA: import.meta.filename }, 'CHARGEHAND_DATA'],
  ['an address that is none', { CHARGEHAND_API: 'nowhere' }, 'CHARGEHAND_API'],
  // 203.0.113.0/24 is kept for documentation (RFC 5737), so no machine has it.
  ['a host that is not this machine', { CHARGEHAND_HOST: '203.0.113.7' }, 'CHARGEHAND_HOST'],
] as const satisfies readonly (readonly [string, Readonly<Record<string, string>>, string])[];

describe('npm start with settings that are wrong', () => {
  const folder = mkdtempSync(join(tmpdir(), 'chargehand-'));
  const ended = new Map<string, Ended>();

  beforeAll(async () => {
    await Promise.all(WRONG.map(async ([what, environment]) => ended.set(what, await ends(environment))));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  /** How it ends; the token's text must not turn up in anything it says. */
  async function ends(environment: Readonly<Record<string, string>>): Promise<Ended> {
    const end = await runProgram('main', {
      folder,
      environment: { CHARGEHAND_DATA: join(folder, 'data'), CHARGEHAND_PORT: '0', ...environment },
    });
    const token = environment['DISCORD_TOKEN'] ?? '';
    for (const part of [token, ...token.split('.')].filter(({ length }) => length > 8)) {
      expect(end.stdout + end.stderr).not.toContain(part);
    }
    return end;
  }

  /** One sentence or two on one line, no log line, no stack. */
  function expectSentence({ code, stdout, stderr }: Ended, names: string): void {
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toMatch(/^[A-Z][^{}\n]*\.\n$/);
    expect(stderr).toContain(names);
    expect(stderr).not.toContain('    at ');
  }

  it.each(WRONG)('says what to do about %s', (what, _environment, names) => {
    const end = ended.get(what);
    if (end === undefined) throw new Error('it was not run');
    expectSentence(end, names);
  });

  it('says that the platform does not take the token', async () => {
    await using channel = await testChannel();
    expectSentence(await ends({ DISCORD_TOKEN: TOKEN, CHARGEHAND_API: channel.apiUrl }), 'DISCORD_TOKEN');
    expect(channel.refusals.every(({ status }) => status === 401)).toBe(true);
    expect(channel.unknownRequests).toEqual([]);
  });

  it('says that the platform cannot be reached', async () => {
    const port = await freePort();
    expectSentence(
      await ends({ DISCORD_TOKEN: TOKEN, CHARGEHAND_API: `http://127.0.0.1:${port}/api` }),
      'The platform cannot be reached',
    );
  });

  it('says that the page’s port is taken', async () => {
    const server = createServer();
    const port = await listening(server);
    onTestFinished(() => void server.close());
    expectSentence(await ends({ CHARGEHAND_PORT: String(port) }), 'CHARGEHAND_PORT');
  });

  it('reads .env of the folder it runs in, and says which variable in it is wrong', async () => {
    const own = scratchFolder();
    writeFileSync(join(own, '.env'), 'DISCORD_TOKEN=pasted-wrongly-from-somewhere\n');
    const end = await runProgram('main', { folder: own });
    expectSentence(end, 'DISCORD_TOKEN');
    expect(end.stderr).not.toContain('pasted-wrongly');
  });
});

/** A day that needs no question, whenever this runs. */
const inAWeek = (): string => Temporal.Now.plainDateISO('Europe/London').add({ days: 7 }).toString();

async function listening(server: ReturnType<typeof createServer>): Promise<number> {
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('a TCP server has a port');
  return address.port;
}

async function freePort(): Promise<number> {
  const server = createServer();
  const port = await listening(server);
  await new Promise((resolve) => server.close(resolve));
  return port;
}
