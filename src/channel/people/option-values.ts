import { LIMITS } from '../rules/limits.ts';
import type { Json, JsonObject } from '../wire/json.ts';
import { ChannelKind, Opt } from '../wire/numbers.ts';
import { bareMember, channelPayload, rolePayload, userPayload } from '../world/payloads.ts';
import type { Person } from '../world/things.ts';
import type { World } from '../world/world.ts';
import type { OptionSpec } from './options.ts';

/** What the platform sends along with ids: the things they stand for. */
export interface Resolved {
  users: Record<string, JsonObject>;
  members: Record<string, JsonObject>;
  roles: Record<string, JsonObject>;
  channels: Record<string, JsonObject>;
  attachments: Record<string, JsonObject>;
}

export const nothingResolved = (): Resolved => ({
  users: {},
  members: {},
  roles: {},
  channels: {},
  attachments: {},
});

/** Only the kinds that hold something. */
export const resolvedPayload = (resolved: Resolved): JsonObject =>
  Object.fromEntries(
    Object.entries<Readonly<Record<string, JsonObject>>>({ ...resolved }).filter(
      ([, map]) => Object.keys(map).length > 0,
    ),
  );

/** A value as it goes to the bot, or a sentence on what is wrong with it. */
export type OptionValue = { readonly value: Json } | { readonly problem: string };

/** Reads one typed value as the platform's own client would, a little more forgivingly. */
export function readValue(world: World, spec: OptionSpec, text: string, resolved: Resolved): OptionValue {
  const { name } = spec;
  switch (spec.type) {
    case Opt.string:
      return readText(spec, text);
    case Opt.integer:
    case Opt.number:
      return readNumber(spec, text);
    case Opt.boolean: {
      const value = { true: true, yes: true, on: true, false: false, no: false, off: false }[
        text.toLowerCase()
      ];
      return value === undefined ? { problem: `"${name}" is yes or no; "${text}" is neither.` } : { value };
    }
    case Opt.user:
      return readPerson(world, spec, text, resolved);
    case Opt.mentionable: {
      const role = readRole(world, spec, text, resolved);
      return 'value' in role ? role : readPerson(world, spec, text, resolved);
    }
    case Opt.role:
      return readRole(world, spec, text, resolved);
    case Opt.channel: {
      const wanted = text.replace(/^<?#/, '').replace(/>$/, '').toLowerCase();
      const channel = world
        .channels()
        .find(
          (one) =>
            one.kind !== ChannelKind.direct && (one.id === wanted || one.name.toLowerCase() === wanted),
        );
      if (channel === undefined) return { problem: `"${name}": there is no channel "${text}".` };
      resolved.channels[channel.id] = { ...channelPayload(world, channel), permissions: '0' };
      return { value: channel.id };
    }
    default:
      return { problem: `"${name}" is a file; attach it to the line instead of typing it.` };
  }
}

function readText(spec: OptionSpec, text: string): OptionValue {
  const { name, choices, minLength = 0, maxLength = LIMITS.command.optionText } = spec;
  if (choices.length > 0) return readChoice(spec, text);
  if (text.length < Math.max(minLength, 1)) {
    return { problem: `"${name}" needs at least ${Math.max(minLength, 1)} characters.` };
  }
  if (text.length > maxLength) {
    return { problem: `"${name}" takes at most ${maxLength} characters; this has ${text.length}.` };
  }
  return { value: text };
}

/** `DOT4`, `dot-4` and `DOT 4` are one choice. */
const bare = (text: string): string => text.toLowerCase().replace(/[\s_-]+/gu, '');

function readChoice({ name, choices }: OptionSpec, text: string): OptionValue {
  const wanted = text.toLowerCase();
  const exact = choices.find(
    (choice) => choice.name.toLowerCase() === wanted || String(choice.value).toLowerCase() === wanted,
  );
  const alike = choices.filter((choice) => bare(choice.name) === bare(text));
  const found = exact ?? (alike.length === 1 ? alike[0] : undefined);
  if (found !== undefined) return { value: found.value };
  return {
    problem: `"${name}" is one of ${choices.map((choice) => choice.name).join(', ')}; "${text}" is not.`,
  };
}

function readNumber(spec: OptionSpec, text: string): OptionValue {
  const { name, type, choices, minValue, maxValue } = spec;
  if (choices.length > 0) return readChoice(spec, text);
  const plain = text.trim().replace(/^([-+]?\d+),(\d+)$/, '$1.$2');
  const value = /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN;
  const whole = type === Opt.integer;
  if (Number.isNaN(value) || (whole && !Number.isInteger(value))) {
    return { problem: `"${name}" is a ${whole ? 'whole ' : ''}number without a unit; "${text}" is not.` };
  }
  const bound = whole ? LIMITS.command.integer : LIMITS.command.number;
  const [least, most] = [minValue ?? -bound, maxValue ?? bound];
  if (value < least || value > most) {
    const range =
      maxValue === undefined
        ? `at least ${least}`
        : minValue === undefined
          ? `at most ${most}`
          : `from ${least} to ${most}`;
    return { problem: `"${name}" is ${range}; ${text} is outside.` };
  }
  return { value };
}

/** By `@Name`, the name alone, `<@id>` or the id. */
export function findPerson(world: World, text: string): Person | undefined {
  const wanted = text
    .trim()
    .replace(/^<@!?(\d+)>$/, '$1')
    .replace(/^@/, '');
  return world.person(wanted) ?? world.named(wanted);
}

export function resolvePerson(world: World, person: Person, resolved: Resolved): void {
  resolved.users[person.id] = userPayload(person);
  resolved.members[person.id] = {
    ...bareMember(person),
    permissions: world.permissionsOf(person).toString(),
  };
}

function readPerson(world: World, { name }: OptionSpec, text: string, resolved: Resolved): OptionValue {
  const person = findPerson(world, text);
  if (person === undefined) {
    const names = world.people().map((one) => one.name);
    return { problem: `"${name}": nobody here is called "${text}". There are ${names.join(', ')}.` };
  }
  resolvePerson(world, person, resolved);
  return { value: person.id };
}

function readRole(world: World, { name }: OptionSpec, text: string, resolved: Resolved): OptionValue {
  const wanted = text
    .replace(/^<@&(\d+)>$/, '$1')
    .replace(/^@/, '')
    .toLowerCase();
  const role = world.roles.find(
    (one) => one.id === wanted || one.name.replace(/^@/, '').toLowerCase() === wanted,
  );
  if (role === undefined) return { problem: `"${name}": there is no role "${text}".` };
  resolved.roles[role.id] = rolePayload(role);
  return { value: role.id };
}
