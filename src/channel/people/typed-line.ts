import type { Command } from '../world/things.ts';
import { nearest } from './nearest.ts';
import { isBranch, type OptionSpec, optionsOf } from './options.ts';
import { type Segment, skipSpaces, splitOptions } from './split-options.ts';

/** A command line that found its command and all words of it. */
export interface TypedCommand {
  readonly kind: 'command';
  readonly command: Command;
  /** Group and subcommand, outermost first. */
  readonly branches: readonly OptionSpec[];
  /** What may be given. */
  readonly options: readonly OptionSpec[];
  readonly given: ReadonlyMap<string, string>;
}

export interface LineProblem {
  readonly kind: 'problem';
  readonly problem: string;
}

/** How far a line has got, for the sender and for the suggestions alike. */
export interface LinePlace {
  readonly command: Command;
  readonly branches: readonly OptionSpec[];
  readonly options: readonly OptionSpec[];
  /** Where the options start in the line. */
  readonly rest: number;
  readonly segments: readonly Segment[];
}

/** Parses `/order place what:"head gasket" quantity:2`. Says in a sentence what is wrong with a line it cannot take. */
export function parseCommandLine(line: string, commands: readonly Command[]): TypedCommand | LineProblem {
  const place = locate(line, commands);
  if ('kind' in place) return place;
  const { command, branches, options, segments } = place;
  const path = ['', command.name].join('/') + branches.map(({ name }) => ` ${name}`).join('');
  const given = new Map<string, string>();
  for (const { name, value } of segments) {
    const target = name ?? unnamedTarget(options, segments)?.name;
    if (name === undefined) {
      const meant = misspelt(value, options);
      if (meant !== undefined) {
        return problem(
          `${path} has no option "${meant.typed}". Did you mean "${meant.names.join('" or "')}"?`,
        );
      }
    }
    const strange = strangeOption(value);
    if (strange !== undefined) {
      const known = options.map((option) => `${option.name}:`).join(', ');
      return problem(`${path} has no option "${strange}". It takes ${known}`);
    }
    if (target === undefined) {
      return problem(
        options.length === 0
          ? `${path} takes no options; leave out "${value}".`
          : `Say which option "${value}" is for: ${options.map((option) => `${option.name}:`).join(', ')}`,
      );
    }
    if (given.has(target)) return problem(`"${target}" is given twice; give it once.`);
    given.set(target, value);
  }
  return { kind: 'command', command, branches, options, given };
}

/** Finds the command and its subcommand and splits the rest. */
export function locate(line: string, commands: readonly Command[]): LinePlace | LineProblem {
  const word = /^\/(\S*)/.exec(line)?.[1] ?? '';
  const command = commands.find(({ name }) => name.toLowerCase() === word.toLowerCase());
  if (command === undefined) {
    const names = commands.map(({ name }) => name);
    const near = nearest(word, names);
    const rather = near.length > 0 ? near : names;
    return problem(
      names.length === 0
        ? `There is no command /${word}: no bot has registered any yet.`
        : `There is no command /${word}. Try ${rather.map((name) => `/${name}`).join(', ')}.`,
    );
  }
  let options = optionsOf(command.body);
  let at = word.length + 1;
  const branches: OptionSpec[] = [];
  while (options.some(isBranch)) {
    const start = skipSpaces(line, at);
    const next = /^\S*/.exec(line.slice(start))?.[0] ?? '';
    const branch = options.find(({ name }) => name.toLowerCase() === next.toLowerCase());
    if (branch === undefined) {
      const names = options.map(({ name }) => name);
      const so = ['', command.name].join('/') + branches.map(({ name }) => ` ${name}`).join('');
      const near = nearest(next, names);
      const list = (near.length > 0 && next !== '' ? near : names).map((name) => `${so} ${name}`).join(', ');
      return problem(
        next === '' ? `${so} needs one word more: ${list}.` : `${so} has no "${next}". Try ${list}.`,
      );
    }
    branches.push(branch);
    options = branch.options;
    at = start + next.length;
  }
  const segments = splitOptions(
    line.slice(at),
    options.map(({ name }) => name),
  );
  return { command, branches, options, rest: at, segments };
}

/** The option that text without a name is for: the first required one that is not named, else the first of all. */
export function unnamedTarget(
  options: readonly OptionSpec[],
  segments: readonly Segment[],
): OptionSpec | undefined {
  const open = options.filter(({ name }) => !segments.some((segment) => segment.name === name));
  return open.find(({ required }) => required) ?? open[0];
}

/** The name in `2 L" bmep:"20 bar`: an option that the command does not have, swallowed by the one before. */
const strangeOption = (value: string): string | undefined =>
  /["”]\s+([\p{L}][\p{L}\p{N}_-]*):["“]/u.exec(value)?.[1];

/** `sise:21.9` is a slip of the pen for `size:`, not a value; `12:30` is no name at all. */
function misspelt(
  value: string,
  options: readonly OptionSpec[],
): { readonly typed: string; readonly names: readonly string[] } | undefined {
  const typed = /^([\p{L}_-][\p{L}\p{N}_-]*):/u.exec(value)?.[1];
  if (typed === undefined) return undefined;
  const known = options.map(({ name }) => name);
  // it stands in quotes, or it would have been taken for the option itself
  if (known.includes(typed.toLowerCase())) return undefined;
  const names = nearest(typed, known);
  return names.length > 0 ? { typed, names } : undefined;
}

export const problem = (text: string): LineProblem => ({ kind: 'problem', problem: text });
