import { type Command, isRunnable, type Runnable } from './command.ts';
import { type OptionSpec, optionsOf } from './options.ts';

/** A command as the platform's registration and /help need it. */
export interface CommandEntry {
  readonly name: string;
  readonly description: string;
  readonly command: Command;
  /** Set when the command runs by itself. */
  readonly options: readonly OptionSpec[];
  readonly subcommands: readonly SubcommandEntry[];
}

export interface SubcommandEntry {
  readonly name: string;
  readonly description: string;
  readonly options: readonly OptionSpec[];
}

/** Every command there is, by name. */
export interface Catalogue {
  readonly entries: readonly CommandEntry[];
  find(name: string): CommandEntry | undefined;
  /** The part that runs, for a command and the subcommand given, if any. */
  runnable(command: string, subcommand: string | null): Runnable | undefined;
}

/** @throws Error when an option cannot be shown on the platform. */
export function catalogueOf(commands: ReadonlyMap<string, Command>): Catalogue {
  const entries = [...commands].map(([name, command]) => entryOf(name, command));
  entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  return {
    entries,
    find: (name) => entries.find((entry) => entry.name === name),
    runnable(name, subcommand) {
      const does = commands.get(name)?.does;
      if (does === undefined) return undefined;
      if (isRunnable(does)) return subcommand === null ? does : undefined;
      return subcommand === null ? undefined : does[subcommand];
    },
  };
}

function entryOf(name: string, command: Command): CommandEntry {
  const { description, does } = command;
  if (isRunnable(does)) return { name, description, command, options: optionsOf(does), subcommands: [] };
  const subcommands = Object.entries(does).map(([subName, runnable]) => ({
    name: subName,
    description: runnable.description,
    options: optionsOf(runnable),
  }));
  return { name, description, command, options: [], subcommands };
}
