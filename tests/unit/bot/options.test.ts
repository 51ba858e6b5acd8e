import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { catalogueOf } from '../../../src/bot/catalogue.ts';
import { subcommand } from '../../../src/bot/command.ts';
import { optionsOf } from '../../../src/bot/options.ts';
import { registrationOf } from '../../../src/discord/registration.ts';

const declared = (input: z.ZodObject, suggest: Record<string, () => []> = {}) =>
  subcommand({
    description: 'A test',
    input,
    suggest,
    run: () => ({ kind: 'answer', subject: '', result: '', audience: 'crew', data: {} }),
  });

const optionOf = (schema: z.ZodType) => optionsOf(declared(z.object({ it: schema })))[0];

describe('an option, as zod declares it', () => {
  it.each([
    ['text', z.string().describe('Text'), { kind: 'text', required: true, choices: [] }],
    ['text within lengths', z.string().min(2).max(9).describe('Text'), { minLength: 2, maxLength: 9 }],
    [
      'text made over',
      z
        .string()
        .trim()
        .max(9)
        .transform((text) => text)
        .describe('Text'),
      { kind: 'text', maxLength: 9 },
    ],
    ['a whole number', z.int().min(1).max(9).describe('Count'), { kind: 'integer', min: 1, max: 9 }],
    ['any whole number', z.int().describe('Count'), { kind: 'integer' }],
    ['a number', z.number().min(0.5).describe('mm'), { kind: 'number', min: 0.5 }],
    ['yes or no', z.boolean().describe('Really'), { kind: 'yes-no' }],
    ['one of some', z.enum(['a', 'b']).describe('Which'), { kind: 'text', choices: ['a', 'b'] }],
    ['a default', z.int().default(1).describe('Count'), { kind: 'integer', required: false }],
    ['left out', z.string().optional().describe('Text'), { required: false }],
    [
      'a person',
      z.string().meta({ picks: 'person' }).optional().describe('Who'),
      { kind: 'person', required: false },
    ],
    ['a file', z.string().meta({ picks: 'file' }).describe('Picture'), { kind: 'file' }],
  ] as const)('%s', (_name, schema, expected) => expect(optionOf(schema)).toMatchObject(expected));

  it('has no limits where zod has none', () => {
    expect(optionOf(z.int().describe('Count'))).not.toHaveProperty('min');
    expect(optionOf(z.int().describe('Count'))).not.toHaveProperty('max');
    expect(optionOf(z.string().describe('Text'))).not.toHaveProperty('maxLength');
  });

  it('comes after those that must be given, in the order of the declaration', () => {
    const specs = optionsOf(
      declared(
        z.object({
          a: z.string().optional().describe('a'),
          b: z.string().describe('b'),
          c: z.int().default(1).describe('c'),
          d: z.string().describe('d'),
        }),
      ),
    );
    expect(specs.map(({ name }) => name)).toEqual(['b', 'd', 'a', 'c']);
  });

  it('is registered with its limits, its choices or its suggestions', () => {
    const input = z.object({
      count: z.int().min(1).max(9).describe('Count'),
      side: z.enum(['in', 'out']).describe('Side'),
      name: z.string().max(40).describe('Name'),
      who: z.string().meta({ picks: 'person' }).optional().describe('Who'),
    });
    const runnable = declared(input, { name: () => [] });
    const catalogue = catalogueOf(
      new Map([['probe', { description: 'A test', does: runnable, actions: {} }]]),
    );
    // option types: developer documentation, application commands
    expect(registrationOf(catalogue)[0]?.options).toEqual([
      { type: 4, name: 'count', description: 'Count', required: true, min_value: 1, max_value: 9 },
      {
        type: 3,
        name: 'side',
        description: 'Side',
        required: true,
        choices: [
          { name: 'in', value: 'in' },
          { name: 'out', value: 'out' },
        ],
      },
      { type: 3, name: 'name', description: 'Name', required: true, max_length: 40, autocomplete: true },
      { type: 6, name: 'who', description: 'Who', required: false },
    ]);
  });

  it.each([
    ['a date', z.date().describe('When')],
    ['a union', z.union([z.string(), z.number()]).describe('Either')],
    ['a list', z.array(z.string()).describe('Many')],
    ['an object', z.object({ a: z.string() }).describe('Nested')],
    ['no description', z.string()],
    ['an empty description', z.string().describe('')],
    ['a description of 101 characters', z.string().describe('x'.repeat(101))],
    ['26 choices', z.enum(Array.from({ length: 26 }, (_, index) => `c${index}`)).describe('Which')],
    ['an unknown picker', z.string().meta({ picks: 'colour' }).describe('Colour')],
  ])('is refused at the start, by name, when it is %s', (_name, schema) => {
    expect(() => optionOf(schema)).toThrow('option "it" cannot be offered on the platform');
  });
});
