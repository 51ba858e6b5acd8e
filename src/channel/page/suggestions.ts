import type { Suggestion } from '../contract.ts';
import { announce } from './announce.ts';
import { make } from './dom.ts';

/** How long the hands must rest, in milliseconds, before suggestions are asked for. */
const REST_MS = 90;

export interface SuggestionPorts {
  ask(line: string, caret: number, signal: AbortSignal): Promise<readonly Suggestion[]>;
  starters(): readonly string[];
}

/** The plain list above the line; the focus stays on the line all the time. */
export interface Suggestions {
  /** Looks up what fits the line as it stands. */
  look(): void;
  showStarters(): void;
  close(): void;
  readonly isOpen: () => boolean;
  /** Takes the key if the list has a use for it. */
  key(event: KeyboardEvent): boolean;
}

export function suggestionsFor(
  input: HTMLTextAreaElement,
  list: HTMLElement,
  ports: SuggestionPorts,
): Suggestions {
  let shown: readonly Suggestion[] = [];
  let active = -1;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asking = new AbortController();

  const mark = (index: number): void => {
    active = index;
    for (const [at, row] of [...list.children].entries())
      row.setAttribute('aria-selected', String(at === index));
    const row = list.children[index];
    row?.scrollIntoView({ block: 'nearest' });
    if (row === undefined) input.removeAttribute('aria-activedescendant');
    else input.setAttribute('aria-activedescendant', row.id);
  };

  const show = (suggestions: readonly Suggestion[]): void => {
    shown = suggestions;
    list.replaceChildren(
      ...suggestions.map((suggestion, index) => row(suggestion, index, () => take(suggestion))),
    );
    list.hidden = suggestions.length === 0;
    list.scrollTop = 0;
    // A text field of several lines has no expanded state to show; the number is said instead.
    if (suggestions.length > 0) announce(`${suggestions.length} suggestions`);
    mark(-1);
  };

  const drop = (): void => {
    clearTimeout(timer);
    asking.abort();
  };
  const close = (): void => {
    drop();
    show([]);
  };

  const look = (): void => {
    drop();
    const current = new AbortController();
    asking = current;
    timer = setTimeout(() => {
      void ports.ask(input.value, input.selectionStart, current.signal).then((suggestions) => {
        if (!current.signal.aborted) show(suggestions);
      });
    }, REST_MS);
  };

  const take = (suggestion: Suggestion): void => {
    input.value = suggestion.line;
    input.setSelectionRange(suggestion.caret, suggestion.caret);
    input.focus();
    input.dispatchEvent(new Event('input'));
  };

  return {
    look,
    close,
    isOpen: () => !list.hidden,
    showStarters() {
      drop();
      show(ports.starters().map((line) => ({ label: line, line, caret: line.length })));
    },
    key(event) {
      if (list.hidden || event.isComposing) return false;
      const last = shown.length - 1;
      const chosen = shown[active] ?? (event.key === 'Tab' && input.value !== '' ? shown[0] : undefined);
      if (event.key === 'ArrowDown') mark(active >= last ? 0 : active + 1);
      else if (event.key === 'ArrowUp') mark(active <= 0 ? last : active - 1);
      else if (event.key === 'Escape') close();
      else if ((event.key === 'Enter' || event.key === 'Tab') && !event.shiftKey && chosen !== undefined)
        take(chosen);
      else return false;
      return true;
    },
  };
}

function row(suggestion: Suggestion, index: number, onTake: () => void): HTMLElement {
  const hint =
    suggestion.hint === undefined ? [] : [make('span', { class: 'note', dir: 'auto' }, suggestion.hint)];
  const label = make('span', { dir: 'auto' }, suggestion.label);
  const item = make(
    'li',
    { id: `suggestion-${index}`, role: 'option', 'aria-selected': 'false' },
    label,
    ...hint,
  );
  // Keeps the focus, and with it a phone's keyboard, on the line.
  item.addEventListener('pointerdown', (event) => event.preventDefault());
  item.addEventListener('click', onTake);
  return item;
}
