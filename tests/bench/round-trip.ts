import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client, Events, GatewayIntentBits } from 'discord.js';
import type { LocalChannel, Outcome } from '../../src/channel/contract.ts';
import { openLocalChannel } from '../../src/channel/open.ts';
import { startChargehand } from '../../src/chargehand.ts';
import { systemClock, systemTimer } from '../../src/core/clock.ts';
import { openLog } from '../../src/log.ts';
import { quantile } from './figures.ts';

/**
 * How long a person waits for an answer: from the typed line to the answer standing in the channel, over loopback,
 * one at a time. Ours, a sum and a saved change, against a responder on the same client that only says "pong"; the three
 * take turns in one run, so that whatever else the machine does meets all of them alike. Prints, judges nothing.
 */
const WARM_UP = 50;
const ROUNDS = 1_000;
const AT_MOST_MS = 45_000;

/** A channel with a bot in it, ready to be asked. */
interface Contestant {
  readonly what: string;
  readonly ask: (round: number) => Promise<Outcome>;
  readonly takenMs: number[];
}

const folder = mkdtempSync(join(tmpdir(), 'chargehand-bench-'));
const openChannel = (): Promise<LocalChannel> =>
  openLocalChannel({
    clock: { nowMs: systemClock.nowMs, after: systemTimer.after },
    guildName: 'Bench',
    channels: ['bench'],
    crew: ['Ada'],
  });

const bareChannel = await openChannel();
const bare = await bareResponder(bareChannel);
const ourChannel = await openChannel();
const ours = await startChargehand({
  token: ourChannel.token,
  api: ourChannel.apiUrl,
  shelf: { folder },
  clock: systemClock,
  timer: systemTimer,
  log: openLog((line) => void process.stderr.write(line), [ourChannel.token]),
  onLost: (why) => {
    throw new Error(why);
  },
});
await Promise.all([bareChannel.ready(), ourChannel.ready()]);

const due = Temporal.Now.plainDateISO().add({ days: 7 }).toString();
const [bareAda, ourAda] = [bareChannel.hands('Ada'), ourChannel.hands('Ada')];
const contestants: readonly Contestant[] = [
  { what: 'bare responder: pong', ask: () => bareAda.type('/ping'), takenMs: [] },
  { what: 'a sum: /thread', ask: () => ourAda.type('/thread size:"21.9 x 1.5"'), takenMs: [] },
  {
    what: 'a saved change: /order place',
    ask: (round) => ourAda.type(`/order place what:"part ${round}" supplier:"Norvale Gaskets" due:${due}`),
    takenMs: [],
  },
];

try {
  const endMs = performance.now() + AT_MOST_MS;
  for (let round = 0; round < WARM_UP + ROUNDS && performance.now() < endMs; round += 1) {
    for (const contestant of contestants) await measure(contestant, round);
  }
  report();
} finally {
  await ours.stop();
  await bare.destroy();
  await bareChannel.close();
  await ourChannel.close();
  rmSync(folder, { recursive: true });
}

async function measure({ what, ask, takenMs }: Contestant, round: number): Promise<void> {
  const startMs = performance.now();
  const outcome = await ask(round);
  const ms = performance.now() - startMs;
  if (outcome.kind !== 'answered' || outcome.private) {
    throw new Error(`${what}: ${JSON.stringify(outcome).slice(0, 400)}`);
  }
  if (round >= WARM_UP) takenMs.push(ms);
}

/** The least that answers at all on this client. */
async function bareResponder(channel: LocalChannel): Promise<Client> {
  const client = new Client({ intents: [GatewayIntentBits.Guilds], rest: { api: channel.apiUrl } });
  client.on(Events.InteractionCreate, (interaction) => {
    if (interaction.isChatInputCommand()) void interaction.reply('pong');
  });
  const ready = new Promise<Client<true>>((resolve) => client.once(Events.ClientReady, resolve));
  await client.login(channel.token);
  await (await ready).application.commands.set([{ name: 'ping', description: 'Answers pong' }]);
  return client;
}

function report(): void {
  const [first] = contestants;
  const table = contestants.map(({ what, takenMs }) => ({
    what,
    n: takenMs.length,
    'median ms': rounded(quantile(takenMs, 0.5)),
    'p99 ms': rounded(quantile(takenMs, 0.99)),
    'ratio of medians': rounded(quantile(takenMs, 0.5) / quantile(first?.takenMs ?? [], 0.5)),
    'ratio of p99': rounded(quantile(takenMs, 0.99) / quantile(first?.takenMs ?? [], 0.99)),
  }));
  process.stdout.write(
    `From the typed line to the answer in the channel, over loopback, one at a time, taking turns.\n` +
      `Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}; ` +
      `every order is on the disk (synchronous = FULL) before it is answered; ${tmpdir()}.\n`,
  );
  process.stdout.write(`${asTable(table)}\n`);
}

function rounded(value: number): string {
  return value.toFixed(2);
}

function asTable(rows: readonly Readonly<Record<string, string | number>>[]): string {
  const heads = Object.keys(rows[0] ?? {});
  const cells = [heads, ...rows.map((row) => heads.map((head) => String(row[head])))];
  const widths = heads.map((_head, column) => Math.max(...cells.map((row) => (row[column] ?? '').length)));
  return cells
    .map((row) =>
      row
        .map((cell, column) =>
          column === 0 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0),
        )
        .join('  '),
    )
    .join('\n');
}
