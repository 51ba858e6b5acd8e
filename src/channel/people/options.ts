import { type JsonObject, numberOf, objectsIn, textOf } from '../wire/json.ts';
import { Opt } from '../wire/numbers.ts';
import type { Command } from '../world/things.ts';

/** An option as its command was registered with it. */
export interface OptionSpec {
  readonly name: string;
  readonly description: string;
  readonly type: number;
  readonly required: boolean;
  readonly autocomplete: boolean;
  readonly choices: readonly { readonly name: string; readonly value: string | number }[];
  readonly minValue?: number | undefined;
  readonly maxValue?: number | undefined;
  readonly minLength?: number | undefined;
  readonly maxLength?: number | undefined;
  /** Of a group or subcommand. */
  readonly options: readonly OptionSpec[];
}

export function optionsOf(body: JsonObject): readonly OptionSpec[] {
  return objectsIn(body['options']).map((option) => ({
    name: textOf(option['name']) ?? '',
    description: textOf(option['description']) ?? '',
    type: numberOf(option['type']) ?? Opt.string,
    required: option['required'] === true,
    autocomplete: option['autocomplete'] === true,
    choices: objectsIn(option['choices']).flatMap((choice) => {
      const name = textOf(choice['name']);
      const value = choice['value'];
      return name !== undefined && (typeof value === 'string' || typeof value === 'number')
        ? [{ name, value }]
        : [];
    }),
    minValue: numberOf(option['min_value']),
    maxValue: numberOf(option['max_value']),
    minLength: numberOf(option['min_length']),
    maxLength: numberOf(option['max_length']),
    options: optionsOf(option),
  }));
}

export const isBranch = (option: OptionSpec): boolean =>
  option.type === Opt.subcommand || option.type === Opt.group;

export const descriptionOf = (command: Command): string => textOf(command.body['description']) ?? '';
