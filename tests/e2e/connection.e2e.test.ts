import { describe, expect, it } from 'vitest';
import type { WireMessage } from '../../src/channel/contract.ts';
import { type Crew, type CrewOptions, crewAtWork, messageOf, shownIn } from '../support/crew.ts';
import { tableState } from '../support/table-state.ts';

const ALREADY_ACKNOWLEDGED = 40_060;
const POSTS = { method: 'POST', path: /^\/channels\/\d+\/messages$/ } as const;
const CALLBACKS = { method: 'POST', path: /^\/interactions\/.*\/callback/ } as const;

const place = (what: string, more = ''): string =>
  `/order place what:"${what}" supplier:"Norvale Gaskets" due:"9 Dec"${more}`;

/** An order that is late, its morning message in the channel. */
async function overdue(options: CrewOptions = {}): Promise<Crew> {
  const crew = await crewAtWork({ at: '2026-12-07T09:00', ...options });
  await crew.type(place('head gasket'));
  crew.at('2026-12-14T08:30');
  await crew.tick();
  return crew;
}

function morningIn(crew: Crew): WireMessage {
  const [morning, second] = crew.mornings();
  expect(second).toBeUndefined();
  if (morning === undefined) throw new Error('no morning message');
  return morning;
}

describe('a connection that breaks', () => {
  it.each([
    ['torn without a word', (crew: Crew) => crew.channel.faults.dropSockets()],
    ['that the platform asks to be made anew', (crew: Crew) => crew.channel.faults.askReconnect()],
    ['whose session is in doubt', (crew: Crew) => crew.channel.faults.invalidateSession(true)],
    ['closed as timed out', (crew: Crew) => crew.channel.faults.closeWith(4009)],
  ])('%s loses no press made meanwhile', async (_what, breakIt) => {
    await using crew = await overdue({ mayLog: true });
    breakIt(crew);
    const pressed = await crew.press(morningIn(crew), 'Chased');
    expect(pressed.outcome.kind).toBe('changed');
    breakIt(crew);
    await crew.press(morningIn(crew), 'Arrived');
    expect(crew.record.orders.find(1)).toMatchObject({ chasedTimes: 1, arrivals: [{ quantity: 1 }] });
    expect(crew.lost).toEqual([]);
  });

  it('is not needed for the reminders', async () => {
    await using crew = await crewAtWork({ mayLog: true });
    await crew.type(place('head gasket'));
    crew.at('2026-12-14T08:30');
    crew.channel.faults.dropSockets();
    expect(await crew.tick()).toHaveLength(1);
    morningIn(crew);
  });

  it.each([
    [4004, 'the token is no longer taken'],
    [4014, 'an intent is no longer allowed'],
  ])('closed for good with %i, %s, is told to whoever looks after the process', async (code) => {
    await using crew = await overdue({ mayLog: true });
    const gone = new Promise<void>((resolve) => {
      const look = (): void => (crew.lost.length > 0 ? resolve() : void setImmediate(look));
      look();
    });
    crew.channel.faults.closeWith(code);
    await gone;
    expect(crew.lost).toEqual([`the platform closed the connection for good (${code})`]);
  });

  it('is told to be lost when a request is answered with 401', async () => {
    await using crew = await overdue({ mayLog: true });
    const answer = { status: 401, code: 0, message: '401: Unauthorized' };
    crew.channel.faults.http({ ...POSTS, answer });
    crew.at('2026-12-15T08:30');
    await crew.tick();
    expect(crew.lost).toContain('the platform no longer takes the token');
    expect(crew.logged.join('')).not.toContain(crew.channel.token);
  });
});

describe('every interaction delivered twice', () => {
  /** One of each kind of change, by command, button and form, with a question and an undo in it. */
  async function aDaysWork(crew: Crew): Promise<void> {
    await crew.type(place('head gasket'));
    await crew.type(place('main bearing', ' quantity:5 price:216'));
    const question = await crew.type('/order place what:"oil filter" supplier:"Norvale Gasket" due:"9 Dec"');
    await crew.press(messageOf(question), 'Norvale Gaskets');
    await crew.type('/order chased order:2', { as: 'Bram' });
    crew.at('2026-12-14T08:30');
    await crew.tick();
    const morning = morningIn(crew);
    await crew.press(morning, 'Arrived', { order: 1 });
    await crew.fill(await crew.press(morning, 'Only some, or not right', { order: 2 }), {
      quantity: '2',
      condition: 'damaged',
      rest: '18 Dec',
    });
    await crew.type('/order arrived order:3', { as: 'Cleo' });
    await crew.type('/undo', { as: 'Cleo' });
    await crew.type('/team morning:09:15');
    await crew.type('/build name:"Hill-climb seven"');
  }

  it('leaves the record exactly as one delivery does', async () => {
    await using once = await crewAtWork();
    await aDaysWork(once);
    await using twice = await crewAtWork();
    twice.channel.faults.repeatInteractions(2);
    await aDaysWork(twice);
    const ids = (crew: Crew, text: string): string =>
      ['Ada', 'Bram', 'Cleo'].reduce(
        (left, name) => left.replaceAll(crew.channel.hands(name).id, name),
        text,
      );
    const state = (crew: Crew): string =>
      ids(crew, JSON.stringify(tableState(crew.file), null, 1)).replaceAll(
        crew.channel.channels[0]?.id ?? '',
        'channel',
      );
    expect(state(twice)).toBe(state(once));
    expect(shownIn(morningIn(twice))).toContain('#2 3 × main bearing');
  });
});

describe('a platform under strain', () => {
  it('that says "too many" to a morning message gets it once all the same', async () => {
    await using crew = await crewAtWork();
    await crew.type(place('head gasket'));
    crew.channel.faults.http({ ...POSTS, answer: 'too-many', times: 2 });
    crew.at('2026-12-14T08:30');
    await crew.tick();
    morningIn(crew);
  });

  it('that says "too many" to an answer gets it once all the same', async () => {
    await using crew = await crewAtWork();
    crew.channel.faults.http({ ...CALLBACKS, answer: 'too-many', times: 2 });
    const placed = await crew.type(place('head gasket'));
    expect(placed.outcome.kind).toBe('answered');
    expect(crew.record.orders.ofBuild(1)).toHaveLength(1);
  });

  it('that loses its answer to our answer is not answered twice', async () => {
    await using crew = await crewAtWork({ tolerated: [ALREADY_ACKNOWLEDGED] });
    crew.channel.faults.http({ ...CALLBACKS, answer: 'lost-answer', times: 1 });
    const placed = await crew.type(place('head gasket'));
    expect(placed.text).toContain('Order #1');
    expect(crew.channel.messages(messageOf(placed).channel_id)).toHaveLength(1);
    expect(crew.record.orders.ofBuild(1)).toHaveLength(1);
  });

  it.each([
    ['before it took effect', false],
    ['after it took effect', true],
  ])('that fails on an answer %s shows it once', async (_when, afterEffect) => {
    await using crew = await crewAtWork({ tolerated: [ALREADY_ACKNOWLEDGED] });
    crew.channel.faults.http({ ...CALLBACKS, answer: 'server-error', afterEffect, times: 1 });
    const placed = await crew.type(place('head gasket'));
    expect(crew.channel.messages(messageOf(placed).channel_id)).toHaveLength(1);
    expect(crew.record.orders.ofBuild(1)).toHaveLength(1);
  });

  it.each([
    ['loses its answer to a morning message', { answer: 'lost-answer' }],
    ['fails after it has posted a morning message', { answer: 'server-error', afterEffect: true }],
    ['fails before it has posted a morning message', { answer: 'server-error' }],
  ] as const)('that %s, again and again, has one of it', async (_what, fault) => {
    await using crew = await crewAtWork({ mayLog: true });
    await crew.type(place('head gasket'));
    crew.at('2026-12-14T08:30');
    const mended = crew.channel.faults.http({ ...POSTS, ...fault });
    await crew.tick();
    crew.at('2026-12-14T08:31');
    await crew.tick();
    mended();
    for (const time of ['08:34', '08:36', '09:00', '12:00']) {
      crew.at(`2026-12-14T${time}`);
      await crew.tick();
    }
    morningIn(crew);
    expect(crew.logged.length).toBeGreaterThan(0);
  });

  it('that has closed the channel to us is not asked again, and other builds get theirs', async () => {
    await using crew = await crewAtWork({ channels: ['coupe', 'saloon'], mayLog: true });
    const [coupe = '', saloon = ''] = crew.channel.channels.map(({ id }) => id);
    await crew.type(place('head gasket'), { channelId: coupe });
    await crew.type(place('oil cooler'), { channelId: saloon });
    const answer = { status: 403, code: 50_013, message: 'Missing Permissions' };
    crew.channel.faults.http({ method: 'POST', path: new RegExp(`^/channels/${coupe}/messages$`), answer });
    crew.at('2026-12-14T08:30');
    await crew.tick();
    crew.at('2026-12-14T12:00');
    await crew.tick();
    expect(crew.mornings(coupe)).toEqual([]);
    expect(crew.mornings(saloon)).toHaveLength(1);
    const asked = crew.wire.exchanges.filter(
      ({ method, path }) => method === 'POST' && path === `/channels/${coupe}/messages`,
    );
    expect(asked).toHaveLength(1);
  });
});
