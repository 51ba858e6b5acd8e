import {
  type Client,
  type ClientOptions,
  Events,
  GatewayDispatchEvents,
  GatewayIntentBits,
} from 'discord.js';
import { expect, it } from 'vitest';
import type { LocalChannel } from '../../../src/channel/contract.ts';
import { connectedClient, onInteraction, testChannel } from '../../support/channel.ts';

/** A client that answers `/ping` with `pong`, and the count of interactions it saw. */
async function pinging(channel: LocalChannel, options: Partial<ClientOptions> = {}) {
  const client = await connectedClient(channel, options);
  await client.application.commands.set([{ name: 'ping', description: 'Say pong' }]);
  const seen: string[] = [];
  onInteraction(client, async (interaction) => {
    seen.push(interaction.id);
    if (interaction.isChatInputCommand()) await interaction.reply('pong');
  });
  return { client, seen, [Symbol.asyncDispose]: () => client.destroy() };
}

const once = (client: Client, event: string): Promise<unknown> =>
  new Promise((resolve) => client.once(event, resolve));

const dispatched = (client: Client, name: string): Promise<unknown> =>
  new Promise((resolve) => {
    client.ws.on(name as GatewayDispatchEvents, resolve);
  });

it('delivers what happened while the connection was gone', async () => {
  await using channel = await testChannel();
  await using bot = await pinging(channel);
  const resumed = dispatched(bot.client, GatewayDispatchEvents.Resumed);
  channel.faults.dropSockets();
  const outcome = await channel.hands('Ada').type('/ping');
  expect(outcome).toMatchObject({ kind: 'answered', message: { content: 'pong' } });
  await resumed;
  expect(bot.seen).toHaveLength(1);
});

it('is resumed by a client that was asked to reconnect', async () => {
  await using channel = await testChannel();
  await using bot = await pinging(channel);
  const resumed = dispatched(bot.client, GatewayDispatchEvents.Resumed);
  channel.faults.askReconnect();
  await resumed;
  expect(await channel.hands('Ada').type('/ping')).toMatchObject({ kind: 'answered' });
});

it('makes a client whose session it forgot begin anew', async () => {
  await using channel = await testChannel();
  // The client lets five seconds pass between two beginnings unless told otherwise.
  const buildIdentifyThrottler = () => Promise.resolve({ waitForIdentify: () => Promise.resolve() });
  await using bot = await pinging(channel, { ws: { buildIdentifyThrottler } });
  const again = once(bot.client, Events.ShardReady);
  channel.faults.invalidateSession(false);
  await again;
  expect(await channel.hands('Ada').type('/ping')).toMatchObject({ kind: 'answered' });
});

it('lets a client resume when the session is only in doubt', async () => {
  await using channel = await testChannel();
  await using bot = await pinging(channel);
  const resumed = dispatched(bot.client, GatewayDispatchEvents.Resumed);
  channel.faults.invalidateSession(true);
  await resumed;
  expect(await channel.hands('Ada').type('/ping')).toMatchObject({ kind: 'answered' });
});

it.each([
  { code: 4000, what: 'an unknown error' },
  { code: 4009, what: 'a session that timed out' },
])('takes the client back after closing with $code, $what', async ({ code }) => {
  await using channel = await testChannel();
  await using bot = await pinging(channel);
  const resumed = dispatched(bot.client, GatewayDispatchEvents.Resumed);
  channel.faults.closeWith(code);
  await resumed;
  expect(await channel.hands('Ada').type('/ping')).toMatchObject({ kind: 'answered' });
});

it('refuses a wrong token', async () => {
  await using channel = await testChannel();
  const stranger = { ...channel, token: 'somebody.elses' };
  await expect(connectedClient(stranger)).rejects.toMatchObject({ code: 'TokenInvalid' });
  expect(channel.refusals).toMatchObject([{ status: 401 }]);
});

it('refuses a privileged intent that is not switched on', async () => {
  await using channel = await testChannel();
  const asked = connectedClient(channel, { intents: [GatewayIntentBits.MessageContent] });
  await expect(asked).rejects.toThrow('disallowed intents');
});

it('blanks messages for a bot without the content intent unless they mention it', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  const heard: string[] = [];
  const both = new Promise<void>((resolve) => {
    client.on(Events.MessageCreate, (message) => {
      heard.push(message.content);
      if (heard.length === 3) resolve();
    });
  });
  const ada = channel.hands('Ada');
  await ada.type('not for you');
  await ada.type('@Chargehand for you');
  await ada.type('between us', { channelId: ada.directChannelId() });
  await both;
  expect(heard).toEqual(['', `<@${client.user.id}> for you`, 'between us']);
});

it('shows whole messages to a bot with the content intent', async () => {
  await using channel = await testChannel({ privilegedIntents: ['content'] });
  await using client = await connectedClient(channel, {
    intents: [GatewayIntentBits.Guilds, GatewayIntentBits.GuildMessages, GatewayIntentBits.MessageContent],
  });
  const heard = new Promise<string>((resolve) => {
    client.on(Events.MessageCreate, (message) => resolve(message.content));
  });
  await channel.hands('Ada').type('anyone there?');
  expect(await heard).toBe('anyone there?');
});

it('delivers an interaction twice when told to, and takes one answer', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  await client.application.commands.set([{ name: 'ping', description: 'Say pong' }]);
  const codes: unknown[] = [];
  const two = new Promise<void>((resolve) => {
    let seen = 0;
    onInteraction(client, async (interaction) => {
      if (!interaction.isChatInputCommand()) return;
      await interaction.reply('pong').catch((error: { code: unknown }) => codes.push(error.code));
      seen += 1;
      if (seen === 2) resolve();
    });
  });
  const stop = channel.faults.repeatInteractions(2);
  await channel.hands('Ada').type('/ping');
  await two;
  stop();
  expect(codes).toEqual([40060]);
});

it('says at once that nobody answers when no bot has ever connected', async () => {
  await using channel = await testChannel();
  expect(await channel.hands('Ada').type('/ping')).toMatchObject({ kind: 'refused' });
});
