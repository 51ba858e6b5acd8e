import { make, pressable } from './dom.ts';

export interface Sheet {
  readonly body: HTMLElement;
  close(): void;
}

/** Opens a sheet over the page with a heading and a way out in words; Esc closes it as well. */
export function openSheet(heading: string, onClose: () => void, wayOut = 'Put aside'): Sheet {
  const title = make('h2', { id: 'sheet-title', dir: 'auto' }, heading);
  const body = make('div', { class: 'sheet-body' });
  const top = make(
    'div',
    { class: 'sheet-top' },
    title,
    pressable(wayOut, () => dialog.close()),
  );
  const dialog = make('dialog', { 'aria-labelledby': 'sheet-title' }, top, body);
  dialog.addEventListener('close', () => {
    dialog.remove();
    onClose();
  });
  document.body.append(dialog);
  dialog.showModal();
  return { body, close: () => dialog.close() };
}
