import type { WireComponent } from '../contract.ts';
import { make } from './dom.ts';
import { choicesOf, type Lists } from './lists.ts';
import { Kind, numberOf, type Option, textOf } from './wire.ts';

export type Value = string | readonly string[];

/** One field of a form. */
export interface Field {
  readonly customId: string;
  readonly element: HTMLElement;
  /** What takes the focus. */
  readonly control: HTMLElement;
  read(): Value;
  /** What is wrong with it, in a sentence; `undefined` when nothing is. */
  check(): string | undefined;
}

/** Up to so many choices stand open on the form; more become a list. */
const OPEN_CHOICES = 7;
const LONG_TEXT = 2;

/** The field for this component, filled with what was kept of it; `undefined` if this page has none of its kind. */
export function fieldFor(part: WireComponent, kept: Value | undefined, lists: Lists): Field | undefined {
  switch (part.type) {
    case Kind.textInput:
      return textField(part, typeof kept === 'string' ? kept : undefined);
    case Kind.checkbox:
      return tick(part, kept);
    case Kind.checkboxGroup:
      return boxes(part, choicesOf(part, lists), kept, 'checkbox');
    case Kind.radioGroup:
      return boxes(part, choicesOf(part, lists), kept, 'radio');
    case Kind.stringSelect:
    case Kind.userSelect:
    case Kind.mentionableSelect:
    case Kind.channelSelect: {
      const choices = choicesOf(part, lists);
      if (most(part) > 1) return boxes(part, choices, kept, 'checkbox');
      return choices.length > OPEN_CHOICES
        ? dropDown(part, choices, kept)
        : boxes(part, choices, kept, 'radio');
    }
    default:
      return undefined;
  }
}

const least = (part: WireComponent) => (part['required'] === false ? 0 : (numberOf(part['min_values']) ?? 1));
const most = (part: WireComponent) => numberOf(part['max_values']) ?? 1;

function textField(part: WireComponent, kept: string | undefined): Field {
  const long = part['style'] === LONG_TEXT;
  const attributes = { placeholder: textOf(part['placeholder']), dir: 'auto', autocomplete: 'off' };
  const control = long
    ? make('textarea', { ...attributes, rows: '4' })
    : make('input', { ...attributes, type: 'text' });
  control.value = kept ?? textOf(part['value']);
  const [shortest, longest] = [numberOf(part['min_length']) ?? 0, numberOf(part['max_length']) ?? 4000];
  return {
    customId: part.custom_id ?? '',
    element: control,
    control,
    read: () => control.value,
    check() {
      const length = control.value.length;
      if (length === 0) return part['required'] === false ? undefined : 'This one has to be filled in.';
      if (length < shortest) return `At least ${shortest} characters; there are ${length}.`;
      if (length > longest) return `At most ${longest} characters; there are ${length}.`;
      return undefined;
    },
  };
}

function dropDown(part: WireComponent, choices: readonly Option[], kept: Value | undefined): Field {
  const none = make('option', { value: '' }, textOf(part['placeholder']) || 'Choose');
  const rows = choices.map((choice) => make('option', { value: choice.value }, choice.label));
  const control = make('select', {}, none, ...rows);
  control.value = kept?.[0] ?? choices.find((choice) => choice.chosen)?.value ?? '';
  return {
    customId: part.custom_id ?? '',
    element: control,
    control,
    read: () => (control.value === '' ? [] : [control.value]),
    check: () => (control.value === '' && least(part) > 0 ? 'One of these has to be chosen.' : undefined),
  };
}

function boxes(
  part: WireComponent,
  choices: readonly Option[],
  kept: Value | undefined,
  type: 'checkbox' | 'radio',
): Field {
  const inputs = choices.map((choice) => {
    const input = make('input', { type, name: part.custom_id ?? '', value: choice.value });
    input.checked = kept === undefined ? choice.chosen : kept.includes(choice.value);
    return input;
  });
  const rows = choices.map((choice, index) => {
    const note = choice.note === '' ? undefined : make('span', { class: 'note', dir: 'auto' }, choice.note);
    const words = make('span', {}, make('span', { dir: 'auto' }, choice.label), note);
    return make('label', { class: 'choice' }, inputs[index], words);
  });
  const element = make('div', { class: 'choices' }, ...rows);
  const chosen = () => inputs.filter((input) => input.checked).map((input) => input.value);
  const limit =
    type === 'radio'
      ? 1
      : part.type === Kind.checkboxGroup
        ? (numberOf(part['max_values']) ?? choices.length)
        : most(part);
  return {
    customId: part.custom_id ?? '',
    element,
    control: inputs.find((input) => input.checked) ?? inputs[0] ?? element,
    read: chosen,
    check() {
      const { length } = chosen();
      if (length < least(part))
        return least(part) === 1 ? 'One of these has to be chosen.' : `Choose at least ${least(part)}.`;
      return length > limit ? `At most ${limit}; ${length} are chosen.` : undefined;
    },
  };
}

function tick(part: WireComponent, kept: Value | undefined): Field {
  const control = make('input', { type: 'checkbox' });
  control.checked = kept === undefined ? part['default'] === true : kept === 'true';
  return {
    customId: part.custom_id ?? '',
    element: make('label', { class: 'choice' }, control, make('span', {}, 'Yes')),
    control,
    read: () => String(control.checked),
    check: () => undefined,
  };
}
