import { announce } from './announce.ts';
import { make, pressable } from './dom.ts';

/** A ready-made text on a ruled slip, to be copied and sent elsewhere. */
export function slip(text: string): HTMLElement {
  const written = make('pre', { dir: 'auto', tabindex: '0', 'aria-label': 'Text to copy' }, text);
  const button = pressable('Copy', () => {
    void copy(text, written).then((done) => {
      button.textContent = done ? 'Copied' : 'Marked: copy it by hand';
      announce(button.textContent);
    });
  });
  return make('div', { class: 'slip' }, written, button);
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
