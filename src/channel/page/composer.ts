import type { Suggestion } from '../contract.ts';
import { make, pressable } from './dom.ts';
import { chosenFiles } from './files.ts';
import { remember, remembered } from './memory.ts';
import { suggestionsFor } from './suggestions.ts';

export interface ComposerPorts {
  /** Sends a line; a returned sentence says why it was not taken, and the line comes back. */
  send(line: string, files: readonly File[]): Promise<string | undefined>;
  suggest(line: string, caret: number, signal: AbortSignal): Promise<readonly Suggestion[]>;
  starters(): readonly string[];
  uploadLimitBytes(): number;
}

export interface Composer {
  /** Puts this on the line, caret at its end. */
  put(line: string): void;
  focus(): void;
}

/** The line to write on, at the foot of the sheet. */
export function openComposer(foot: HTMLElement, ports: ComposerPorts): Composer {
  const list = make('ul', { id: 'suggestions', role: 'listbox', 'aria-label': 'Suggestions', hidden: true });
  const problem = make('div', { class: 'problem', role: 'alert', hidden: true });
  const input = make('textarea', {
    id: 'line',
    rows: '1',
    'aria-label': 'Write to the crew, or / for a command',
    'aria-controls': 'suggestions',
    'aria-autocomplete': 'list',
    placeholder: 'Write, or / for a command',
    enterkeyhint: 'send',
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
    dir: 'auto',
  });
  const suggestions = suggestionsFor(input, list, { ask: ports.suggest, starters: ports.starters });
  const complain = (...said: readonly (Node | string)[]): void => {
    problem.replaceChildren(...said);
    problem.hidden = said.length === 0;
  };
  const files = chosenFiles(ports.uploadLimitBytes, complain);

  const changed = (): void => {
    growWith(input);
    remember('line', input.value);
    if (input.value === '') suggestions.close();
    else suggestions.look();
  };
  const put = (line: string): void => {
    input.value = line;
    input.setSelectionRange(line.length, line.length);
    input.focus();
    changed();
  };

  /** The line comes back where it was; if another was begun meanwhile, that one stays and this one waits beside it. */
  const giveBack = (line: string, taken: readonly File[], sentence: string): void => {
    files.add(taken);
    const said = make('p', { dir: 'auto' }, sentence);
    if (input.value === '') {
      input.value = line;
      remember('line', line);
      complain(said);
    } else {
      complain(
        said,
        make('p', { dir: 'auto' }, make('q', {}, line)),
        pressable('Put it back on the line', () => put(line)),
      );
    }
  };

  const send = async (): Promise<void> => {
    const line = input.value.trim();
    const taken = files.take();
    if (line === '' && taken.length === 0) return;
    complain();
    input.value = '';
    changed();
    const sentence = await ports.send(line, taken);
    if (sentence !== undefined) giveBack(line, taken, sentence);
  };

  input.value = remembered('line');
  input.addEventListener('input', changed);
  input.addEventListener('pointerdown', () => {
    if (input.value === '' && document.activeElement !== input) suggestions.showStarters();
  });
  input.addEventListener('blur', suggestions.close);
  input.addEventListener('keydown', (event) => {
    if (suggestions.key(event)) return event.preventDefault();
    if (event.key !== 'Enter' || event.shiftKey || event.isComposing) return;
    event.preventDefault();
    void send();
  });

  const attach = pressable('Attach', files.choose);
  const tries = pressable('Things to try', () => {
    input.focus();
    if (suggestions.isOpen()) suggestions.close();
    else if (input.value === '') suggestions.showStarters();
    else suggestions.look();
  });
  tries.addEventListener('pointerdown', (event) => event.preventDefault());
  const go = pressable('Send', () => void send(), { 'data-weight': 'main' });
  // A press on the button must not first close the keyboard and move the button away from under the thumb.
  go.addEventListener('pointerdown', (event) => event.preventDefault());
  foot.append(problem, list, files.element, input, make('div', { class: 'under-line' }, attach, tries, go));
  takeDropped(files.add);
  return { put, focus: () => input.focus() };
}

/** Lets the field grow with its text where the style sheet's `field-sizing` is not known. */
function growWith(input: HTMLTextAreaElement): void {
  if (CSS.supports('field-sizing', 'content')) return;
  input.style.height = 'auto';
  input.style.height = `${input.scrollHeight + 4}px`;
}

/** Files dropped anywhere on the page, or pasted, go with the next line. */
function takeDropped(add: (files: Iterable<File>) => void): void {
  const carries = (event: DragEvent) => event.dataTransfer?.types.includes('Files') === true;
  document.addEventListener('dragover', (event) => {
    if (carries(event)) event.preventDefault();
  });
  document.addEventListener('drop', (event) => {
    if (!carries(event)) return;
    event.preventDefault();
    add(event.dataTransfer?.files ?? []);
  });
  document.addEventListener('paste', (event) => {
    if (event.clipboardData !== null && event.clipboardData.files.length > 0) add(event.clipboardData.files);
  });
}
