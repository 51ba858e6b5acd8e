/** Forms that the platform refuses. Source of the limits: developer documentation, "Modals" and "Component reference". */
import { describe, expect, it } from 'vitest';
import { checkChoices } from '../../../src/channel/rules/autocomplete.ts';
import { checkModal } from '../../../src/channel/rules/modal.ts';
import { ApiError } from '../../../src/channel/wire/api-error.ts';
import type { JsonObject } from '../../../src/channel/wire/json.ts';

const many = <T>(count: number, make: (index: number) => T): T[] =>
  Array.from({ length: count }, (_, index) => make(index));

const input = (more: JsonObject = {}): JsonObject => ({ type: 4, custom_id: 'x', style: 1, ...more });
const label = (component: JsonObject | null, more: JsonObject = {}): JsonObject => ({
  type: 18,
  label: 'L',
  component,
  ...more,
});
const form = (components: readonly JsonObject[], more: JsonObject = {}): JsonObject => ({
  custom_id: 'f',
  title: 'F',
  components,
  ...more,
});
const select = (more: JsonObject = {}): JsonObject => ({
  type: 3,
  custom_id: 's',
  options: [{ label: 'A', value: 'a' }],
  ...more,
});

/** Where a check finds fault, as dotted paths. */
function faultsOf(check: () => unknown): readonly string[] {
  try {
    check();
    return [];
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return placesIn(error.errors);
  }
}

function placesIn(errors: unknown, path: readonly string[] = []): readonly string[] {
  if (typeof errors !== 'object' || errors === null) return [];
  return Object.entries(errors).flatMap(([key, value]) =>
    key === '_errors' ? [path.join('.')] : placesIn(value, [...path, key]),
  );
}

describe('a form', () => {
  it.each([
    { what: 'no custom_id', data: form([label(input())], { custom_id: '' }), at: 'data.custom_id' },
    { what: 'a title of 46', data: form([label(input())], { title: 'x'.repeat(46) }), at: 'data.title' },
    { what: 'nothing in it', data: form([]), at: 'data.components' },
    {
      what: 'six fields',
      data: form(many(6, (i) => label(input({ custom_id: `${i}` })))),
      at: 'data.components',
    },
    {
      what: 'a label of 46',
      data: form([label(input(), { label: 'x'.repeat(46) })]),
      at: 'data.components.0.label',
    },
    { what: 'a Label around nothing', data: form([label(null)]), at: 'data.components.0.component' },
    {
      what: 'a button',
      data: form([label({ type: 2, custom_id: 'b', style: 1 })]),
      at: 'data.components.0.component.type',
    },
    { what: 'a Container', data: form([{ type: 17, components: [] }]), at: 'data.components.0.type' },
    {
      what: 'a label of its own inside a Label',
      data: form([label(input({ label: 'x' }))]),
      at: 'data.components.0.component.label',
    },
    {
      what: 'the same field twice',
      data: form([label(input()), label(input())]),
      at: 'data.components.1.component.custom_id',
    },
    {
      what: 'a field switched off',
      data: form([label(select({ disabled: true }))]),
      at: 'data.components.0.component.disabled',
    },
    {
      what: 'a required list of none',
      data: form([label(select({ min_values: 0 }))]),
      at: 'data.components.0.component.min_values',
    },
    {
      what: 'a text of 4001',
      data: form([label(input({ value: 'x'.repeat(4001) }))]),
      at: 'data.components.0.component.value',
    },
    {
      what: 'a least above the most',
      data: form([label(input({ min_length: 2, max_length: 1 }))]),
      at: 'data.components.0.component.min_length',
    },
    {
      what: 'one choice alone',
      data: form([label({ type: 21, custom_id: 'r', options: [{ label: 'A', value: 'a' }] })]),
      at: 'data.components.0.component.options',
    },
  ])('may not have $what', ({ data, at }) => {
    expect(faultsOf(() => checkModal(data))).toEqual([at]);
  });

  it('may have five fields of all kinds', () => {
    const data = form([
      { type: 10, content: 'Read this first' },
      label(input({ min_length: 0, max_length: 4000 })),
      label(select({ required: false, min_values: 0 })),
      label({ type: 5, custom_id: 'u' }),
      label({ type: 21, custom_id: 'r', options: many(2, (i) => ({ label: `${i}`, value: `${i}` })) }),
    ]);
    expect(faultsOf(() => checkModal(data))).toEqual([]);
  });
});

describe('suggestions of a bot', () => {
  it.each([
    { what: 'more than 25', choices: many(26, (i) => ({ name: `${i}`, value: `${i}` })), at: 'data.choices' },
    { what: 'a name of 101', choices: [{ name: 'x'.repeat(101), value: 'x' }], at: 'data.choices.0.name' },
    { what: 'a value of 101', choices: [{ name: 'x', value: 'x'.repeat(101) }], at: 'data.choices.0.value' },
    { what: 'an empty name', choices: [{ name: '', value: 'x' }], at: 'data.choices.0.name' },
  ])('may not be $what', ({ choices, at }) => {
    expect(faultsOf(() => checkChoices({ choices }))).toEqual([at]);
  });

  it('may be numbers', () => {
    expect(faultsOf(() => checkChoices({ choices: [{ name: 'one', value: 1 }] }))).toEqual([]);
  });
});
