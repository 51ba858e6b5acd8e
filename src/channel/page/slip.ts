import { announce } from './announce.ts';
import { make, pressable } from './dom.ts';
import { foldable } from './fold.ts';

/** A ready-made text on a ruled slip, to be copied and sent elsewhere; `label` says for whom or what it is. */
export function slip(text: string, label?: string): HTMLElement {
  const written = make('pre', { dir: 'auto' }, text);
  const button = pressable('Copy', () => {
    void copy(text, written).then((done) => {
      button.textContent = done ? 'Copied' : 'Marked: copy it by hand';
      announce(button.textContent);
      if (!done) fold.open();
    });
  });
  const fold = foldable(written, { shown: 2, on: 'any', beside: [button] });
  const name = label === undefined ? 'Text to copy' : `Text to copy: ${label}`;
  const heading = label === undefined ? undefined : make('p', { class: 'slip-label', dir: 'auto' }, label);
  return make('div', { class: 'slip', role: 'group', 'aria-label': name }, heading, fold.element);
}

/** Copies the text; where the browser does not allow it (a page over plain HTTP), marks it on the page instead. */
async function copy(text: string, written: HTMLElement): Promise<boolean> {
  if (window.isSecureContext) {
    try {
      await navigator.clipboard.writeText(text);
      return true;
    } catch (refusal) {
      // The browser says NotAllowedError when the person or the machine forbids it; anything else is a fault of ours.
      if (!(refusal instanceof DOMException)) throw refusal;
    }
  }
  window.getSelection()?.selectAllChildren(written);
  return false;
}
