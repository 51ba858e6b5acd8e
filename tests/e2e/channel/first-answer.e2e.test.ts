import { SlashCommandBuilder } from 'discord.js';
import { expect, it } from 'vitest';
import { connectedClient, onInteraction, testChannel } from '../../support/channel.ts';

it('answers a typed command through the real client', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  await client.application.commands.set([
    new SlashCommandBuilder()
      .setName('thread')
      .setDescription('Which thread is it')
      .addStringOption((option) => option.setName('size').setDescription('As measured').setRequired(true))
      .addStringOption((option) =>
        option.setName('side').setDescription('Which side').addChoices({ name: 'male', value: 'm' }),
      ),
  ]);
  await channel.ready();
  onInteraction(client, async (interaction) => {
    if (!interaction.isChatInputCommand()) return;
    const { options } = interaction;
    await interaction.reply(`${options.getString('size')} ${options.getString('side')}`);
  });
  const outcome = await channel.hands('Ada').type('/thread 21.9 x 1.5 side:male');
  expect(outcome).toMatchObject({
    kind: 'answered',
    private: false,
    message: { content: '21.9 x 1.5 m', author: { bot: true } },
  });
  expect(channel.messages(channel.channels[0]?.id ?? '').map(({ content }) => content)).toEqual([
    '21.9 x 1.5 m',
  ]);
  expect(channel.unknownRequests).toEqual([]);
  expect(channel.refusals).toEqual([]);
});
