import { make, pressable } from './dom.ts';

/** Closer to the end than this, in CSS pixels, counts as reading the newest entry. */
const AT_THE_END = 48;

/** Keeps the reader's place on the sheet. */
export interface Follow {
  /** Changes what is on the sheet; afterwards the reader is at the end again, or still where they were. */
  during(change: () => void): void;
  /** An entry has come in: whoever follows sees it from its beginning, everybody else is told. */
  came(entry: HTMLElement): void;
  toEnd(): void;
}

/** `scroller` scrolls `list`; the button to come back to the newest stands in `foot`. */
export function followNewest(scroller: HTMLElement, list: HTMLElement, foot: HTMLElement): Follow {
  let following = true;
  const toEnd = (): void => {
    following = true;
    button.hidden = true;
    scroller.scrollTop = scroller.scrollHeight;
  };
  const button = pressable('New entries', toEnd, { class: 'press newer', hidden: true });
  foot.prepend(make('div', { class: 'newer-place' }, button));

  scroller.addEventListener('scroll', () => {
    following = scroller.scrollHeight - scroller.scrollTop - scroller.clientHeight < AT_THE_END;
    if (following) button.hidden = true;
  });
  // Pictures that arrive, a keyboard that opens: whoever was at the end stays there.
  const sizes = new ResizeObserver(() => {
    if (following) scroller.scrollTop = scroller.scrollHeight;
  });
  sizes.observe(list);
  sizes.observe(scroller);

  const top = (element: Element) => element.getBoundingClientRect().top;
  const firstInView = () => {
    const edge = top(scroller);
    return [...list.querySelectorAll('.entry')].find((entry) => entry.getBoundingClientRect().bottom > edge);
  };

  return {
    toEnd,
    during(change) {
      const anchor = following ? undefined : firstInView();
      const before = anchor === undefined ? 0 : top(anchor);
      change();
      if (following) return toEnd();
      // A changed entry is drawn anew under the same id.
      const same = anchor === undefined ? null : document.getElementById(anchor.id);
      if (same !== null) scroller.scrollTop += top(same) - before;
    },
    came(entry) {
      if (!following) button.hidden = false;
      else if (entry.offsetHeight > scroller.clientHeight) scroller.scrollTop += top(entry) - top(scroller);
    },
  };
}
