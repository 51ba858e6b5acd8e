/**
 * The gateway as a client meets it that does not behave. Source: developer documentation, "Gateway" and "Gateway close
 * event codes".
 */
import { once } from 'node:events';
import { expect, it } from 'vitest';
import { WebSocket } from 'ws';
import type { LocalChannel } from '../../../src/channel/contract.ts';
import { testChannel } from '../../support/channel.ts';

interface Frame {
  readonly op: number;
  readonly t: string | null;
  readonly d: unknown;
}

/** A bare socket: frames one by one, and the code it is closed with. */
function bare(channel: LocalChannel, query = 'v=10&encoding=json') {
  const socket = new WebSocket(`${channel.pageUrl.replace('http', 'ws')}?${query}`);
  const frames: Frame[] = [];
  let wake = Promise.withResolvers<void>();
  socket.on('message', (data) => {
    frames.push(JSON.parse(String(data)) as Frame);
    wake.resolve();
    wake = Promise.withResolvers();
  });
  const closed = once(socket, 'close').then(([code]) => Number(code));
  const next = async (): Promise<Frame> => {
    for (;;) {
      const frame = frames.shift();
      if (frame !== undefined) return frame;
      await wake.promise;
    }
  };
  const send = (op: number, d: unknown) => socket.send(JSON.stringify({ op, d }));
  return { socket, next, send, closed, [Symbol.dispose]: () => socket.terminate() };
}

/** A bare socket past READY and GUILD_CREATE. */
async function identified(channel: LocalChannel, intents = 1) {
  const line = bare(channel);
  await line.next();
  line.send(2, { token: channel.token, intents, properties: {} });
  const ready = await line.next();
  await line.next();
  return { ...line, sessionId: (ready.d as { session_id: string }).session_id };
}

it.each([
  { what: 'another version', query: 'v=9&encoding=json', code: 4012 },
  { what: 'another encoding', query: 'v=10&encoding=etf', code: 4002 },
])('closes a connection of $what with $code', async ({ query, code }) => {
  await using channel = await testChannel();
  using line = bare(channel, query);
  expect(await line.closed).toBe(code);
});

it.each([
  { what: 'is no JSON', text: '{', code: 4002 },
  { what: 'is larger than 4096 bytes', text: JSON.stringify({ op: 1, d: 'x'.repeat(4096) }), code: 4002 },
  { what: 'has an opcode that is none', text: '{"op":99}', code: 4001 },
  { what: 'asks before it has said who it is', text: '{"op":3,"d":{}}', code: 4003 },
  { what: 'asks for intents that are none', text: '', intents: 1 << 30, code: 4013 },
  { what: 'has a wrong token', text: '{"op":2,"d":{"token":"x","intents":1}}', code: 4004 },
])('closes the connection of a client that $what with $code', async ({ text, intents, code }) => {
  await using channel = await testChannel();
  using line = bare(channel);
  await line.next();
  if (intents === undefined) line.socket.send(text);
  else line.send(2, { token: channel.token, intents });
  expect(await line.closed).toBe(code);
});

it('closes a connection that identifies twice with 4005', async () => {
  await using channel = await testChannel();
  using line = await identified(channel);
  line.send(2, { token: channel.token, intents: 1 });
  expect(await line.closed).toBe(4005);
});

it('closes a connection that sends more than 120 times a minute with 4008', async () => {
  await using channel = await testChannel();
  using line = bare(channel);
  await line.next();
  for (let n = 0; n < 60; n += 1) line.send(1, null);
  for (let n = 0; n < 60; n += 1) await line.next();
  channel.clock.moveMs(60_000);
  for (let n = 0; n < 121; n += 1) line.send(1, null);
  expect(await line.closed).toBe(4008);
});

it('acknowledges heartbeats', async () => {
  await using channel = await testChannel();
  using line = bare(channel);
  expect(await line.next()).toMatchObject({ op: 10, d: { heartbeat_interval: 41_250 } });
  line.send(1, null);
  expect(await line.next()).toMatchObject({ op: 11 });
});

it('does not resume a session it does not know, nor one whose client said goodbye', async () => {
  await using channel = await testChannel();
  const first = await identified(channel);
  first.socket.close(1000);
  await first.closed;
  for (const session_id of ['none', first.sessionId]) {
    using line = bare(channel);
    await line.next();
    line.send(6, { token: channel.token, session_id, seq: 1 });
    expect(await line.next()).toMatchObject({ op: 9, d: false });
  }
});

it('replays only what the client has not seen', async () => {
  await using channel = await testChannel();
  const first = await identified(channel, 1 | (1 << 9));
  await channel.hands('Ada').type('one');
  await first.next();
  first.socket.terminate();
  await first.closed;
  await channel.hands('Ada').type('two');
  using line = bare(channel);
  await line.next();
  line.send(6, { token: channel.token, session_id: first.sessionId, seq: 3 });
  expect(await line.next()).toMatchObject({ op: 0, t: 'MESSAGE_CREATE' });
  expect(await line.next()).toMatchObject({ op: 0, t: 'RESUMED' });
});

it('lists members by the start of their name', async () => {
  await using channel = await testChannel();
  using line = await identified(channel);
  line.send(8, { guild_id: channel.guildId, query: 'be', limit: 10, nonce: 'n' });
  expect(await line.next()).toMatchObject({
    t: 'GUILD_MEMBERS_CHUNK',
    d: { nonce: 'n', members: [{ user: { global_name: 'Ben' } }] },
  });
});
