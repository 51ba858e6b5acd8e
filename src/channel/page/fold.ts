import { make, pressable } from './dom.ts';

/** Whether a fold hides anything depends on the width of the page. */
const widths = new ResizeObserver((changes) => {
  for (const { target } of changes) {
    const fold = target.closest('.fold');
    if (fold !== null) measure(fold);
  }
});

/** How something that can be long is folded. */
interface Folding {
  /** Lines shown when folded. A single further line is shown as well: the button would take more room than it. */
  readonly shown: 1 | 2 | 3;
  /** `narrow`: on a phone only. */
  readonly on: 'narrow' | 'any';
  /** What to press beside the fold's own button. */
  readonly beside?: readonly HTMLElement[];
}

export interface Fold {
  readonly element: HTMLElement;
  open(): void;
}

/** Shows the first lines of `content`, with a button for the rest. */
export function foldable(content: HTMLElement, { shown, on, beside = [] }: Folding): Fold {
  const button = pressable('Show the rest', () => setOpen(!element.hasAttribute('data-open')), {
    'aria-expanded': 'false',
    class: 'press more',
  });
  const below = beside.length === 0 ? button : make('div', { class: 'deeds' }, button, ...beside);
  const clip = make('div', { class: 'clip' }, content);
  const element = make('div', { class: 'fold', 'data-shown': String(shown), 'data-on': on }, clip, below);
  const setOpen = (open: boolean): void => {
    element.toggleAttribute('data-open', open);
    button.setAttribute('aria-expanded', String(open));
    button.textContent = open ? 'Show less' : 'Show the rest';
  };
  // The keyboard can reach a link in the hidden part; whatever has the focus must be seen.
  content.addEventListener('focusin', () => setOpen(true));
  widths.observe(content);
  return { element, open: () => setOpen(true) };
}

/** Measures the folds in an element just put on the page, so that nothing moves once it is seen. */
export function settleFolds(within: Element): void {
  for (const fold of within.querySelectorAll('.fold')) measure(fold);
}

/** Opens in `now` the folds that were open in `before`, known by what is folded. */
export function keepOpen(before: Element, now: Element): void {
  const textOf = (fold: Element) => fold.querySelector('.clip')?.textContent;
  const open = new Set([...before.querySelectorAll('.fold[data-open]')].map(textOf));
  for (const fold of now.querySelectorAll('.fold')) {
    if (open.has(textOf(fold))) fold.querySelector<HTMLElement>('.more')?.click();
  }
}

function measure(fold: Element): void {
  const content = fold.querySelector<HTMLElement>('.clip > *');
  if (content === null) return;
  const lines = content.offsetHeight / Number.parseFloat(getComputedStyle(content).lineHeight);
  fold.toggleAttribute('data-hides', lines > Number(fold.getAttribute('data-shown')) + 1.5);
}
