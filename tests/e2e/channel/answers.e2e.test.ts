import {
  type ChatInputCommandInteraction,
  type Client,
  DiscordAPIError,
  type Interaction,
  MessageFlags,
  SlashCommandBuilder,
  type TextChannel,
} from 'discord.js';
import { expect, it } from 'vitest';
import type { LocalChannel } from '../../../src/channel/contract.ts';
import { connectedClient, onInteraction, testChannel } from '../../support/channel.ts';

type Answer = (interaction: ChatInputCommandInteraction) => Promise<unknown>;

/** A client with one command `/do` and this way of answering it; what the answering threw comes back as its code. */
async function doing(channel: LocalChannel, answer: Answer, options = {}) {
  const client = await connectedClient(channel, options);
  await client.application.commands.set([{ name: 'do', description: 'Do it' }]);
  const { promise: failed, resolve: fail } = Promise.withResolvers<unknown>();
  onInteraction(client, async (interaction) => {
    if (!interaction.isChatInputCommand()) return;
    try {
      await answer(interaction);
    } catch (error) {
      if (!(error instanceof DiscordAPIError)) throw error;
      fail(error.code);
    }
  });
  return { client, failed, [Symbol.asyncDispose]: () => client.destroy() };
}

const placeOf = async (channel: LocalChannel, client: Client): Promise<TextChannel> =>
  (await client.channels.fetch(channel.channels[0]?.id ?? '')) as TextChannel;

it('takes an answer just within three seconds', async () => {
  await using channel = await testChannel();
  await using _bot = await doing(channel, async (interaction) => {
    channel.clock.moveMs(2_999);
    await interaction.reply('just');
  });
  expect(await channel.hands('Ada').type('/do')).toMatchObject({ kind: 'answered' });
});

it('knows the interaction no more after three seconds', async () => {
  await using channel = await testChannel();
  await using bot = await doing(channel, async (interaction) => {
    channel.clock.moveMs(3_001);
    await interaction.reply('too late');
  });
  expect(await channel.hands('Ada').type('/do')).toMatchObject({ kind: 'unanswered' });
  expect(await bot.failed).toBe(10062);
});

it('takes no second answer', async () => {
  await using channel = await testChannel();
  await using bot = await doing(channel, async (interaction) => {
    await interaction.reply('one');
    const { id, token } = interaction;
    await interaction.client.rest.post(`/interactions/${id}/${token}/callback`, {
      auth: false,
      body: { type: 4, data: { content: 'two' } },
    });
  });
  await channel.hands('Ada').type('/do');
  expect(await bot.failed).toBe(40060);
});

it('waits for a deferred answer and keeps it private, as the first answer said', async () => {
  await using channel = await testChannel();
  await using _bot = await doing(channel, async (interaction) => {
    await interaction.deferReply({ flags: MessageFlags.Ephemeral });
    channel.clock.moveMs(60_000);
    await interaction.editReply('a minute later');
  });
  expect(await channel.hands('Ada').type('/do')).toMatchObject({
    kind: 'answered',
    private: true,
    message: { content: 'a minute later' },
  });
  expect(channel.messages(channel.channels[0]?.id ?? '')).toEqual([]);
});

it('ends the token after fifteen minutes', async () => {
  await using channel = await testChannel();
  await using bot = await doing(channel, async (interaction) => {
    await interaction.deferReply();
    channel.clock.moveMs(15 * 60_000 + 1);
    await interaction.editReply('at last');
  });
  expect(await channel.hands('Ada').type('/do')).toMatchObject({ kind: 'unanswered' });
  expect(await bot.failed).toBe(50027);
});

it('opens no form in answer to a form', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  await client.application.commands.set([{ name: 'do', description: 'Do it' }]);
  const form = {
    custom_id: 'f',
    title: 'F',
    components: [{ type: 18, label: 'L', component: { type: 4, custom_id: 'x', style: 1 } }],
  };
  const { promise: code, resolve } = Promise.withResolvers<unknown>();
  onInteraction(client, async (interaction: Interaction) => {
    if (interaction.isChatInputCommand()) await interaction.showModal(form as never);
    else if (interaction.isModalSubmit()) {
      const { id, token } = interaction;
      const path = `/interactions/${id}/${token}/callback` as const;
      await client.rest
        .post(path, { auth: false, body: { type: 9, data: form } })
        .catch((error: DiscordAPIError) => resolve(error.code));
      await interaction.reply('then a message');
    }
  });
  const ada = channel.hands('Ada');
  const opened = await ada.type('/do');
  if (opened.kind !== 'form') throw new Error(opened.kind);
  expect(await ada.submit(opened.form, { x: '' })).toMatchObject({ kind: 'refused' });
  expect(await ada.submit(opened.form, { x: 'y' })).toMatchObject({ message: { content: 'then a message' } });
  expect(await code).toBe(50035);
});

it('asks the bot for suggestions with everything typed so far', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  await client.application.commands.set([
    new SlashCommandBuilder()
      .setName('order')
      .setDescription('Parts')
      .addSubcommand((sub) =>
        sub
          .setName('arrived')
          .setDescription('It came')
          .addStringOption((option) =>
            option.setName('which').setDescription('Which order').setRequired(true).setAutocomplete(true),
          )
          .addStringOption((option) => option.setName('note').setDescription('Anything odd')),
      ),
  ]);
  onInteraction(client, async (interaction) => {
    if (!interaction.isAutocomplete()) return;
    const { name, value } = interaction.options.getFocused(true);
    const seen = `${interaction.options.getSubcommand()} ${name} ${value} ${interaction.options.getString('note')}`;
    await interaction.respond([{ name: seen, value: '#12 gasket' }]);
  });
  const line = '/order arrived note:"bent a bit" which:gas';
  expect(await channel.hands('Ada').suggest(line, line.length)).toMatchObject([
    {
      label: 'arrived which gas bent a bit',
      line: '/order arrived note:"bent a bit" which:"#12 gasket" ',
      caret: '/order arrived note:"bent a bit" which:"#12 gasket" '.length,
    },
  ]);
});

it('sends once what a client sends again after a lost answer, if it has a nonce', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  const place = await placeOf(channel, client);
  channel.faults.http({ method: 'POST', path: /\/messages$/, answer: 'lost-answer', times: 2 });
  await place.send({ content: 'due today', nonce: 'due-12', enforceNonce: true });
  expect(channel.messages(place.id)).toHaveLength(1);
});

it('posts twice what a client sends again without a nonce', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  const place = await placeOf(channel, client);
  channel.faults.http({
    method: 'POST',
    path: /\/messages$/,
    answer: 'server-error',
    afterEffect: true,
    times: 1,
  });
  await place.send('due today');
  expect(channel.messages(place.id)).toHaveLength(2);
});

it('forgets a nonce after some minutes', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  const place = await placeOf(channel, client);
  const again = { content: 'due', nonce: 'due-12', enforceNonce: true };
  const first = await place.send(again);
  channel.clock.moveMs(2 * 60_000);
  expect((await place.send(again)).id).toBe(first.id);
  channel.clock.moveMs(2 * 60_000);
  expect((await place.send(again)).id).not.toBe(first.id);
});

it('makes a client wait and try again after too many requests', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  const place = await placeOf(channel, client);
  const statuses: number[] = [];
  client.rest.on('response', (_request, response) => statuses.push(response.status));
  channel.faults.http({
    method: 'POST',
    path: /\/messages$/,
    answer: 'too-many',
    retryAfterMs: 20,
    times: 1,
  });
  await place.send('after all');
  expect(statuses).toEqual([429, 200]);
  expect(channel.messages(place.id)).toHaveLength(1);
});

it('limits messages to five in five seconds of its own clock when it is to be as strict as the platform', async () => {
  await using channel = await testChannel({ rateLimits: 'platform' });
  const id = channel.channels[0]?.id ?? '';
  const send = () =>
    fetch(`${channel.apiUrl}/v10/channels/${id}/messages`, {
      method: 'POST',
      headers: { authorization: `Bot ${channel.token}`, 'content-type': 'application/json' },
      body: JSON.stringify({ content: 'x' }),
    });
  const statuses: number[] = [];
  for (let n = 0; n < 6; n += 1) statuses.push((await send()).status);
  expect(statuses).toEqual([200, 200, 200, 200, 200, 429]);
  channel.clock.moveMs(4_000);
  const refused = await send();
  expect(refused.headers.get('x-ratelimit-reset-after')).toBe('1.000');
  expect(await refused.json()).toMatchObject({ retry_after: 1, global: false });
  channel.clock.moveMs(1_000);
  expect((await send()).headers.get('x-ratelimit-remaining')).toBe('4');
});

it('answers as a channel that the bot was shut out of, when told to', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  const place = await placeOf(channel, client);
  const answer = { status: 403, code: 50013, message: 'Missing Permissions' };
  const open = channel.faults.http({ path: /\/messages$/, answer });
  await expect(place.send('x')).rejects.toMatchObject({ code: 50013 });
  open();
  await place.send('y');
  expect(channel.messages(place.id)).toHaveLength(1);
});

it('gives up on a request that hangs when the client does', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel, { rest: { timeout: 50, retries: 0 } });
  const place = await placeOf(channel, client);
  channel.faults.http({ path: /\/typing$/, answer: 'hang', times: 1 });
  await expect(place.sendTyping()).rejects.toMatchObject({ name: 'AbortError' });
});

it('writes down requests that no route takes', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  await expect(client.rest.get('/gifts/none')).rejects.toMatchObject({ status: 404 });
  expect(channel.unknownRequests).toEqual(['GET /api/v10/gifts/none']);
});
