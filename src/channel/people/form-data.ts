import type { OpenForm } from '../contract.ts';
import { LIMITS } from '../rules/limits.ts';
import { compact, isObject, type Json, type JsonObject, numberOf, objectsIn, textOf } from '../wire/json.ts';
import { Part, SELECTS } from '../wire/numbers.ts';
import { numbered } from '../world/messages.ts';
import type { World } from '../world/world.ts';
import { selectValues } from './component-data.ts';
import { nothingResolved, type Resolved, resolvedPayload } from './option-values.ts';
import { type LineProblem, problem } from './typed-line.ts';

export type FormValues = Readonly<Record<string, string | readonly string[]>>;

/** Data of a filled-in form, in the shape of the form: each field with its value. Fields left out keep what stood in them. */
export function formData(world: World, form: OpenForm, values: FormValues): JsonObject | LineProblem {
  const resolved = nothingResolved();
  const components: JsonObject[] = [];
  // A form's components came from the bot as JSON and are used as such again.
  for (const part of numbered(form.components as unknown as readonly JsonObject[])) {
    const type = part['type'];
    const child = type === Part.label ? part['component'] : objectsIn(part['components'])[0];
    if (!isObject(child)) {
      components.push({ type: part['type'], id: part['id'] });
      continue;
    }
    const label = textOf(part['label']) ?? textOf(child['label']) ?? '';
    const field = fieldData(world, child, label, values, resolved);
    if ('problem' in field && field['kind'] === 'problem') return problem(String(field['problem']));
    components.push(
      type === Part.label
        ? { type, id: part['id'], component: field }
        : { type: part['type'], id: part['id'], components: [field] },
    );
  }
  const things = resolvedPayload(resolved);
  return compact({
    custom_id: form.customId,
    components,
    resolved: Object.keys(things).length > 0 ? things : undefined,
  });
}

function fieldData(
  world: World,
  field: JsonObject,
  label: string,
  values: FormValues,
  resolved: Resolved,
): JsonObject {
  const customId = textOf(field['custom_id']) ?? '';
  const given = values[customId];
  const list = given === undefined ? defaultsOf(field) : typeof given === 'string' ? [given] : given;
  const type = numberOf(field['type']) ?? 0;
  const common = { type, id: field['id'] ?? 0, custom_id: customId };
  const required = field['required'] !== false;
  const nothing = list.every((one) => one.trim() === '');
  if (required && nothing && type !== Part.checkbox) return missing(label);
  if (type === Part.textInput) {
    const text = list[0] ?? '';
    const wrong = textProblem(field, label, text);
    return wrong === undefined ? { ...common, value: text } : problemField(wrong);
  }
  if (SELECTS.includes(type)) {
    const chosen = selectValues(world, field, nothing ? [] : list, resolved);
    return Array.isArray(chosen)
      ? { ...common, values: chosen }
      : problemField(`${label}: ${chosen.problem}`);
  }
  const options = objectsIn(field['options']).map((option) => textOf(option['value']) ?? '');
  if (type === Part.radioGroup || type === Part.checkboxGroup) {
    const stray = list.find((one) => one !== '' && !options.includes(one));
    if (stray !== undefined) return problemField(`${label}: "${stray}" is not among the choices.`);
    return type === Part.radioGroup ? { ...common, value: list[0] ?? null } : { ...common, values: list };
  }
  if (type === Part.checkbox) return { ...common, value: list[0] === 'true' };
  return { ...common, values: [] };
}

function defaultsOf(field: JsonObject): readonly string[] {
  const text = textOf(field['value']);
  if (text !== undefined) return [text];
  return objectsIn(field['options'])
    .filter((option) => option['default'] === true)
    .flatMap((option) => textOf(option['value']) ?? []);
}

function textProblem(field: JsonObject, label: string, text: string): string | undefined {
  const least = numberOf(field['min_length']) ?? 0;
  const most = numberOf(field['max_length']) ?? LIMITS.modal.inputValue;
  if (text.length > most) return `${label}: at most ${most} characters; this has ${text.length}.`;
  if (text !== '' && text.length < least)
    return `${label}: at least ${least} characters; this has ${text.length}.`;
  return undefined;
}

const missing = (label: string): JsonObject => problemField(`${label} is missing; fill it in.`);

const problemField = (text: string): { readonly kind: Json; readonly problem: string } => problem(text);
