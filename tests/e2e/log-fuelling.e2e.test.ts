import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Result } from '../../src/bot/request.ts';
import type { Hands, Outcome, Upload, WireMessage } from '../../src/channel/contract.ts';
import { type Local, openLocal } from '../../src/local.ts';
import { plainText } from '../../src/say/plain-text.ts';
import { HandClock } from '../support/channel.ts';
import { modelOf, runModel } from '../support/model-engine/engine.ts';
import { logStyles } from '../support/model-engine/log-styles.ts';
import { logText } from '../support/model-engine/log-text.ts';
import { scratchFolder } from '../support/scratch-folder.ts';

const STYLE = 'plain English, seconds';

interface Shed extends Local {
  readonly clock: HandClock;
  readonly hands: Hands;
  readonly results: ReadonlyMap<string, Result>;
  readonly heard: ReadonlyMap<string, unknown>;
  readonly logged: readonly string[];
}

/** The whole bot in a local channel, over loopback, on a clock set by hand. */
async function shed(): Promise<Shed> {
  const clock = new HandClock();
  const logged: string[] = [];
  const results = new Map<string, Result>();
  const heard = new Map<string, unknown>();
  const local = await openLocal({
    file: join(scratchFolder(), 'crew.sqlite'),
    clock,
    timer: clock,
    guildName: 'The shed',
    channels: ['build'],
    crew: ['Ada'],
    writeLog: (line) => void logged.push(line),
    onLost: (why) => void logged.push(why),
    onResult: (id, result) => void results.set(id, result),
    onHeard: (id, answered) => void heard.set(id, answered),
  });
  onTestFinished(() => local.stop());
  return { ...local, clock, hands: local.channel.hands('Ada'), results, heard, logged };
}

function drive(seed = 7, seconds = 300, rowsPerS = 20): string {
  const model = modelOf(seed, { kind: 'road', seconds, rowsPerS, coldStart: false, closedLoop: true });
  const style = logStyles[STYLE];
  if (style === undefined) throw new Error(`there is no style "${STYLE}"`);
  return [...logText(runModel(model), style)].join('');
}

const csv = (name: string, text: string): Upload => ({
  name,
  type: 'text/csv',
  bytes: new TextEncoder().encode(text),
});
const gz = (name: string, text: string): Upload => ({
  name,
  type: 'application/gzip',
  bytes: new Uint8Array(gzipSync(text)),
});

function messageOf(outcome: Outcome): WireMessage {
  if ('message' in outcome) return outcome.message;
  throw new Error(`no message came: ${JSON.stringify(outcome)}`);
}

/** Lets everything that waits go on until this holds; the clock moves only as far as `each` turn moves it. */
async function until(holds: () => boolean, each: (turn: number) => void = () => {}): Promise<void> {
  for (let turn = 0; !holds(); turn++) {
    await new Promise((resolve) => setImmediate(resolve));
    each(turn);
  }
}

/** Time goes on by itself, a little with every few turns. */
const goOn =
  (clock: HandClock) =>
  (turn: number): void => {
    if (turn % 4 === 0) clock.moveMs(100);
  };

const textOf = (message: WireMessage): string => plainText(message, () => undefined);

describe('a log that is attached', () => {
  it('packed with gzip is answered with words, a picture and the table on its own axes', async () => {
    const { hands, results, logged } = await shed();
    await hands.type('/log table load:"20 40 60 80 100 130 160 200" speed:"800 to 6800 by 1000"');
    const outcome = await hands.type('/log fuel', { files: [gz('hill.csv.gz', drive())] });
    const message = messageOf(outcome);
    expect(textOf(message)).toMatch(/cells to change|are right/);
    expect(textOf(message)).toContain('1. ');
    expect(textOf(message)).toContain('A road is no test bed');
    expect(message.attachments.map(({ filename }) => filename)).toEqual([
      'fuel-map.png',
      'fuel-multipliers.csv',
      'fuel-multipliers-detail.csv',
    ]);
    const table = await (await fetch(message.attachments[1]?.url ?? '')).text();
    const rows = table
      .trim()
      .split('\r\n')
      .map((row) => row.split(','));
    expect(rows[0]).toEqual(['load kPa / speed rpm', '800', '1800', '2800', '3800', '4800', '5800', '6800']);
    expect(rows.slice(1).map(([load]) => load)).toEqual(['20', '40', '60', '80', '100', '130', '160', '200']);
    const data = 'interactionId' in outcome ? results.get(outcome.interactionId) : undefined;
    expect(data?.ok).toBe(true);
    expect(data?.reply.kind === 'answer' && data.reply.data['usable']).toBe(true);
    expect(logged).toEqual([]);
  });

  it('is compared with the one from before the last change', async () => {
    const { hands, results } = await shed();
    const files = [csv('now.csv', drive(8)), csv('before.csv', drive(7))];
    const outcome = await hands.type('/log fuel', { files });
    expect(textOf(messageOf(outcome))).toContain('Against before.csv');
    const data = 'interactionId' in outcome ? results.get(outcome.interactionId) : undefined;
    expect(data?.reply.kind === 'answer' && data.reply.data['comparison']).toHaveProperty('cells');
  });

  it('to a plain message to the bot leads to the same', async () => {
    const { channel, hands, heard } = await shed();
    const said = messageOf(await hands.type('', { files: [csv('hill.csv', drive())] }));
    await until(() => heard.has(said.id));
    const answer = channel.messages(said.channel_id).at(-1);
    expect(answer?.author.bot).toBe(true);
    expect(answer && textOf(answer)).toMatch(/cells to change|are right/);
  });

  it('whose columns are in doubt is asked about once, by a form, and known from then on', async () => {
    const { hands, logged } = await shed();
    const text = drive().replace('Lambda,', 'Channel 7,');
    const asked = messageOf(await hands.type('/log fuel', { files: [csv('odd.csv', text)] }));
    expect(textOf(asked)).toContain('which column is the λ?');
    const button = /"custom_id":"(log\/columns[^"]*)"/.exec(JSON.stringify(asked.components))?.[1];
    const opened = await hands.press(asked.id, button ?? '');
    if (opened.kind !== 'form') throw new Error(`no form came: ${JSON.stringify(opened)}`);
    const filled = Object.fromEntries(
      opened.form.components.map(({ component }): [string, string[]] => {
        const options = (component?.['options'] ?? []) as {
          label: string;
          value: string;
          default?: boolean;
        }[];
        const wanted = component?.custom_id === 'lambda' ? 'Channel 7' : undefined;
        const picked = options.find(({ label, default: standing }) =>
          wanted === undefined ? standing : label === wanted,
        );
        return [component?.custom_id ?? '', picked === undefined ? [] : [picked.value]];
      }),
    );
    expect(textOf(messageOf(await hands.submit(opened.form, filled)))).toMatch(/cells to change|are right/);
    const again = messageOf(await hands.type('/log fuel', { files: [csv('odd-2.csv', text)] }));
    expect(textOf(again)).toMatch(/cells to change|are right/);
    expect(logged).toEqual([]);
  });

  it('says how far it has come while a big one is read, and ends with the answer in the same message', async () => {
    const { channel, clock, hands, logged } = await shed();
    const seen: string[] = [];
    channel.onMessage((message) => {
      const text = textOf(message);
      if (text.includes('Reading the log') || text.includes('Fitting')) seen.push(text);
    });
    const text = drive(7, 3_000, 40);
    const typed = hands.type('/log fuel', { files: [csv('long.csv', text)] });
    const here = channel.channels[0]?.id ?? '';
    const finished = () =>
      channel.messages(here).some((message) => textOf(message).includes('19 times out of 20'));
    await until(finished, goOn(clock));
    await typed;
    expect(finished()).toBe(true);
    expect(seen.length).toBeGreaterThan(0);
    expect(seen[0]).toMatch(
      /long\.csv: (Reading the log: \d+ %, [\d,]+ rows\.|[\d,]+ rows read\. Fitting the table\.)/,
    );
    expect(channel.messages(here)).toHaveLength(1);
    expect(logged).toEqual([]);
  });

  it('to a plain message says how far it has come too, and ends with the answer in the same message', async () => {
    const { channel, clock, hands, heard, logged } = await shed();
    const seen: string[] = [];
    channel.onMessage((message) => {
      if (/Reading the log|Fitting the table/.test(textOf(message))) seen.push(message.id);
    });
    const said = messageOf(await hands.type('', { files: [csv('long.csv', drive(7, 3_000, 40))] }));
    await until(() => heard.has(said.id), goOn(clock));
    const [, answer, ...more] = channel.messages(said.channel_id);
    expect(more).toEqual([]);
    expect(answer && textOf(answer)).toContain('19 times out of 20');
    expect(seen.length).toBeGreaterThan(0);
    expect(new Set(seen)).toEqual(new Set([answer?.id]));
    expect(logged).toEqual([]);
  });

  it.each([
    ['no log', 'Dear crew, the gasket has come.\nSee you on Sunday.\n', 'There are no columns of numbers'],
    ['empty', '\n\n', 'is empty'],
    ['a spreadsheet', 'PK\u0003\u0004 and more', 'spreadsheet'],
  ])('that is %s is refused in plain words', async (_, text, words) => {
    const { hands, logged } = await shed();
    const outcome = await hands.type('/log fuel', { files: [csv('odd.csv', text)] });
    expect(textOf(messageOf(outcome))).toContain(words);
    expect(logged).toEqual([]);
  });

  it('with nothing usable in it says so and changes nothing', async () => {
    const { hands, results } = await shed();
    const outcome = await hands.type('/log fuel', { files: [csv('cold.csv', drive(7, 4))] });
    const text = textOf(messageOf(outcome));
    expect(text).toContain('Nothing in this log can be used, and nothing is to be changed');
    const result = 'interactionId' in outcome ? results.get(outcome.interactionId) : undefined;
    const data = result?.reply.kind === 'answer' ? result.reply.data : {};
    expect(data['usable']).toBe(false);
    expect(new Set([data['multiplierRatio']].flat(3))).toEqual(new Set([1]));
    expect(messageOf(outcome).attachments).toEqual([]);
  });
});
