/**
 * The real client does everything a bot does here, and each request and answer is held against the platform's
 * published API description (OpenAPI 3.1, discord-api-spec, MIT).
 */
import {
  ButtonStyle,
  type Client,
  ComponentType,
  type Interaction,
  MessageFlags,
  SlashCommandBuilder,
  type TextChannel,
  TextInputStyle,
} from 'discord.js';
import { describe, expect, it } from 'vitest';
import type { LocalChannel } from '../../../src/channel/contract.ts';
import { connectedClient, onInteraction, recording, testChannel } from '../../support/channel.ts';
import { type Exchange, publishedApi } from '../../support/published-api.ts';

const api = publishedApi();

const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mNk+A8AAQUBAScY42YAAAAASUVORK5CYII=',
  'base64',
);

const COMMANDS = [
  new SlashCommandBuilder()
    .setName('order')
    .setDescription('Parts on order')
    .addSubcommand((sub) =>
      sub
        .setName('place')
        .setDescription('Write down an order')
        .addStringOption((option) => option.setName('what').setDescription('The part').setRequired(true))
        .addIntegerOption((option) => option.setName('quantity').setDescription('How many').setMinValue(1))
        .addUserOption((option) => option.setName('chaser').setDescription('Who chases it'))
        .addAttachmentOption((option) => option.setName('receipt').setDescription('A picture of it')),
    )
    .addSubcommand((sub) => sub.setName('form').setDescription('Write down an order in a form')),
];

/** A card as the bot sends it: everything of Components V2 that it uses. */
const card = (pressed: boolean) => ({
  flags: MessageFlags.IsComponentsV2 as const,
  files: [{ attachment: PNG, name: 'chart.png' }],
  components: [
    {
      type: ComponentType.Container as const,
      accent_color: 0x1d3a6e,
      components: [
        { type: ComponentType.TextDisplay as const, content: '## 2.4 bar\nfrom the gauge' },
        {
          type: ComponentType.Section as const,
          components: [{ type: ComponentType.TextDisplay as const, content: 'Head gasket' }],
          accessory: {
            type: ComponentType.Button as const,
            custom_id: 'arrived',
            label: pressed ? 'Arrived' : 'Has it arrived?',
            style: ButtonStyle.Success as const,
            disabled: pressed,
          },
        },
        { type: ComponentType.Separator as const },
        {
          type: ComponentType.MediaGallery as const,
          items: [{ media: { url: 'attachment://chart.png' }, description: 'Oil pressure' }],
        },
        {
          type: ComponentType.ActionRow as const,
          components: [
            {
              type: ComponentType.StringSelect as const,
              custom_id: 'state',
              options: [
                { label: 'All of it', value: 'all' },
                { label: 'Only some', value: 'some' },
              ],
            },
          ],
        },
        {
          type: ComponentType.ActionRow as const,
          components: [{ type: ComponentType.UserSelect as const, custom_id: 'who' }],
        },
      ],
    },
  ],
});

const form = {
  custom_id: 'order-form',
  title: 'An order',
  components: [
    {
      type: ComponentType.Label as const,
      label: 'What',
      component: { type: ComponentType.TextInput as const, custom_id: 'what', style: TextInputStyle.Short },
    },
    {
      type: ComponentType.Label as const,
      label: 'How soon',
      component: {
        type: ComponentType.StringSelect as const,
        custom_id: 'soon',
        options: [
          { label: 'This week', value: 'week' },
          { label: 'Whenever', value: 'ever' },
        ],
      },
    },
  ],
};

async function answer(interaction: Interaction): Promise<void> {
  if (interaction.isChatInputCommand()) {
    if (interaction.options.getSubcommand() === 'form') await interaction.showModal(form);
    else {
      await interaction.deferReply();
      await interaction.editReply(card(false));
      const what = interaction.options.getString('what', true);
      await interaction.followUp({ content: `saved ${what}`, flags: MessageFlags.Ephemeral });
    }
  } else if (interaction.isModalSubmit()) {
    const soon = interaction.fields.getStringSelectValues('soon').join();
    await interaction.reply({
      content: `${interaction.fields.getTextInputValue('what')} ${soon}`,
      withResponse: true,
    });
    await interaction.fetchReply();
    await interaction.deleteReply();
  } else if (interaction.isButton()) await interaction.update(card(true));
  else if (interaction.isUserSelectMenu())
    await interaction.reply(`asked ${interaction.users.first()?.displayName}`);
  else if (interaction.isStringSelectMenu()) {
    await interaction.deferUpdate();
    await interaction.editReply(card(false));
  }
}

async function everything(channel: LocalChannel, client: Client<true>): Promise<void> {
  await client.application.commands.set(COMMANDS);
  await client.application.commands.set(COMMANDS, channel.guildId);
  await client.application.commands.fetch();
  await client.application.fetch();
  onInteraction(client, answer);
  await people(channel);
  await messages(channel, client);
}

async function people(channel: LocalChannel): Promise<void> {
  const ada = channel.hands('Ada');
  const placed = await ada.type('/order place what:"head gasket" quantity:2 chaser:@Ben', {
    files: [{ name: 'receipt.png', type: 'image/png', bytes: PNG }],
  });
  if (placed.kind !== 'answered') throw new Error(JSON.stringify(placed));
  expect(placed.message.components[0]?.components).toHaveLength(6);
  expect((await ada.choose(placed.message.id, 'state', ['Only some'])).kind).toBe('changed');
  expect(await ada.choose(placed.message.id, 'who', ['Ben'])).toMatchObject({
    message: { content: 'asked Ben' },
  });
  expect((await ada.press(placed.message.id, 'arrived')).kind).toBe('changed');
  expect(await ada.press(placed.message.id, 'arrived')).toMatchObject({ kind: 'refused' });
  const opened = await ada.type('/order form');
  if (opened.kind !== 'form') throw new Error(JSON.stringify(opened));
  const submitted = await ada.submit(opened.form, { what: 'oil', soon: ['week'] });
  expect(submitted).toMatchObject({ kind: 'answered', message: { content: 'oil week' } });
}

async function messages(channel: LocalChannel, client: Client<true>): Promise<void> {
  const place = (await client.channels.fetch(channel.channels[0]?.id ?? '', { force: true })) as TextChannel;
  const sent = await place.send({
    content: 'due today',
    embeds: [
      { title: 'Late', fields: [{ name: 'Gasket', value: '4 days' }], image: { url: 'attachment://a.png' } },
    ],
    files: [{ attachment: PNG, name: 'a.png', description: 'a dot' }],
    nonce: 'due-1',
    enforceNonce: true,
  });
  await sent.edit({ content: 'due yesterday' });
  await sent.react('🔧');
  await sent.reactions.cache.first()?.users.fetch();
  await sent.pin();
  await place.messages.fetchPins();
  await sent.unpin();
  await sent.reply('and this');
  await place.messages.fetch({ limit: 10, around: sent.id });
  await place.messages.fetch({ message: sent.id, force: true });
  await place.sendTyping();
  const thread = await sent.startThread({ name: 'the gasket' });
  await thread.send('in here');
  await thread.setArchived(true);
  const loose = await place.threads.create({ name: 'by itself' });
  await loose.delete();
  await sent.reactions.cache.first()?.users.remove();
  await place.setTopic('what is left to do');
  const ben = await place.guild.members.search({ query: 'be' });
  await place.guild.members.fetch({ user: ben.firstKey() ?? '', force: true });
  await client.users.fetch(ben.firstKey() ?? '', { force: true });
  await place.guild.roles.fetch();
  await place.guild.channels.fetch();
  const direct = await client.users.send(ben.firstKey() ?? '', 'a word');
  await direct.delete();
  await place.guild.scheduledEvents.create({
    name: 'First start',
    scheduledStartTime: '2026-06-01T18:00:00Z',
    scheduledEndTime: '2026-06-01T20:00:00Z',
    privacyLevel: 2,
    entityType: 3,
    entityMetadata: { location: 'the shed' },
  });
  await sent.delete();
}

describe('everything a bot does', () => {
  it('is taken, and agrees with the published API description in each request and answer', async () => {
    const exchanges: Exchange[] = [];
    await using channel = await testChannel();
    await using client = await connectedClient(channel, { rest: recording(exchanges) });
    await everything(channel, client);
    expect(exchanges.length).toBeGreaterThan(40);
    expect(channel.unknownRequests).toEqual([]);
    expect(channel.refusals).toEqual([]);
    // Without the description (said on standard output) there is nothing to hold the exchanges against.
    const problems = exchanges.flatMap((exchange) => api?.problemsOf(exchange) ?? []);
    expect([...new Set(problems)]).toEqual([]);
  });

  it.skipIf(api === undefined)('would notice a request or an answer that is not as described', () => {
    const sent = { method: 'POST', path: '/channels/1500000000000000001/messages', status: 200 };
    expect(api?.problemsOf({ ...sent, request: { content: 5 }, response: {} })).not.toEqual([]);
    const parts = [{ type: 17, components: [{ type: 10 }] }];
    const request = { flags: 32768, components: parts };
    expect(api?.problemsOf({ ...sent, status: 204, request, response: undefined })).not.toEqual([]);
    expect(api?.problemsOf({ ...sent, path: '/nowhere', request: {}, response: {} })).toEqual([
      'POST /nowhere: not described',
    ]);
  });
});
