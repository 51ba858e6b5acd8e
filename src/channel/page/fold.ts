import { make, pressable } from './dom.ts';

/** One observer for all folds: whether a fold hides anything depends on the width of the page. */
const widths = new ResizeObserver((changes) => {
  for (const change of changes) {
    const fold = change.target.closest('.fold');
    if (fold !== null && !fold.hasAttribute('data-open')) {
      fold.toggleAttribute('data-hides', change.target.scrollHeight > change.target.clientHeight + 1);
    }
  }
});

/** Wraps working that a narrow screen shows three lines of, with a button for the rest. */
export function foldable(content: HTMLElement): HTMLElement {
  const button = pressable('Show the rest', () => setOpen(!fold.hasAttribute('data-open')), {
    'aria-expanded': 'false',
  });
  button.classList.add('more');
  const fold = make('div', { class: 'fold' }, content, button);
  const setOpen = (open: boolean): void => {
    fold.toggleAttribute('data-open', open);
    button.setAttribute('aria-expanded', String(open));
    button.textContent = open ? 'Show less' : 'Show the rest';
  };
  // The keyboard can reach a link in the hidden part; whatever has the focus must be seen.
  content.addEventListener('focusin', () => setOpen(true));
  widths.observe(content);
  return fold;
}
