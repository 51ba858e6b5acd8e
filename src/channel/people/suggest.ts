import type { Suggestion } from '../contract.ts';
import { Kind, Opt } from '../wire/numbers.ts';
import type { ChannelState } from '../world/state.ts';
import type { Channel, Command, Person } from '../world/things.ts';
import { autocompleteData } from './command-data.ts';
import { descriptionOf, isBranch, type OptionSpec, optionsOf } from './options.ts';
import { quoteValue, type Segment, skipSpaces } from './split-options.ts';
import { type LinePlace, locate, unnamedTarget } from './typed-line.ts';
import { allowedCommands } from './what-people-see.ts';

/** What could stand next at the caret; the likeliest first. */
export async function suggestionsFor(
  state: ChannelState,
  person: Person,
  channel: Channel,
  botThere: () => boolean,
  line: string,
  caret: number,
): Promise<readonly Suggestion[]> {
  const typed = line.slice(0, caret);
  const tail = line.slice(caret);
  if (!typed.startsWith('/')) return mentionSuggestions(state, typed, tail);
  const commands = allowedCommands(state.world, person, channel);
  const branch = branchSuggestions(typed, tail, commands);
  if (branch !== undefined) return branch;
  const place = locate(typed, commands);
  if ('kind' in place) return [];
  const value = valueAt(place, typed);
  if (value !== undefined) {
    const values = await valueSuggestions(state, person, channel, botThere, place, value, typed, tail);
    if (values.length > 0 || (value.named && !beginsOption(place, typed))) return values;
  }
  return optionSuggestions(place, typed, tail);
}

const taken = (label: string, hint: string, head: string, tail: string): Suggestion => ({
  label,
  ...(hint === '' ? {} : { hint }),
  line: head + tail,
  caret: head.length,
});

/** Names beginning with the word first, then those that contain it. */
function matching<T>(things: readonly T[], word: string, nameOf: (thing: T) => string): readonly T[] {
  const wanted = word.toLowerCase();
  const starts = things.filter((thing) => nameOf(thing).toLowerCase().startsWith(wanted));
  const holds = things.filter(
    (thing) => !starts.includes(thing) && nameOf(thing).toLowerCase().includes(wanted),
  );
  return [...starts, ...holds];
}

function mentionSuggestions({ world }: ChannelState, typed: string, tail: string): readonly Suggestion[] {
  const word = /(?:^|\s)@([\p{L}\p{N}]*)$/u.exec(typed)?.[1];
  if (word === undefined) return [];
  const head = typed.slice(0, typed.length - word.length);
  return matching(world.people(), word, (person) => person.name).map((person) =>
    taken(`@${person.name}`, '', `${head}${person.name} `, tail),
  );
}

/** Completions of the command's or subcommand's word; undefined once these are all there. */
function branchSuggestions(
  typed: string,
  tail: string,
  commands: readonly Command[],
): readonly Suggestion[] | undefined {
  const word = /^\/(\S*)$/.exec(typed)?.[1];
  if (word !== undefined) {
    return matching(commands, word, ({ name }) => name).map((command) =>
      taken(`/${command.name}`, descriptionOf(command), `/${command.name} `, tail.trimStart()),
    );
  }
  const first = /^\/(\S+)/.exec(typed)?.[1] ?? '';
  const command = commands.find(({ name }) => name.toLowerCase() === first.toLowerCase());
  if (command === undefined) return [];
  let options = optionsOf(command.body);
  let at = first.length + 1;
  while (options.some(isBranch)) {
    const start = skipSpaces(typed, at);
    const next = /^\S*/.exec(typed.slice(start))?.[0] ?? '';
    const found = options.find(({ name }) => name.toLowerCase() === next.toLowerCase());
    const complete = found !== undefined && start + next.length < typed.length;
    if (!complete) {
      const head = typed.slice(0, start);
      return matching(options, next, ({ name }) => name).map((option) =>
        taken(option.name, option.description, `${head}${option.name} `, tail.trimStart()),
      );
    }
    options = found.options;
    at = start + next.length;
  }
  return undefined;
}

/** The option whose value the caret stands in. */
interface ValueAt {
  readonly spec: OptionSpec;
  readonly text: string;
  /** The line in front of the value, with the option's name. */
  readonly head: string;
  readonly named: boolean;
}

function valueAt(place: LinePlace, typed: string): ValueAt | undefined {
  const last = place.segments.at(-1);
  if (last === undefined) return firstValue(place, typed);
  const wholeRest = typed.slice(place.rest);
  const done = last.closed && /\s$/.test(wholeRest);
  if (done) return undefined;
  const name = last.name ?? unnamedTarget(place.options, place.segments)?.name;
  const spec = place.options.find((option) => option.name === name);
  if (spec === undefined || endsValue(place, last, wholeRest, spec)) return undefined;
  const front = typed.slice(0, place.rest + last.start);
  return { spec, text: soFar(last), head: `${front}${spec.name}:`, named: last.name !== undefined };
}

/** A quote that is not closed yet belongs to the typing, not to what is meant. */
const soFar = ({ value, closed }: Segment): string => (closed ? value : value.replace(/^["“”]/, ''));

/** Nothing typed yet: the one required option may be answered right away. */
function firstValue(place: LinePlace, typed: string): ValueAt | undefined {
  const spec = place.options.find(({ required }) => required);
  if (spec === undefined || (!spec.autocomplete && spec.choices.length === 0)) return undefined;
  return { spec, text: '', head: `${typed.replace(/\s*$/, ' ')}${spec.name}:`, named: false };
}

/** A value without quotes is over when a space follows and it is already one of the choices, a number or a yes. */
function endsValue(place: LinePlace, last: Segment, rest: string, spec: OptionSpec): boolean {
  if (!/\s$/.test(rest) || last.value === '') return false;
  if (spec.type !== Opt.string) return true;
  const wanted = last.value.toLowerCase();
  if (
    spec.choices.some(
      ({ name, value }) => name.toLowerCase() === wanted || String(value).toLowerCase() === wanted,
    )
  ) {
    return true;
  }
  return !spec.autocomplete && place.options.length > place.segments.length;
}

async function valueSuggestions(
  state: ChannelState,
  person: Person,
  channel: Channel,
  botThere: () => boolean,
  place: LinePlace,
  { spec, text, head }: ValueAt,
  typed: string,
  tail: string,
): Promise<readonly Suggestion[]> {
  const { world, interactions } = state;
  const take = (label: string, value: string, hint = '') =>
    taken(label, hint, `${head}${quoteValue(value)} `, tail.trimStart());
  if (spec.choices.length > 0) {
    return matching(spec.choices, text, ({ name }) => name).map(({ name }) =>
      take(name, name, spec.description),
    );
  }
  if (spec.type === Opt.boolean)
    return matching(['yes', 'no'], text, (word) => word).map((word) => take(word, word));
  if (spec.type === Opt.user || spec.type === Opt.mentionable) {
    return matching(world.people(), text.replace(/^@/, ''), ({ name }) => name).map(({ name }) =>
      take(`@${name}`, `@${name}`),
    );
  }
  if (spec.type === Opt.channel) {
    const places = world.textChannels();
    return matching(places, text.replace(/^#/, ''), ({ name }) => name).map(({ name }) =>
      take(`#${name}`, `#${name}`),
    );
  }
  if (!spec.autocomplete || !botThere()) return [];
  const data = autocompleteData(world, place, { spec, text });
  const interaction = interactions.start({ kind: Kind.autocomplete, person, channel, data, line: typed });
  const choices = await interaction.choices;
  return choices.map((choice) => take(String(choice['name']), String(choice['value']), spec.description));
}

/** Could the last word, behind a value, be the start of the next option's name? */
function beginsOption(place: LinePlace, typed: string): boolean {
  const word = /\s(\S+)$/.exec(typed)?.[1]?.toLowerCase();
  return word !== undefined && place.options.some(({ name }) => name.toLowerCase().startsWith(word));
}

/** Names of options that are not given yet, required ones first. */
function optionSuggestions(place: LinePlace, typed: string, tail: string): readonly Suggestion[] {
  const named = place.segments.flatMap(({ name }) => name ?? []);
  const unnamed = place.segments.some(({ name }) => name === undefined)
    ? unnamedTarget(place.options, place.segments)?.name
    : undefined;
  const word = /\s(\S*)$/.exec(typed)?.[1] ?? '';
  const open = place.options.filter(({ name }) => !named.includes(name));
  const partial = word !== '' && open.some(({ name }) => name.toLowerCase().startsWith(word.toLowerCase()));
  const offered = partial || unnamed === undefined ? open : open.filter(({ name }) => name !== unnamed);
  const head = partial ? typed.slice(0, typed.length - word.length) : typed.replace(/\s*$/, ' ');
  const ordered = [
    ...offered.filter(({ required }) => required),
    ...offered.filter(({ required }) => !required),
  ];
  return matching(ordered, partial ? word : '', ({ name }) => name).map(({ name, description }) =>
    taken(`${name}:`, description, `${head}${name}:`, tail),
  );
}
