import { compact, type Json, type JsonObject } from '../wire/json.ts';
import { CommandKind, Opt } from '../wire/numbers.ts';
import { safeName } from '../world/attachments.ts';
import { attachmentPayload } from '../world/message-payload.ts';
import type { Attachment } from '../world/things.ts';
import type { World } from '../world/world.ts';
import { nothingResolved, type Resolved, readValue, resolvedPayload } from './option-values.ts';
import type { OptionSpec } from './options.ts';
import type { LinePlace, LineProblem, TypedCommand } from './typed-line.ts';
import { problem, unnamedTarget } from './typed-line.ts';

/** Data of an interaction, ready to be sent. */
export interface CommandData {
  readonly kind: 'data';
  readonly data: JsonObject;
}

/**
 * Turns a parsed line into the data of a command interaction; uploaded files fill the file options in their order.
 * Says what is missing or out of its limits, as the platform's own client does before it sends anything.
 */
export function commandData(
  world: World,
  typed: TypedCommand,
  files: readonly Attachment[],
  channelId: string,
): CommandData | LineProblem {
  const resolved = nothingResolved();
  const values: JsonObject[] = [];
  const waiting = [...files];
  for (const spec of typed.options) {
    const text = typed.given.get(spec.name);
    if (spec.type === Opt.attachment) {
      const file = takeFile(waiting, text);
      if (file !== undefined) {
        resolved.attachments[file.id] = {
          ...attachmentPayload(world, channelId, file),
          ephemeral: true,
        };
        values.push({ name: spec.name, type: spec.type, value: file.id });
        continue;
      }
    }
    if (text === undefined) {
      if (spec.required) return problem(missing(spec));
      continue;
    }
    const read = readValue(world, spec, text, resolved);
    if ('problem' in read) return problem(read.problem);
    values.push({ name: spec.name, type: spec.type, value: read.value });
  }
  if (waiting.length > 0)
    return problem('This command takes no further file; send the file as a message of its own.');
  return { kind: 'data', data: dataOf(world, typed, values, resolved) };
}

const missing = ({ name, description, type }: OptionSpec): string =>
  type === Opt.attachment
    ? `"${name}" is missing: attach a file (${description}).`
    : `"${name}" is missing: ${description}. Type ${name}: and what it is.`;

function takeFile(waiting: Attachment[], text: string | undefined): Attachment | undefined {
  if (text === undefined) return waiting.shift();
  const index = waiting.findIndex((file) => file.filename === safeName(text));
  return index < 0 ? undefined : waiting.splice(index, 1)[0];
}

/** Data of an autocomplete interaction: everything as far as it was typed, one option focused. */
export function autocompleteData(
  world: World,
  place: LinePlace,
  focused: { readonly spec: OptionSpec; readonly text: string },
): JsonObject {
  const resolved = nothingResolved();
  const values: JsonObject[] = [];
  const target = unnamedTarget(place.options, place.segments)?.name;
  for (const segment of place.segments) {
    const name = segment.name ?? target;
    const spec = place.options.find((option) => option.name === name);
    if (spec === undefined || spec.name === focused.spec.name) continue;
    const read = readValue(world, spec, segment.value, resolved);
    if ('value' in read) values.push({ name: spec.name, type: spec.type, value: read.value });
  }
  // What is being typed goes as text, whatever the option's type, as the documentation has it.
  values.push({ name: focused.spec.name, type: focused.spec.type, value: focused.text, focused: true });
  return dataOf(world, place, values, resolved);
}

function dataOf(
  world: World,
  { command, branches }: Pick<LinePlace, 'command' | 'branches'>,
  values: readonly JsonObject[],
  resolved: Resolved,
): JsonObject {
  const options = branches.reduceRight<readonly Json[]>(
    (inner, branch) => [{ name: branch.name, type: branch.type, options: inner }],
    values,
  );
  const things = resolvedPayload(resolved);
  return compact({
    id: command.id,
    name: command.name,
    type: CommandKind.slash,
    guild_id: command.guildId === undefined ? undefined : world.guildId,
    options,
    resolved: Object.keys(things).length > 0 ? things : undefined,
  });
}
