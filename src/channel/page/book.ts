import type { PageEntry } from '../page-api.ts';
import type { Deeds } from './deeds.ts';
import { make } from './dom.ts';
import { drawEntry } from './entry.ts';
import { keepOpen, settleFolds } from './fold.ts';
import { compareIds } from './ids.ts';
import { dayName } from './times.ts';

/** Entries by the same hand closer together than this need no initials again. */
const SAME_BREATH_MS = 5 * 60_000;

/** The entries on the sheet, in order, with a rule between days. */
export interface Book {
  readonly entries: () => readonly PageEntry[];
  /** Puts entries in at their place; one that is there already is drawn anew where it stands. */
  put(entries: readonly PageEntry[]): void;
  remove(messageId: string): void;
  clear(keep: (entry: PageEntry) => boolean): void;
  /** Draws everything anew: names or initials have changed. */
  redraw(): void;
  find(messageId: string): HTMLElement | undefined;
}

export function openBook(list: HTMLElement, deeds: Deeds): Book {
  const drawn = new Map<string, { entry: PageEntry; item: HTMLLIElement }>();

  const inOrder = () =>
    [...drawn.values()].sort((a, b) => compareIds(a.entry.message.id, b.entry.message.id));

  /** Draws one entry; if it had the focus, or held it, the focus comes back to the same control. */
  const draw = (entry: PageEntry): void => {
    const old = drawn.get(entry.message.id);
    const item = drawEntry(entry, deeds);
    drawn.set(entry.message.id, { entry, item });
    if (old === undefined) return;
    const focused = document.activeElement;
    const held = focused instanceof HTMLElement && old.item.contains(focused) ? focused : undefined;
    keepOpen(old.item, item);
    old.item.replaceWith(item);
    if (held === undefined) return;
    const controls = [...item.querySelectorAll<HTMLButtonElement>('[data-control]')];
    const same = controls.find(
      (control) => control.dataset['control'] === held.dataset['control'] && !control.disabled,
    );
    (same ?? item).focus({ preventScroll: true });
  };

  /** Puts items and day rules into the list in order, moving only what stands in the wrong place. */
  const settle = (): void => {
    const wanted: HTMLElement[] = [];
    let day = '';
    let before: PageEntry | undefined;
    for (const { entry, item } of inOrder()) {
      const name = dayName(entry.message.timestamp, Date.now());
      if (name !== day) {
        wanted.push(make('li', { class: 'day' }, make('h2', {}, name)));
        before = undefined;
      }
      item.toggleAttribute('data-again', before !== undefined && goesOn(before, entry));
      wanted.push(item);
      [day, before] = [name, entry];
    }
    for (const rule of list.querySelectorAll(':scope > .day')) rule.remove();
    for (const [index, element] of wanted.entries()) {
      if (list.children[index] !== element) list.insertBefore(element, list.children[index] ?? null);
    }
    while (list.children.length > wanted.length) list.lastElementChild?.remove();
  };

  const drawAll = (entries: readonly PageEntry[]): void => {
    for (const entry of entries) draw(entry);
    settle();
    for (const { message } of entries) {
      const item = drawn.get(message.id)?.item;
      if (item !== undefined) settleFolds(item);
    }
  };

  return {
    entries: () => inOrder().map(({ entry }) => entry),
    put: drawAll,
    remove(messageId) {
      drawn.get(messageId)?.item.remove();
      drawn.delete(messageId);
      settle();
    },
    clear(keep) {
      for (const [id, { entry, item }] of drawn) {
        if (keep(entry)) continue;
        item.remove();
        drawn.delete(id);
      }
    },
    redraw: () => drawAll(inOrder().map(({ entry }) => entry)),
    find: (messageId) => drawn.get(messageId)?.item,
  };
}

function goesOn(before: PageEntry, entry: PageEntry): boolean {
  const gap = Date.parse(entry.message.timestamp) - Date.parse(before.message.timestamp);
  return (
    entry.asked === undefined && before.message.author.id === entry.message.author.id && gap < SAME_BREATH_MS
  );
}
