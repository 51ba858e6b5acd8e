import {
  type APILabelComponent,
  type APIModalInteractionResponseCallbackData,
  ComponentType,
  TextInputStyle,
} from 'discord.js';
import { writeActionRef } from '../bot/action-ref.ts';
import type { Form, FormField } from '../core/reply.ts';
import { shorten } from './as-typed.ts';

/** Lays a form out as the platform's modal: at most five fields, each under its own label. */
export function modalOf(form: Form): APIModalInteractionResponseCallbackData {
  return {
    custom_id: writeActionRef(form.does),
    title: shorten(form.title, 45),
    components: form.fields.slice(0, 5).map(labelled),
  };
}

function labelled(field: FormField): APILabelComponent {
  return {
    type: ComponentType.Label,
    label: shorten(field.label, 45),
    ...(field.hint === undefined ? {} : { description: shorten(field.hint, 100) }),
    component: field.choices ? choicePart(field, field.choices) : textPart(field),
  };
}

function textPart({ name, value, required, long }: FormField): APILabelComponent['component'] {
  return {
    type: ComponentType.TextInput,
    custom_id: name,
    style: long ? TextInputStyle.Paragraph : TextInputStyle.Short,
    required: required ?? true,
    ...(value === undefined ? {} : { value }),
  };
}

function choicePart(
  { name, value, required }: FormField,
  choices: NonNullable<FormField['choices']>,
): APILabelComponent['component'] {
  return {
    type: ComponentType.StringSelect,
    custom_id: name,
    required: required ?? true,
    options: choices.map((choice) => ({ ...choice, default: choice.value === value })),
  };
}
