import { Events, GatewayIntentBits } from 'discord.js';
import { expect, it } from 'vitest';
import { connectedClient, onInteraction, testChannel } from '../../support/channel.ts';

it('leaves nothing hanging when it closes', async () => {
  const channel = await testChannel();
  await using client = await connectedClient(channel);
  await client.application.commands.set([{ name: 'do', description: 'Do it' }]);
  const arrived = new Promise<void>((resolve) => {
    onInteraction(client, () => Promise.resolve(resolve()));
  });
  channel.faults.http({ path: /\/typing$/, answer: 'hang' });
  const { hostname, port } = new URL(channel.pageUrl);
  const typing = fetch(`${channel.apiUrl}/v10/channels/${channel.channels[0]?.id}/typing`, {
    method: 'POST',
  });
  const outcome = channel.hands('Ada').type('/do');
  await arrived;
  const lost = expect(typing).rejects.toThrow('fetch failed');
  await channel.close();
  expect(await outcome).toMatchObject({ kind: 'unanswered' });
  await lost;
  await expect(fetch(`http://${hostname}:${port}/`)).rejects.toThrow('fetch failed');
});

it('takes "working" away when the bot never finishes', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  await client.application.commands.set([{ name: 'do', description: 'Do it' }]);
  const deferred = new Promise<void>((resolve) => {
    onInteraction(client, async (interaction) => {
      if (interaction.isChatInputCommand()) await interaction.deferReply();
      resolve();
    });
  });
  const ada = channel.hands('Ada');
  const placeId = channel.channels[0]?.id ?? '';
  const outcome = ada.type('/do');
  await deferred;
  expect(ada.sees(placeId)).toHaveLength(1);
  expect(channel.messages(placeId)).toEqual([]);
  channel.clock.moveMs(15 * 60_000);
  expect(await outcome).toMatchObject({ kind: 'unanswered' });
  expect(ada.sees(placeId)).toEqual([]);
});

it('tells a bot that may know the members who joins, and everybody who reacts', async () => {
  await using channel = await testChannel({ privilegedIntents: ['members'] });
  await using client = await connectedClient(channel, {
    intents: [
      GatewayIntentBits.Guilds,
      GatewayIntentBits.GuildMembers,
      GatewayIntentBits.GuildMessages,
      GatewayIntentBits.GuildMessageReactions,
    ],
  });
  const joined = new Promise((resolve) => {
    client.on(Events.GuildMemberAdd, (member) => resolve(member.displayName));
  });
  const reacted = new Promise((resolve) => {
    client.on(Events.MessageReactionAdd, (reaction, user) =>
      resolve([reaction.emoji.name, user.displayName]),
    );
  });
  const cleo = channel.hands('Cleo');
  expect(await joined).toBe('Cleo');
  const posted = await cleo.type('first!');
  if (posted.kind !== 'posted') throw new Error(posted.kind);
  expect(await cleo.react(posted.message.id, '🔧')).toMatchObject({ kind: 'posted' });
  expect(await reacted).toEqual(['🔧', 'Cleo']);
  expect(await cleo.react(posted.message.id, 'wrench')).toEqual({
    kind: 'refused',
    problem: 'Unknown Emoji.',
  });
});

it('says so when its port is taken', async () => {
  await using channel = await testChannel();
  const port = Number(new URL(channel.pageUrl).port);
  await expect(testChannel({ port })).rejects.toMatchObject({ code: 'EADDRINUSE' });
});
