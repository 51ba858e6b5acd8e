import { make, pressable } from './dom.ts';
import { openSheet } from './sheet.ts';
import type { Option } from './wire.ts';

export interface Question {
  readonly prompt: string;
  readonly choices: readonly Option[];
  readonly least: number;
  readonly most: number;
}

/** Asks for one or several of a list on a sheet over the page; `undefined` when it was put aside. */
export function openPicker(question: Question): Promise<readonly string[] | undefined> {
  const { promise, resolve } = Promise.withResolvers<readonly string[] | undefined>();
  const sheet = openSheet(question.prompt, () => resolve(undefined));
  const answer = (values: readonly string[]): void => {
    resolve(values);
    sheet.close();
  };
  if (question.choices.length === 0) sheet.body.append(make('p', {}, 'There is nothing to choose from.'));
  if (question.most === 1) {
    sheet.body.append(...question.choices.map((choice) => single(choice, () => answer([choice.value]))));
  } else {
    sheet.body.append(...several(question, answer));
  }
  return promise;
}

function single(choice: Option, onPress: () => void): HTMLElement {
  const row = pressable('', onPress, { class: 'choice', 'aria-current': choice.chosen ? 'true' : undefined });
  row.append(...words(choice));
  return row;
}

function words(choice: Option): readonly Node[] {
  const note = choice.note === '' ? [] : [make('span', { class: 'note', dir: 'auto' }, choice.note)];
  return [make('span', { dir: 'auto' }, choice.label), ...note];
}

function several(
  { choices, least, most }: Question,
  answer: (values: readonly string[]) => void,
): readonly Node[] {
  const boxes = choices.map((choice) => {
    const box = make('input', { type: 'checkbox', value: choice.value });
    box.checked = choice.chosen;
    return { box, row: make('label', { class: 'choice' }, box, make('span', {}, ...words(choice))) };
  });
  const problem = make('p', { class: 'problem', role: 'alert', hidden: true });
  const take = pressable(
    'Choose these',
    () => {
      const values = boxes.filter(({ box }) => box.checked).map(({ box }) => box.value);
      if (values.length >= least && values.length <= most) return answer(values);
      problem.textContent = `Choose ${least === most ? least : `${least} to ${most}`}; ${values.length} are chosen now.`;
      problem.hidden = false;
    },
    { 'data-weight': 'main' },
  );
  return [...boxes.map(({ row }) => row), problem, make('div', { class: 'deeds' }, take)];
}
