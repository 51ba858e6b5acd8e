import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { z } from 'zod';
import type { HttpFault, LocalChannel, Outcome } from '../../../src/channel/contract.ts';
import { instantOf } from '../../../src/core/time.ts';
import { openTeams } from '../../../src/teams.ts';
import { type HandClock, testChannel } from '../../support/channel.ts';
import { expectCleanChannel } from '../../support/clean-channel.ts';
import { buttonOn, shownIn } from '../../support/crew.ts';
import { type MortalBot, mortalBot } from '../../support/mortal-bot.ts';
import { type Chance, chanceFrom } from '../../support/random.ts';
import { scratchFolder } from '../../support/scratch-folder.ts';
import { integrityOf } from '../../support/table-state.ts';
import { tapWire, type WireTap } from '../../support/wire-tap.ts';

const KILLS = 26;
const SEED = Number(process.env['KILL_SEED'] ?? 20_261_214);
const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;
const ALREADY_ACKNOWLEDGED = 40_060;

/** What the crew was told is saved, by the name of the part. */
interface Told {
  readonly placed: Set<string>;
  readonly arrived: Set<string>;
  /** Asked for, whatever came of it. */
  readonly asked: string[];
}

/** A run of lives of one bot on one channel. */
interface Run {
  readonly chance: Chance;
  readonly channel: LocalChannel;
  readonly clock: HandClock;
  readonly wire: WireTap;
  readonly told: Told;
  readonly here: string;
}

it(`nothing is lost or doubled when the bot is killed ${KILLS} times (KILL_SEED=${SEED})`, async () => {
  const folder = scratchFolder();
  await using channel = await testChannel();
  const { clock } = channel;
  clock.set(instantOf('2026-12-07', '08:00', 'Europe/London'));
  const wire = await tapWire(channel.apiUrl);
  const told: Told = { placed: new Set(), arrived: new Set(), asked: [] };
  const run: Run = {
    chance: chanceFrom(SEED),
    channel,
    clock,
    wire,
    told,
    here: channel.channels[0]?.id ?? '',
  };
  const start = (): Promise<MortalBot> => mortalBot(wire, channel.token, folder, clock.nowMs());

  for (let kill = 0; kill < KILLS; kill += 1) {
    const bot = await start();
    await live(bot, run);
    clock.moveMs(run.chance.oneOf([1_000, 3 * MINUTE, 60 * MINUTE, DAY, 3 * DAY]));
  }

  const survivor = await start();
  clock.moveMs(nextMorning(clock.nowMs()) - clock.nowMs());
  for (let look = 0; look < 4; look += 1) {
    await survivor.look(clock.nowMs());
    clock.moveMs(MINUTE);
  }
  expect(survivor.dead, survivor.errors()).toBe(false);
  survivor.kill();
  await survivor.gone;
  await wire.close();
  const file = `${folder}/${channel.guildId}.team.sqlite`;
  expect(integrityOf(file)).toBe('ok');
  expectOrdersAsTold(file, told);
  expectMorningsOnce(run, file);
  expectLogAgrees(folder, channel.guildId, clock);
  expectCleanChannel(channel, [ALREADY_ACKNOWLEDGED]);
}, 180_000);

/** Lets the bot work until it is killed at a random point of it. */
async function live(bot: MortalBot, run: Run): Promise<void> {
  const { chance, channel, clock } = run;
  const steps = 1 + chance.below(5);
  const mended = chance.below(2) === 0 ? () => {} : channel.faults.http(postFault(chance));
  bot.killAt(1 + chance.below(3 * steps), chance.oneOf(['before', 'after']));
  for (let step = 0; step < steps && !bot.dead; step += 1) {
    await chance.oneOf([placeOne, logOne, pressOne, lookNextMorning, lookNextMorning, lookAgain])(bot, run);
    clock.moveMs(chance.oneOf([1_000, 15_000, 10 * MINUTE]));
  }
  // Not killed by a request yet: it ends somewhere in the midst of the next look.
  if (!bot.dead) {
    const looking = lookNextMorning(bot, run);
    for (let turn = chance.below(400); turn > 0; turn -= 1) await new Promise(setImmediate);
    bot.kill();
    await looking;
  }
  await bot.gone;
  mended();
}

const postFault = (chance: Chance): HttpFault => ({
  method: 'POST',
  path: /^\/channels\/\d+\/messages$/,
  times: 1 + chance.below(5),
  ...chance.oneOf<Pick<HttpFault, 'answer' | 'afterEffect'>>([
    { answer: 'lost-answer' },
    { answer: 'server-error' },
    { answer: 'server-error', afterEffect: true },
    { answer: 'too-many' },
  ]),
});

async function placeOne(bot: MortalBot, run: Run): Promise<void> {
  const name = `part ${String(run.told.asked.length).padStart(4, '0')}`;
  run.told.asked.push(name);
  const line = `/order place what:"${name}" supplier:"Norvale Gaskets" due:"in 1 working day"`;
  const outcome = await outcomeOf(bot, run, run.channel.hands('Ada').type(line));
  if (isAcknowledged(outcome)) run.told.placed.add(name);
}

async function logOne(bot: MortalBot, run: Run): Promise<void> {
  const name = [...run.told.placed].find((placed) => !run.told.arrived.has(placed));
  if (name === undefined) return;
  const outcome = await outcomeOf(bot, run, run.channel.hands('Ben').type(`/order arrived order:"${name}"`));
  if (isAcknowledged(outcome)) run.told.arrived.add(name);
}

/** Presses the first "Arrived" of the newest morning message. */
async function pressOne(bot: MortalBot, run: Run): Promise<void> {
  const morning = mornings(run).at(-1);
  if (morning === undefined || !shownIn(morning).includes('[Arrived]')) return;
  const pressed = run.channel.hands('Ben').press(morning.id, buttonOn(morning, 'Arrived'));
  await outcomeOf(bot, run, pressed);
}

const lookAgain = async (bot: MortalBot, { clock }: Run): Promise<void> => bot.look(clock.nowMs());

const lookNextMorning = async (bot: MortalBot, run: Run): Promise<void> => {
  run.clock.moveMs(nextMorning(run.clock.nowMs()) - run.clock.nowMs());
  await lookAgain(bot, run);
};

/** What came of it; when the bot dies over it, that is waited for as long as a person would be kept waiting. */
async function outcomeOf(bot: MortalBot, { clock }: Run, doing: Promise<Outcome>): Promise<Outcome> {
  await Promise.race([doing, bot.gone]);
  if (bot.dead) {
    await bot.gone;
    clock.moveMs(4_000);
  }
  return doing;
}

/** Refusals and questions are private; what was saved is shown to everybody. */
const isAcknowledged = (outcome: Outcome): boolean => outcome.kind === 'answered' && !outcome.private;

const mornings = ({ channel, here }: Run) =>
  channel.messages(here).filter((message) => shownIn(message).includes('Morning, '));

function nextMorning(nowMs: number): number {
  const later = Temporal.Instant.fromEpochMilliseconds(nowMs)
    .toZonedDateTimeISO('Europe/London')
    .add({ days: 1 });
  const weekend = Math.max(0, 8 - later.dayOfWeek) % 7;
  const day = later.dayOfWeek > 5 ? later.add({ days: weekend }) : later;
  return instantOf(day.toPlainDate().toString(), '08:30', 'Europe/London');
}

const Row = z.object({ what: z.string(), arrivals: z.int() });

function expectOrdersAsTold(file: string, { placed, arrived, asked }: Told): void {
  const db = new Database(file, { readonly: true });
  const rows = z
    .array(Row)
    .parse(
      db
        .prepare(
          `SELECT what, (SELECT count(*) FROM arrival WHERE order_id = orders.id) AS arrivals FROM orders`,
        )
        .all(),
    );
  db.close();
  const names = rows.map(({ what }) => what);
  expect(new Set(names).size, 'no order twice').toBe(names.length);
  expect(
    names.filter((name) => !asked.includes(name)),
    'no order from nowhere',
  ).toEqual([]);
  expect(
    [...placed].filter((name) => !names.includes(name)),
    'no acknowledged order lost',
  ).toEqual([]);
  expect(
    rows.filter(({ arrivals }) => arrivals > 1),
    'no arrival twice',
  ).toEqual([]);
  const come = rows.filter(({ arrivals }) => arrivals === 1).map(({ what }) => what);
  expect(
    [...arrived].filter((name) => !come.includes(name)),
    'no acknowledged arrival lost',
  ).toEqual([]);
  expect(placed.size, 'enough happened').toBeGreaterThan(5);
}

function expectMorningsOnce(run: Run, file: string): void {
  const days = mornings(run).map((message) => /Morning, (.*)/.exec(shownIn(message))?.[1]);
  expect(new Set(days).size, `one message a day: ${days.join(', ')}`).toBe(days.length);
  expect(days.length, 'enough mornings').toBeGreaterThan(15);
  const db = new Database(file, { readonly: true });
  const left = db
    .prepare("SELECT key, state, trouble FROM outbox WHERE state NOT IN ('sent', 'dropped')")
    .all();
  const sent = db.prepare<[], number>("SELECT count(*) FROM outbox WHERE state = 'sent'").pluck().get();
  db.close();
  expect(left, 'nothing left on its way').toEqual([]);
  // A message whose day was over before anybody could mark it stands in the channel and not among the sent.
  expect(sent, 'what is marked as sent was sent').toBeLessThanOrEqual(days.length);
}

/** The change log, read from the start, explains every record. */
function expectLogAgrees(folder: string, teamId: string, clock: HandClock): void {
  const faults: unknown[] = [];
  const teams = openTeams({ shelf: { folder }, clock, report: (fault) => void faults.push(fault) });
  expect(teams.at(teamId).ledger.audit()).toEqual([]);
  expect(faults).toEqual([]);
  teams.close();
}
