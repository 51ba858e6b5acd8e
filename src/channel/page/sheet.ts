import { make, pressable } from './dom.ts';

export interface Sheet {
  readonly body: HTMLElement;
  close(): void;
}

let opened = 0;

/** Opens a sheet over the page with a heading and a way out in words; Esc closes it as well. */
export function openSheet(heading: string, onClose: () => void, wayOut = 'Put aside'): Sheet {
  opened += 1;
  const id = `sheet-${opened}`;
  const title = make('h2', { id, dir: 'auto' }, heading);
  const body = make('div', { class: 'sheet-body' });
  const top = make(
    'div',
    { class: 'sheet-top' },
    title,
    pressable(wayOut, () => dialog.close()),
  );
  const dialog = make('dialog', { 'aria-labelledby': id }, top, body);
  dialog.addEventListener('close', () => {
    dialog.remove();
    onClose();
  });
  document.body.append(dialog);
  dialog.showModal();
  return { body, close: () => dialog.close() };
}
