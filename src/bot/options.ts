import { z } from 'zod';
import type { Runnable } from './command.ts';

/** One option of a slash command as plain data, read off its zod declaration. */
export interface OptionSpec {
  readonly name: string;
  readonly description: string;
  readonly kind: 'text' | 'integer' | 'number' | 'yes-no' | 'person' | 'file';
  readonly required: boolean;
  readonly choices: readonly string[];
  readonly min?: number;
  readonly max?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  /** Known values are offered while it is typed. */
  readonly suggests: boolean;
}

/** What the platform's pickers hand over is an id; the declaration says so with `.meta({ picks: … })`. */
const Property = z.object({
  type: z.enum(['string', 'integer', 'number', 'boolean']),
  description: z.string().min(1).max(100),
  enum: z.array(z.string()).max(25).optional(),
  minimum: z.number().optional(),
  maximum: z.number().optional(),
  minLength: z.int().optional(),
  maxLength: z.int().optional(),
  picks: z.enum(['person', 'file']).optional(),
});

const Declaration = z.object({
  properties: z.record(z.string(), z.unknown()),
  required: z.array(z.string()).default([]),
});

/**
 * The options of a runnable, required ones first as the platform wants them.
 *
 * @throws Error naming the option whose declaration the platform could not show (a date, a union, no description).
 */
export function optionsOf(runnable: Runnable): readonly OptionSpec[] {
  const { properties, required } = Declaration.parse(z.toJSONSchema(runnable.input, { io: 'input' }));
  const specs = Object.entries(properties).map(([name, property]) =>
    optionSpec(name, property, required.includes(name), name in runnable.suggest),
  );
  return [...specs.filter((spec) => spec.required), ...specs.filter((spec) => !spec.required)];
}

function optionSpec(name: string, declared: unknown, required: boolean, suggests: boolean): OptionSpec {
  const parsed = Property.safeParse(declared);
  if (!parsed.success) {
    throw new Error(`option "${name}" cannot be offered on the platform: ${z.prettifyError(parsed.error)}`);
  }
  const {
    type,
    description,
    enum: choices = [],
    picks,
    minimum,
    maximum,
    minLength,
    maxLength,
  } = parsed.data;
  return {
    name,
    description,
    kind:
      picks ?? ({ string: 'text', integer: 'integer', number: 'number', boolean: 'yes-no' } as const)[type],
    required,
    choices,
    ...limit('min', minimum),
    ...limit('max', maximum),
    ...(minLength === undefined ? {} : { minLength }),
    ...(maxLength === undefined ? {} : { maxLength }),
    suggests,
  };
}

/** A bound at the edge of the safe integers is zod's way of saying there is none. */
function limit<Key extends 'min' | 'max'>(key: Key, bound: number | undefined): Partial<Record<Key, number>> {
  if (bound === undefined || Math.abs(bound) >= Number.MAX_SAFE_INTEGER) return {};
  return { [key]: bound } as Record<Key, number>; // a computed key widens to string
}
