import { flatten } from '../rules/components.ts';
import { compact, type JsonObject, numberOf, objectsIn, textOf } from '../wire/json.ts';
import { ButtonStyle, Part, SELECTS } from '../wire/numbers.ts';
import { channelPayload, rolePayload } from '../world/payloads.ts';
import type { Message } from '../world/things.ts';
import type { World } from '../world/world.ts';
import {
  findPerson,
  nothingResolved,
  type Resolved,
  resolvedPayload,
  resolvePerson,
} from './option-values.ts';
import { type LineProblem, problem } from './typed-line.ts';

/** The component of this custom_id on a message, if it can be used now. */
export function usablePart(message: Message, customId: string): JsonObject | LineProblem {
  const part = flatten(message.components, []).find((one) => one.part['custom_id'] === customId)?.part;
  if (part === undefined) return problem('That button is no longer on the message.');
  if (part['disabled'] === true) return problem('That button is switched off.');
  return part;
}

export function pressData(part: JsonObject): JsonObject | LineProblem {
  if (part['type'] !== Part.button) return problem('That is a list; choose from it.');
  if (part['style'] === ButtonStyle.link) return problem('That is a link; open it.');
  return { custom_id: part['custom_id'], component_type: Part.button, id: part['id'] };
}

/** Data of a choice from a list. `values` are values, labels or names. */
export function chooseData(
  world: World,
  part: JsonObject,
  values: readonly string[],
): JsonObject | LineProblem {
  const type = numberOf(part['type']) ?? 0;
  if (!SELECTS.includes(type)) return problem('That is no list; press it.');
  const resolved = nothingResolved();
  const chosen = selectValues(world, part, values, resolved);
  if (!Array.isArray(chosen)) return chosen;
  const things = resolvedPayload(resolved);
  return compact({
    custom_id: part['custom_id'],
    component_type: type,
    id: part['id'],
    values: chosen,
    resolved: Object.keys(things).length > 0 ? things : undefined,
  });
}

/** The values of a select, checked against its options and how many it takes. */
export function selectValues(
  world: World,
  part: JsonObject,
  values: readonly string[],
  resolved: Resolved,
): string[] | LineProblem {
  const optional = part['required'] === false;
  const least = optional && values.length === 0 ? 0 : (numberOf(part['min_values']) ?? 1);
  const most = numberOf(part['max_values']) ?? 1;
  if (values.length < least || values.length > most) {
    const count = least === most ? `${least}` : `${least} to ${most}`;
    return problem(`Choose ${count} from this list; ${values.length} were chosen.`);
  }
  const found: string[] = [];
  for (const text of values) {
    const value = selectValue(world, part, text, resolved);
    if (value === undefined) return problem(`"${text}" is not in this list.`);
    found.push(value);
  }
  return found;
}

function selectValue(world: World, part: JsonObject, text: string, resolved: Resolved): string | undefined {
  const type = part['type'];
  if (type === Part.stringSelect) {
    const options = objectsIn(part['options']);
    const exact = options.find((option) => option['value'] === text);
    const byLabel = options.find((option) => textOf(option['label'])?.toLowerCase() === text.toLowerCase());
    return textOf((exact ?? byLabel)?.['value']);
  }
  if (type === Part.userSelect || type === Part.mentionableSelect) {
    const person = findPerson(world, text);
    if (person !== undefined) {
      resolvePerson(world, person, resolved);
      return person.id;
    }
  }
  if (type === Part.roleSelect || type === Part.mentionableSelect) {
    const role = world.roles.find((one) => one.id === text || one.name === text);
    if (role !== undefined) resolved.roles[role.id] = rolePayload(role);
    return role?.id;
  }
  if (type === Part.channelSelect) {
    const channel = world.channels().find((one) => one.id === text || (one.name !== '' && one.name === text));
    if (channel !== undefined)
      resolved.channels[channel.id] = { ...channelPayload(world, channel), permissions: '0' };
    return channel?.id;
  }
  return undefined;
}
