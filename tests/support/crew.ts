import { expect } from 'vitest';
import type { Result } from '../../src/bot/request.ts';
import type { LocalChannel, OpenForm, Outcome, WireMessage } from '../../src/channel/contract.ts';
import { type Chargehand, startChargehand } from '../../src/chargehand.ts';
import { instantOf } from '../../src/core/time.ts';
import { openLog } from '../../src/log.ts';
import type { TeamRecord } from '../../src/records/team-record.ts';
import type { Delivered } from '../../src/reminders/deliver.ts';
import { openHeardBook } from '../../src/say/heard.ts';
import { formText, plainText, pressable } from '../../src/say/plain-text.ts';
import { HandClock, testChannel } from './channel.ts';
import { expectCleanChannel, expectNoStrayPings } from './clean-channel.ts';
import { scratchFolder } from './scratch-folder.ts';
import { tapWire, type WireTap } from './wire-tap.ts';

const LONDON = 'Europe/London';

export interface CrewOptions {
  /** Wall time in London when the bot starts. */
  readonly at?: string;
  readonly channels?: readonly string[];
  /** Codes with which the platform may refuse the bot in this test. */
  readonly tolerated?: readonly number[];
  /** Lets the bot read everybody's lines, as in the local channel. */
  readonly hears?: 'everything';
  /** Whether the test provokes faults that are to be logged. */
  readonly mayLog?: boolean;
}

/** What came of something a person did, read for a test. */
export interface Told {
  readonly outcome: Outcome;
  /** As a person would read it. */
  readonly text: string;
  /** What the bot made of it; undefined when it never heard of it. */
  readonly result: Result | undefined;
}

/** What came of a line that was said: null where the bot had nothing to say to it. */
export interface Spoken {
  readonly said: WireMessage;
  readonly answer: { readonly result: Result; readonly message: WireMessage; readonly text: string } | null;
}

/** Whom to be, and where. */
export interface Doing {
  readonly as?: string;
  readonly channelId?: string;
}

/** The whole bot in a channel of its own, on a clock set by hand. */
export interface Crew extends AsyncDisposable {
  readonly channel: LocalChannel;
  readonly clock: HandClock;
  readonly chargehand: Chargehand;
  readonly wire: WireTap;
  /** The team's file. */
  readonly file: string;
  readonly record: TeamRecord;
  /** Lines of the log, and what the connection was lost for. */
  readonly logged: readonly string[];
  readonly lost: readonly string[];
  type(line: string, doing?: Doing): Promise<Told>;
  /** Says a line without a slash, and waits until the bot has listened to it. */
  say(line: string, doing?: Doing): Promise<Spoken>;
  /** Presses the button of this label; of several, the one of this order. */
  press(message: WireMessage, label: string, doing?: Doing & { readonly order?: number }): Promise<Told>;
  choose(message: WireMessage, value: string, doing?: Doing): Promise<Told>;
  fill(told: Told, values: Readonly<Record<string, string>>, doing?: Doing): Promise<Told>;
  /** Sets the clock to a wall time, `2026-12-07T08:30`, running what falls due on the way unless it is back. */
  at(wall: string, zone?: string): void;
  tick(): Promise<readonly Delivered[]>;
  /** Everything the bot has posted of its own accord: the morning messages. */
  mornings(channelId?: string): readonly WireMessage[];
}

/** Starts it; `await using` stops it and fails when anything untoward was said on the wire or logged. */
export async function crewAtWork(options: CrewOptions = {}): Promise<Crew> {
  const { at = '2026-12-07T09:00', channels = ['build'], tolerated = [], mayLog = false, hears } = options;
  const folder = scratchFolder();
  const clock = new HandClock(instant(at, LONDON));
  const channel = await testChannel({
    clock,
    channels,
    crew: ['Ada', 'Bram', 'Cleo'],
    ...(hears === undefined ? {} : { privilegedIntents: ['content'] }),
  });
  const wire = await tapWire(channel.apiUrl);
  const logged: string[] = [];
  const lost: string[] = [];
  const results = new Map<string, Result>();
  const heard = openHeardBook();
  const chargehand = await startChargehand({
    token: channel.token,
    api: wire.apiUrl,
    shelf: { folder },
    clock,
    timer: clock,
    log: openLog((line) => void logged.push(line), [channel.token]),
    onLost: (why) => void lost.push(why),
    onResult: (id, result) => void results.set(id, result),
    onHeard: heard.note,
    ...(hears === undefined ? {} : { hears }),
  });
  await channel.ready();
  const here = channel.channels[0]?.id ?? '';
  const told = (outcome: Outcome): Told => ({
    outcome,
    text: textOf(outcome),
    result: 'interactionId' in outcome ? results.get(outcome.interactionId) : undefined,
  });
  return {
    channel,
    clock,
    chargehand,
    wire,
    logged,
    lost,
    file: `${folder}/${channel.guildId}.team.sqlite`,
    record: chargehand.teams.at(channel.guildId).record,
    type: async (line, { as = 'Ada', channelId = here } = {}) =>
      told(await channel.hands(as).type(line, { channelId })),
    async say(line, { as = 'Ada', channelId = here } = {}) {
      const outcome = await channel.hands(as).type(line, { channelId });
      if (outcome.kind !== 'posted') throw new Error(`it was not said: ${textOf(outcome)}`);
      const answer = await heard.of(outcome.message.id);
      if (answer === null) return { said: outcome.message, answer: null };
      const message = channel.messages(channelId).find(({ id }) => id === answer.messageId);
      if (message === undefined) throw new Error('the answer is not in the channel');
      return { said: outcome.message, answer: { result: answer.result, message, text: shownIn(message) } };
    },
    press: async (message, label, { as = 'Ada', order } = {}) =>
      told(await channel.hands(as).press(message.id, buttonOn(message, label, order))),
    async choose(message, value, { as = 'Ada' } = {}) {
      const menu = pressable(message.components).find((one) => Array.isArray(one['options']));
      return told(await channel.hands(as).choose(message.id, menu?.custom_id ?? '', [value]));
    },
    fill: async (opened, values, { as = 'Ada' } = {}) =>
      told(await channel.hands(as).submit(formOf(opened), values)),
    at(wall, zone = LONDON) {
      const ms = instant(wall, zone) - clock.nowMs();
      if (ms < 0) clock.set(clock.nowMs() + ms);
      else clock.moveMs(ms);
    },
    tick: () => chargehand.tick(),
    mornings: (channelId = here) =>
      channel.messages(channelId).filter((message) => shownIn(message).includes('Morning, ')),
    async [Symbol.asyncDispose]() {
      await chargehand.stop();
      await wire.close();
      await channel.close();
      expectCleanChannel(channel, tolerated);
      expectNoStrayPings(wire.exchanges);
      if (!mayLog) expect(logged, 'faults that were logged').toEqual([]);
    },
  };
}

/** A message as a person would read it; mentions stay as they are on the wire. */
export const shownIn = (message: WireMessage): string => plainText(message, () => undefined);

/** The message an outcome shows. @throws Error when it shows none. */
export function messageOf({ outcome, text }: Told): WireMessage {
  if ('message' in outcome) return outcome.message;
  throw new Error(`no message came of it: ${outcome.kind} ${text}`);
}

/** The form an outcome opened. @throws Error when it opened none. */
export function formOf({ outcome, text }: Told): OpenForm {
  if (outcome.kind === 'form') return outcome.form;
  throw new Error(`no form came of it: ${outcome.kind} ${text}`);
}

/** The typed data of an answer, as scripts get it. */
export function dataOf({ result }: Told): unknown {
  return result?.reply.kind === 'answer' ? result.reply.data : undefined;
}

export const labelsOn = ({ components }: WireMessage): readonly string[] =>
  pressable(components).flatMap(({ label }) => label ?? []);

/** The custom_id of a button. @throws Error naming the buttons there are. */
export function buttonOn(message: WireMessage, label: string, order?: number): string {
  const found = pressable(message.components).find(
    (one) => one.label === label && (order === undefined || one.custom_id?.includes(`order=${order}&`)),
  );
  if (found?.custom_id === undefined) {
    throw new Error(`no button "${label}", only ${labelsOn(message).join(', ') || 'none'}`);
  }
  return found.custom_id;
}

function textOf(outcome: Outcome): string {
  if (outcome.kind === 'refused') return outcome.problem;
  if (outcome.kind === 'form') return formText(outcome.form);
  return 'message' in outcome ? shownIn(outcome.message) : outcome.kind;
}

function instant(wall: string, zone: string): number {
  const [day = '', time = '00:00'] = wall.split('T');
  return instantOf(day, time, zone);
}
