import {
  type APIApplicationCommandBasicOption,
  type ApplicationCommandData,
  ApplicationCommandOptionType,
  ApplicationCommandType,
  ApplicationIntegrationType,
  type Client,
  InteractionContextType,
  type RESTPostAPIChatInputApplicationCommandsJSONBody,
} from 'discord.js';
import type { Catalogue, CommandEntry, SubcommandEntry } from '../bot/catalogue.ts';
import type { OptionSpec } from '../bot/options.ts';
import { worksAnywhere } from '../bot/where.ts';

/** Everything the platform is told about our commands. */
export function registrationOf(catalogue: Catalogue): RESTPostAPIChatInputApplicationCommandsJSONBody[] {
  return catalogue.entries.map(commandPart);
}

/**
 * Registers the commands when, and only when, they differ from what the platform has: creating counts against a daily
 * limit, and every change makes people's apps reload. Resolves to whether anything was sent.
 */
export async function register(client: Client<true>, catalogue: Catalogue): Promise<boolean> {
  const wanted = registrationOf(catalogue);
  const { commands } = client.application;
  const known = await commands.fetch();
  const same =
    known.size === wanted.length &&
    // equals() reads the API's own form as well; only its types have not caught up
    wanted.every((command) =>
      known.some((one) => one.name === command.name && one.equals(command as ApplicationCommandData, true)),
    );
  if (!same) await commands.set(wanted);
  return !same;
}

function commandPart({
  name,
  description,
  options,
  subcommands,
}: CommandEntry): RESTPostAPIChatInputApplicationCommandsJSONBody {
  return {
    type: ApplicationCommandType.ChatInput,
    name,
    description,
    ...whereOf(name),
    options: subcommands.length > 0 ? subcommands.map(subcommandPart) : options.map(optionPart),
  };
}

/** Sums go wherever a person goes; what works on a crew's record stays with the crew's server. */
function whereOf(name: string) {
  return worksAnywhere(name)
    ? {
        integration_types: [ApplicationIntegrationType.GuildInstall, ApplicationIntegrationType.UserInstall],
        contexts: [
          InteractionContextType.Guild,
          InteractionContextType.BotDM,
          InteractionContextType.PrivateChannel,
        ],
      }
    : {
        integration_types: [ApplicationIntegrationType.GuildInstall],
        contexts: [InteractionContextType.Guild],
      };
}

function subcommandPart({ name, description, options }: SubcommandEntry) {
  return {
    type: ApplicationCommandOptionType.Subcommand as const,
    name,
    description,
    options: options.map(optionPart),
  };
}

function optionPart(spec: OptionSpec): APIApplicationCommandBasicOption {
  const { name, description, required } = spec;
  const common = { name, description, required };
  switch (spec.kind) {
    case 'person':
      return { ...common, type: ApplicationCommandOptionType.User };
    case 'file':
      return { ...common, type: ApplicationCommandOptionType.Attachment };
    case 'yes-no':
      return { ...common, type: ApplicationCommandOptionType.Boolean };
    case 'integer':
      return { ...common, type: ApplicationCommandOptionType.Integer, ...numberLimits(spec) };
    case 'number':
      return { ...common, type: ApplicationCommandOptionType.Number, ...numberLimits(spec) };
    case 'text':
      return { ...common, type: ApplicationCommandOptionType.String, ...textLimits(spec) };
  }
}

const numberLimits = ({ min, max }: OptionSpec) => ({
  ...(min === undefined ? {} : { min_value: min }),
  ...(max === undefined ? {} : { max_value: max }),
});

/** The platform allows fixed choices or suggestions, never both. */
function textLimits({ choices, suggests, minLength, maxLength }: OptionSpec) {
  if (choices.length > 0) return { choices: choices.map((choice) => ({ name: choice, value: choice })) };
  return {
    ...(minLength === undefined ? {} : { min_length: minLength }),
    ...(maxLength === undefined ? {} : { max_length: maxLength }),
    ...(suggests ? { autocomplete: true as const } : {}),
  };
}
