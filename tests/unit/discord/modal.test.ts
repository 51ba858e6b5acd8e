import { ComponentType, TextInputStyle } from 'discord.js';
import { describe, expect, it } from 'vitest';
import type { Form, FormField } from '../../../src/core/reply.ts';
import { modalOf } from '../../../src/discord/modal.ts';

const form = (fields: readonly FormField[], title = 'What came?'): Form => ({
  kind: 'form',
  title,
  does: { command: 'order', action: 'partly-done', args: { order: 12, notice: 3 } },
  fields,
});

describe('a form', () => {
  it('carries what it leads to, and a label of its own for each field', () => {
    const modal = modalOf(form([{ name: 'quantity', label: 'How many', value: '3', hint: 'of 3' }]));
    expect(modal).toEqual({
      custom_id: 'order/partly-done?order=12&notice=3',
      title: 'What came?',
      components: [
        {
          type: ComponentType.Label,
          label: 'How many',
          description: 'of 3',
          component: {
            type: ComponentType.TextInput,
            custom_id: 'quantity',
            style: TextInputStyle.Short,
            required: true,
            value: '3',
          },
        },
      ],
    });
  });

  it('offers a choice with the standing value picked', () => {
    const choices = [
      { label: 'Yes', value: 'good' },
      { label: 'Wrong part', value: 'wrong' },
    ];
    const [label] = modalOf(
      form([{ name: 'condition', label: 'As it should be?', value: 'wrong', choices }]),
    ).components;
    expect(label).toMatchObject({
      component: {
        type: ComponentType.StringSelect,
        options: [
          { value: 'good', default: false },
          { value: 'wrong', default: true },
        ],
      },
    });
  });

  it('has room to write where that is wanted, and may be left empty', () => {
    const [label] = modalOf(form([{ name: 'note', label: 'Note', long: true, required: false }])).components;
    expect(label).toMatchObject({ component: { style: TextInputStyle.Paragraph, required: false } });
  });

  /** Limits: developer documentation of the platform, modals and label component. */
  it('keeps within what the platform takes, never half a character', () => {
    const long = '🏎'.repeat(200);
    const fields = Array.from({ length: 7 }, (_, index) => ({
      name: `f${index}`,
      label: `a${long}`,
      hint: long,
    }));
    const { title, components } = modalOf(form(fields, `a${long}`));
    expect(components).toHaveLength(5);
    expect(title.length).toBeLessThanOrEqual(45);
    expect(title.isWellFormed()).toBe(true);
    for (const part of components) {
      if (part.type !== ComponentType.Label) throw new Error('a field without a label');
      expect(part.label.length).toBeLessThanOrEqual(45);
      expect(part.label.isWellFormed()).toBe(true);
      expect(part.description?.length).toBeLessThanOrEqual(100);
      expect(part.description?.isWellFormed()).toBe(true);
    }
  });
});
