import type { PagePerson } from '../page-api.ts';
import { make, named, pressable } from './dom.ts';
import { Refused } from './server.ts';
import { openSheet } from './sheet.ts';

export interface MePorts {
  readonly people: readonly PagePerson[];
  initials(name: string): string;
  /** Comes back as this person, who joins if need be. Rejects with {@link Refused}. */
  join(name: string): Promise<void>;
  /** Put aside without choosing. */
  onClose(): void;
}

/** Asks who is writing: one of the crew, or somebody new. */
export function askWhoIAm(ports: MePorts): void {
  const sheet = openSheet('Who is writing?', ports.onClose);
  const problem = make('p', { class: 'problem', role: 'alert', dir: 'auto', hidden: true });
  const join = async (name: string): Promise<void> => {
    try {
      await ports.join(name);
      sheet.close();
    } catch (failure) {
      if (!(failure instanceof Refused)) throw failure;
      problem.textContent = failure.message;
      problem.hidden = false;
    }
  };
  const crew = ports.people.filter((person) => !person.bot);
  const rows = crew.map((person) => {
    const row = pressable('', () => void join(person.name), { class: 'choice person' });
    row.append(
      make('span', { class: 'square', 'aria-hidden': 'true' }, ports.initials(person.name)),
      named(person.name),
    );
    return row;
  });
  const name = make('input', {
    type: 'text',
    maxlength: '32',
    autocomplete: 'off',
    dir: 'auto',
    'aria-labelledby': 'new-name',
  });
  const button = make('button', { type: 'submit', class: 'press', 'data-weight': 'main' }, 'Join');
  const label = make(
    'span',
    { class: 'label', id: 'new-name' },
    crew.length === 0 ? 'Your name' : 'Somebody else: name',
  );
  const form = make(
    'form',
    { class: 'join', novalidate: true },
    label,
    make('div', { class: 'join-line' }, name, button),
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    if (name.value.trim() === '') name.focus();
    else void join(name.value.trim());
  });
  sheet.body.append(...rows, form, problem);
  (rows[0] ?? name).focus();
}
