import {
  ActionRowBuilder,
  type AutocompleteInteraction,
  ButtonBuilder,
  type ButtonInteraction,
  ButtonStyle,
  type ChatInputCommandInteraction,
  type Client,
  ContainerBuilder,
  Events,
  type Interaction,
  LabelBuilder,
  MessageFlags,
  ModalBuilder,
  SeparatorBuilder,
  SlashCommandBuilder,
  StringSelectMenuBuilder,
  type TextChannel,
  TextDisplayBuilder,
  TextInputBuilder,
  TextInputStyle,
} from 'discord.js';
import type { LocalChannel } from '../../src/channel/contract.ts';
import { connectedClient } from '../support/channel.ts';

/** The accent colours our cards carry: late, due soon, done, plain. */
export const TONE = { late: 0xa63a24, soon: 0x8a6410, done: 0x2f6b57, plain: 0x1d3a6e } as const;

/** Suggestions for a thread, most likely first; forty of them for whoever types "many". */
const THREADS = ['11/16 in 16 TPI', '7/8 in 14 TPI', 'M18 x 1.5'];

/** A card as our bot makes them, out of its texts. */
export function card(tone: number, ...texts: readonly string[]): ContainerBuilder {
  const container = new ContainerBuilder().setAccentColor(tone);
  for (const text of texts) container.addTextDisplayComponents(new TextDisplayBuilder().setContent(text));
  return container;
}

const button = (id: string, label: string, style = ButtonStyle.Secondary) =>
  new ButtonBuilder().setCustomId(id).setLabel(label).setStyle(style);
const row = (...buttons: readonly ButtonBuilder[]) =>
  new ActionRowBuilder<ButtonBuilder>().addComponents(...buttons);

export const threadCard = (size: string): ContainerBuilder =>
  card(
    TONE.plain,
    '### Thread',
    `## ${size}`,
    '-# Certain: one match within 0.05 mm.',
    'Major diameter 17.46 mm\nPitch 1.588 mm\nSixty degree flanks\nMeasured over the crests\nMates with the same',
    '-# Caliper ±0.05 mm',
  );

export const orderCard = (): ContainerBuilder =>
  card(TONE.late, '### Order #12', '## Late by 4 days', '-# Due 15 December. Nobody has chased it.')
    .addTextDisplayComponents(
      new TextDisplayBuilder().setContent('> **Caution.** Check the bore before it goes in.'),
    )
    .addSeparatorComponents(new SeparatorBuilder())
    .addTextDisplayComponents(new TextDisplayBuilder().setContent('To Halden Gaskets:'))
    .addTextDisplayComponents(
      new TextDisplayBuilder().setContent('```\nHello,\nwhen does order 4417 leave you?\n```'),
    )
    .addActionRowComponents(
      row(
        button('arrived', 'Arrived', ButtonStyle.Primary),
        button('some', 'Only some came'),
        button('cancel', 'Cancel the order', ButtonStyle.Danger),
      ),
    );

const someForm = () =>
  new ModalBuilder()
    .setCustomId('some-form')
    .setTitle('Only some came')
    .addLabelComponents(
      new LabelBuilder()
        .setLabel('How many came')
        .setDescription('Ordered: 4')
        .setTextInputComponent(
          new TextInputBuilder().setCustomId('count').setStyle(TextInputStyle.Short).setMaxLength(3),
        ),
      new LabelBuilder()
        .setLabel('State')
        .setStringSelectMenuComponent(
          new StringSelectMenuBuilder()
            .setCustomId('state')
            .addOptions({ label: 'Good', value: 'good' }, { label: 'Broken', value: 'broken' }),
        ),
      new LabelBuilder()
        .setLabel('Remark')
        .setTextInputComponent(
          new TextInputBuilder().setCustomId('remark').setStyle(TextInputStyle.Paragraph).setRequired(false),
        ),
    );

const commands = [
  new SlashCommandBuilder()
    .setName('thread')
    .setDescription('Which thread is it')
    .addStringOption((option) =>
      option.setName('size').setDescription('As measured').setRequired(true).setAutocomplete(true),
    ),
  new SlashCommandBuilder().setName('order').setDescription('The order that is late'),
  new SlashCommandBuilder().setName('aside').setDescription('An answer for one person'),
  new SlashCommandBuilder().setName('list').setDescription('A list to choose from'),
];

/** A bare client as the crew's bot: cards, suggestions, buttons, a form and a private answer. */
export async function crewBot(channel: LocalChannel): Promise<CrewBot> {
  const client = await connectedClient(channel);
  await client.application.commands.set(commands);
  await channel.ready();
  const faults: unknown[] = [];
  const presses: string[] = [];
  client.on(Events.InteractionCreate, (interaction) => {
    if (interaction.isButton()) presses.push(interaction.customId);
    answer(interaction).catch((fault: unknown) => faults.push(fault));
  });
  const [first] = channel.channels;
  const place = await client.channels.fetch(first?.id ?? '');
  if (place === null || !place.isTextBased() || !place.isSendable())
    throw new Error('no channel to write in');
  // A channel of a guild's list is a text channel here; the local channel makes no others.
  return Object.assign(client, { faults, presses, place: place as TextChannel });
}

export type CrewBot = Client<true> &
  AsyncDisposable & {
    readonly place: TextChannel;
    /** What the bot itself got wrong; a test expects none. */
    readonly faults: readonly unknown[];
    /** Every press that reached the bot. */
    readonly presses: readonly string[];
  };

async function answer(interaction: Interaction): Promise<void> {
  if (interaction.isAutocomplete()) return suggest(interaction);
  if (interaction.isChatInputCommand()) return command(interaction);
  if (interaction.isButton()) return press(interaction);
  if (interaction.isStringSelectMenu()) {
    const chosen = card(TONE.done, '### List', `## Chosen: ${interaction.values.join(' and ')}`);
    await interaction.update({ components: [chosen], flags: MessageFlags.IsComponentsV2 });
  }
  if (interaction.isModalSubmit()) {
    const [count, state] = [
      interaction.fields.getTextInputValue('count'),
      interaction.fields.getStringSelectValues('state'),
    ];
    const done = card(TONE.soon, '### Order #12', `## ${count} of 4 came`, `-# State: ${state.join()}`);
    await interaction.reply({ components: [done], flags: MessageFlags.IsComponentsV2 });
  }
}

async function suggest(interaction: AutocompleteInteraction): Promise<void> {
  const typed = interaction.options.getFocused();
  const found = typed.startsWith('many')
    ? Array.from(
        { length: 25 },
        (_, index) => `many threads with a rather long description, number ${index + 1}`,
      )
    : THREADS.filter((thread) => thread.includes(typed));
  await interaction.respond(found.map((name) => ({ name, value: name })));
}

async function command(interaction: ChatInputCommandInteraction): Promise<void> {
  const flags = MessageFlags.IsComponentsV2;
  switch (interaction.commandName) {
    case 'thread':
      await interaction.reply({
        components: [threadCard(interaction.options.getString('size', true))],
        flags,
      });
      return;
    case 'order':
      await interaction.reply({ components: [orderCard()], flags });
      return;
    case 'aside':
      await interaction.reply({
        components: [
          card(TONE.plain, '### Aside', '## 2 orders have no chaser').addActionRowComponents(
            row(button('take', 'I chase them')),
          ),
        ],
        flags: flags | MessageFlags.Ephemeral,
      });
      return;
    default:
      await interaction.reply({
        components: [
          card(TONE.plain, '### List').addActionRowComponents(
            new ActionRowBuilder<StringSelectMenuBuilder>().addComponents(
              new StringSelectMenuBuilder()
                .setCustomId('pick')
                .setPlaceholder('Which order')
                .addOptions(
                  Array.from({ length: 25 }, (_, index) => ({
                    label: `Order #${index + 1}`,
                    value: `#${index + 1}`,
                  })),
                ),
            ),
          ),
        ],
        flags,
      });
  }
}

async function press(interaction: ButtonInteraction): Promise<void> {
  switch (interaction.customId) {
    case 'arrived': {
      const arrived = card(TONE.done, '### Order #12', '## Arrived, all of it').addActionRowComponents(
        row(button('undo', 'Undo')),
      );
      await interaction.update({ components: [arrived], flags: MessageFlags.IsComponentsV2 });
      return;
    }
    case 'cancel':
      // Never answered: what the page makes of silence is for a test to see.
      return;
    case 'some':
      await interaction.showModal(someForm());
      return;
    default:
      await interaction.deferUpdate();
  }
}
