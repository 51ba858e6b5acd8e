import type { OpenForm, WireComponent } from '../contract.ts';
import { make } from './dom.ts';
import { type Field, fieldFor, type Value } from './fields.ts';
import type { Lists } from './lists.ts';
import { remember, remembered } from './memory.ts';
import { piecesOf } from './pieces.ts';
import { openSheet } from './sheet.ts';
import { fieldsOf, Kind, textOf } from './wire.ts';

type Values = Readonly<Record<string, Value>>;

export interface FormPorts {
  lists(): Lists;
  /** Sends it; a returned sentence says why it was not taken, and the form stays open. */
  submit(form: OpenForm, values: Values): Promise<{ readonly problem?: string; readonly keep?: boolean }>;
}

/** Opens the bot's form as a sheet over the page. What is typed is kept until it is sent, also over Esc and reload. */
export function openForm(form: OpenForm, ports: FormPorts): void {
  const key = `form.${form.customId}`;
  const kept = keptValues(key);
  const sheet = openSheet(form.title, () => undefined);
  const fields: Field[] = [];
  const body = make('form', { novalidate: true });
  for (const part of form.components) body.append(...rowsOf(part, kept, ports.lists(), fields));

  const read = (): Values => Object.fromEntries(fields.map((field) => [field.customId, field.read()]));
  const problem = make('p', { class: 'problem', role: 'alert', dir: 'auto', hidden: true });
  const send = make('button', { type: 'submit', class: 'press', 'data-weight': 'main' }, 'Send');
  body.append(problem, make('div', { class: 'deeds' }, send));
  body.addEventListener('input', () => remember(key, JSON.stringify(read())));
  body.addEventListener('submit', (event) => {
    event.preventDefault();
    if (send.disabled || !allRight(fields)) return;
    send.disabled = true;
    problem.hidden = true;
    void ports.submit(form, read()).then((outcome) => {
      send.disabled = false;
      if (outcome.problem === undefined) {
        if (outcome.keep !== true) remember(key, '');
        return sheet.close();
      }
      problem.textContent = outcome.problem;
      problem.hidden = false;
    });
  });
  sheet.body.append(body);
  fields[0]?.control.focus();
}

function rowsOf(part: WireComponent, kept: Values, lists: Lists, fields: Field[]): readonly Node[] {
  switch (part.type) {
    case Kind.text:
      return piecesOf(part.content ?? '').map((piece) => make('p', { dir: 'auto' }, piece.text));
    case Kind.row:
      return (part.components ?? []).flatMap((child) =>
        row(child, child.label ?? '', '', kept, lists, fields),
      );
    case Kind.label:
      return part.component === undefined
        ? []
        : row(part.component, part.label ?? '', textOf(part['description']), kept, lists, fields);
    default:
      return [make('p', { class: 'small' }, `Something this page cannot show (component ${part.type}).`)];
  }
}

/** A field under its label, with the place beside it for what is wrong. */
function row(
  part: WireComponent,
  label: string,
  note: string,
  kept: Values,
  lists: Lists,
  fields: Field[],
): readonly Node[] {
  const id = `field-${fields.length}`;
  const field = fieldFor(part, kept[part.custom_id ?? ''], lists);
  if (field === undefined)
    return [make('p', { class: 'small', dir: 'auto' }, `${label}: this page has no field of this kind.`)];
  fields.push(field);
  const words = make('span', { class: 'label', id: `${id}-label`, dir: 'auto' }, label);
  const optional =
    part['required'] === false ? make('span', { class: 'note' }, 'may be left empty') : undefined;
  const hint = note === '' ? undefined : make('span', { class: 'note', id: `${id}-note`, dir: 'auto' }, note);
  const wrong = make('p', { class: 'problem', id: `${id}-wrong`, hidden: true });
  const described = [hint === undefined ? '' : `${id}-note`, `${id}-wrong`].join(' ').trim();
  const group = field.element === field.control ? {} : { role: 'group', 'aria-labelledby': `${id}-label` };
  if (field.element === field.control) field.control.setAttribute('aria-labelledby', `${id}-label`);
  field.control.setAttribute('aria-describedby', described);
  return [
    make(
      'div',
      { class: 'field', ...group },
      make('div', { class: 'label-line' }, words, optional),
      hint,
      field.element,
      wrong,
    ),
  ];
}

/** Says beside each field what is wrong with it, and goes to the first such. */
function allRight(fields: readonly Field[]): boolean {
  const wrong = fields.filter((field) => {
    const sentence = field.check();
    const beside = field.element.parentElement?.querySelector<HTMLElement>(':scope > .problem');
    field.control.toggleAttribute('aria-invalid', sentence !== undefined);
    if (sentence !== undefined) field.control.setAttribute('aria-invalid', 'true');
    if (beside) {
      beside.textContent = sentence ?? '';
      beside.hidden = sentence === undefined;
    }
    return sentence !== undefined;
  });
  wrong[0]?.control.focus();
  return wrong.length === 0;
}

function keptValues(key: string): Values {
  const text = remembered(key);
  if (text === '') return {};
  const values = Object.entries(fieldsOf(JSON.parse(text)));
  const isValue = (value: unknown): value is Value =>
    typeof value === 'string' || (Array.isArray(value) && value.every((one) => typeof one === 'string'));
  return Object.fromEntries(values.flatMap(([id, value]) => (isValue(value) ? [[id, value]] : [])));
}
