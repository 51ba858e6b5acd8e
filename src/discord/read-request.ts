import {
  ApplicationCommandOptionType,
  type AutocompleteInteraction,
  type ChatInputCommandInteraction,
  type CommandInteractionOption,
  ComponentType,
  GuildMember,
  type Interaction,
  type MessageComponentInteraction,
  type ModalSubmitInteraction,
} from 'discord.js';
import type { Person, Place } from '../bot/hand.ts';
import type { Request, SuggestRequest } from '../bot/request.ts';
import type { GivenFile } from '../core/given-file.ts';
import type { Json } from '../core/json.ts';
import type { FileShelf } from './file-shelf.ts';

/** What a person did that wants an answer. */
export type Answerable = Extract<
  Interaction,
  ChatInputCommandInteraction | MessageComponentInteraction | ModalSubmitInteraction
>;

/** Reads an interaction as plain data; its files go on the shelf, from which they can be read. */
export function readRequest(interaction: Answerable, shelf: Pick<FileShelf, 'put'>): Request {
  const asker = { id: interaction.id, ...askerOf(interaction) };
  if (interaction.isChatInputCommand()) {
    const subcommand = interaction.options.getSubcommand(false);
    return {
      ...asker,
      people: peopleIn(interaction.options.data),
      files: filesIn(interaction.options.data, shelf),
      asks: {
        kind: 'run',
        command: interaction.commandName,
        subcommand,
        options: optionsOf(interaction.options.data),
      },
    };
  }
  const fields = interaction.isModalSubmit() ? formFields(interaction) : menuField(interaction);
  return { ...asker, people: {}, asks: { kind: 'press', ref: interaction.customId, fields } };
}

export function readSuggestRequest(interaction: AutocompleteInteraction): SuggestRequest {
  const focused = interaction.options.getFocused(true);
  return {
    ...askerOf(interaction),
    command: interaction.commandName,
    subcommand: interaction.options.getSubcommand(false),
    option: focused.name,
    typed: focused.value,
    given: optionsOf(flat(interaction.options.data).filter(({ focused: beingTyped }) => beingTyped !== true)),
  };
}

function askerOf(interaction: Interaction): { who: Person; place: Place | null } {
  const { user, guildId, channelId, channel } = interaction;
  const name = interaction.inCachedGuild() ? interaction.member.displayName : user.displayName;
  const parentId = channel?.isThread() === true ? channel.parentId : null;
  // through the app on somebody's own account there is no crew, though there may be a server around it
  const { guildId: ofServer, userId: ofPerson } = interaction.authorizingIntegrationOwners;
  const ofCrew = ofServer !== null || ofPerson === null;
  const place =
    guildId === null || channelId === null || !ofCrew
      ? null
      : {
          teamId: guildId,
          channelId,
          channelName: channel && 'name' in channel ? (channel.name ?? '') : '',
          ...(parentId === null ? {} : { threadOf: parentId }),
        };
  return { who: { id: user.id, name }, place };
}

function optionsOf(given: readonly CommandInteractionOption[]): Record<string, Json> {
  return Object.fromEntries(flat(given).map(({ name, value }) => [name, value ?? null]));
}

function peopleIn(given: readonly CommandInteractionOption[]): Record<string, string> {
  return Object.fromEntries(
    flat(given).flatMap(({ user, member }) => {
      if (!user) return [];
      const known = member instanceof GuildMember ? member.displayName : user.displayName;
      return [[user.id, known]];
    }),
  );
}

function filesIn(
  given: readonly CommandInteractionOption[],
  shelf: Pick<FileShelf, 'put'>,
): readonly GivenFile[] {
  return flat(given).flatMap(({ attachment }) => (attachment ? [shelf.put(attachment)] : []));
}

/** The options a subcommand was given, or the command itself. */
function flat(given: readonly CommandInteractionOption[]): readonly CommandInteractionOption[] {
  return given.flatMap((option) =>
    option.type === ApplicationCommandOptionType.Subcommand ||
    option.type === ApplicationCommandOptionType.SubcommandGroup
      ? (option.options ?? [])
      : [option],
  );
}

/** A menu's choice goes under the name its own reference gives it. */
function menuField(interaction: Extract<Interaction, MessageComponentInteraction>): Record<string, string> {
  if (!interaction.isStringSelectMenu()) return {};
  const arg = new URLSearchParams(interaction.customId.split('?')[1] ?? '').get('_menu');
  const [value] = interaction.values;
  return arg === null || value === undefined ? {} : { [arg]: value };
}

function formFields({ fields }: ModalSubmitInteraction): Record<string, string> {
  return Object.fromEntries(
    [...fields.fields.values()].flatMap((field): [string, string][] => {
      if (field.type === ComponentType.TextInput) return [[field.customId, field.value]];
      if (field.type === ComponentType.StringSelect) return [[field.customId, field.values[0] ?? '']];
      return [];
    }),
  );
}
