import { z } from 'zod';
import { type FieldName, isFieldName } from '../phrases/quantity/fields.ts';
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
  /** What it is when it is left out, as it would be typed. */
  readonly unlessSaid?: string;
  /** The quantity that is typed there; a request is answered in the units it was asked in. */
  readonly measures?: FieldName;
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
  measures: z.string().refine(isFieldName).optional(),
  default: z.union([z.string(), z.number(), z.boolean()]).optional(),
});

const Declaration = z.object({
  properties: z.record(z.string(), Property),
  required: z.array(z.string()).default([]),
});

/**
 * The options of a runnable, required ones first as the platform wants them.
 *
 * @throws Error naming the option whose declaration the platform could not show (a date, a union, no description).
 */
export function optionsOf(runnable: Runnable): readonly OptionSpec[] {
  const shape: Readonly<Record<string, z.core.$ZodType>> = runnable.input.shape;
  const specs = Object.entries(shape).map(([name, declared]) =>
    optionSpec(name, declared, name in runnable.suggest),
  );
  return [...specs.filter((spec) => spec.required), ...specs.filter((spec) => !spec.required)];
}

/** The platform's declaration of one option, and whether it must be given. */
function declarationOf(name: string, declared: z.core.$ZodType) {
  try {
    const { properties, required } = Declaration.parse(
      z.toJSONSchema(z.object({ [name]: declared }), { io: 'input' }),
    );
    const property = properties[name];
    if (property !== undefined) return { property, required: required.includes(name) };
    throw new Error('it was declared away');
  } catch (error) {
    const why = error instanceof z.ZodError ? z.prettifyError(error) : String(error);
    throw new Error(`option "${name}" cannot be offered on the platform: ${why}`, { cause: error });
  }
}

function optionSpec(name: string, declared: z.core.$ZodType, suggests: boolean): OptionSpec {
  const { property, required } = declarationOf(name, declared);
  const {
    type,
    description,
    enum: choices = [],
    picks,
    minimum,
    maximum,
    minLength,
    maxLength,
    measures,
  } = property;
  const unlessSaid = property.default;
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
    ...(unlessSaid === undefined ? {} : { unlessSaid: String(unlessSaid) }),
    ...(measures === undefined ? {} : { measures }),
  };
}

/** A bound at the edge of the safe integers is zod's way of saying there is none. */
function limit<Key extends 'min' | 'max'>(key: Key, bound: number | undefined): Partial<Record<Key, number>> {
  if (bound === undefined || Math.abs(bound) >= Number.MAX_SAFE_INTEGER) return {};
  return { [key]: bound } as Record<Key, number>; // a computed key widens to string
}
