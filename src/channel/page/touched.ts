/** Distance of an element's upper edge from that of the window, in CSS pixels. */
export const topOf = (element: Element): number => element.getBoundingClientRect().top;

/** What the reader last pressed on the sheet: it is not to move from under the thumb. */
export interface Touched {
  /** The part of the entry it stands in, as drawn at present; `undefined` when nothing was pressed, or it is gone. */
  readonly now: () => Element | undefined;
  forget(): void;
}

/** Watches what is pressed in `list`. The parts of a card keep their order when it is drawn anew. */
export function touchedPlace(list: HTMLElement): Touched {
  let now: () => Element | undefined = () => undefined;
  list.addEventListener(
    'click',
    ({ target }) => {
      const entry = target instanceof Element ? target.closest('.entry') : null;
      if (!(target instanceof Element) || entry === null) return;
      const item = target.closest('.item');
      const index = item === null ? -1 : [...entry.querySelectorAll('.item')].indexOf(item);
      now = () => {
        const same = document.getElementById(entry.id) ?? undefined;
        return same?.querySelectorAll('.item')[index] ?? same;
      };
    },
    { capture: true },
  );
  return {
    now: () => now(),
    forget() {
      now = () => undefined;
    },
  };
}
