import { make, pressable } from './dom.ts';
import { topOf, touchedPlace } from './touched.ts';

/** Closer than this, in CSS pixels, counts as being there. */
const NEAR = 48;

/**
 * Where the reader is. `newest`: the newest entry is shown, from its beginning when it is taller than the sheet.
 * `end`: such a tall one has been read down to its end.
 */
type Place = 'newest' | 'end' | 'elsewhere';

/** Keeps the reader's place on the sheet. */
export interface Follow {
  /** Changes what is on the sheet; afterwards the reader is at the newest entry again, or still where they were. */
  during(change: () => void): void;
  /** An entry has come in: whoever does not see it is told. */
  came(entry: HTMLElement): void;
  /** The answer to something this person did is on its way, or here: it is to be seen. */
  expect(entryId: string): void;
  toNewest(): void;
  /** To the very end, where the line being sent will stand. */
  toEnd(): void;
}

/** `scroller` scrolls `list`; the button to come back to the newest stands in `foot`. */
export function followNewest(scroller: HTMLElement, list: HTMLElement, foot: HTMLElement): Follow {
  let place: Place = 'newest';
  let awaited = '';
  /** Where this code last scrolled to: scrolling elsewhere is the reader's. */
  let ours = Number.NaN;
  const touched = touchedPlace(list);

  const most = () => scroller.scrollHeight - scroller.clientHeight;
  /** Where the newest entry begins, its day included. */
  const start = (): number => {
    const entry = list.lastElementChild;
    if (entry === null) return 0;
    const day = entry.previousElementSibling;
    const first = day?.classList.contains('day') ? day : entry;
    return scroller.scrollTop + topOf(first) - topOf(scroller);
  };
  const isTall = () => start() < most() - 1;
  const go = (to: number): void => {
    scroller.scrollTop = to;
    ours = scroller.scrollTop;
  };
  const settle = (): void => {
    if (place !== 'elsewhere') go(place === 'end' ? most() : Math.min(start(), most()));
  };
  const to = (where: Place): void => {
    place = where;
    touched.forget();
    button.hidden = true;
    settle();
  };
  const button = pressable('New entries', () => to('newest'), { class: 'press newer', hidden: true });
  foot.prepend(make('div', { class: 'newer-place' }, button));

  scroller.addEventListener('scroll', () => {
    if (Math.abs(scroller.scrollTop - ours) < 1) return;
    ours = Number.NaN;
    touched.forget();
    const isAtEnd = most() - scroller.scrollTop < NEAR;
    const isAtStart = Math.abs(scroller.scrollTop - start()) < NEAR;
    if (isAtEnd) place = isTall() ? 'end' : 'newest';
    else place = isTall() && isAtStart ? 'newest' : 'elsewhere';
    if (isAtEnd) button.hidden = true;
  });
  // A keyboard that opens, pictures that arrive: the place stays. What the reader has just pressed stays put.
  new ResizeObserver(settle).observe(scroller);
  new ResizeObserver(() => {
    if (touched.now() === undefined) settle();
  }).observe(list);

  const firstInView = () => {
    const edge = topOf(scroller);
    return [...list.querySelectorAll('.entry')].find((entry) => entry.getBoundingClientRect().bottom > edge);
  };

  return {
    toNewest: () => to('newest'),
    toEnd: () => to('end'),
    during(change) {
      const newest = list.lastElementChild?.id ?? '';
      const sawAll = place === 'end' || (place === 'newest' && !isTall());
      const held = touched.now();
      const anchor = held ?? firstInView();
      const before = anchor === undefined ? 0 : topOf(anchor);
      change();
      const isFollowed = list.lastElementChild?.id !== newest && document.getElementById(newest) !== null;
      if (isFollowed && sawAll) return to('newest');
      // The rest of a tall entry is still unread: nobody is taken away from it.
      if (isFollowed) place = 'elsewhere';
      if (place !== 'elsewhere' && held === undefined) return settle();
      // A changed entry is drawn anew under the same id.
      const same = held === undefined ? document.getElementById(anchor?.id ?? '') : touched.now();
      if (same) go(scroller.scrollTop + topOf(same) - before);
    },
    came(entry) {
      if (entry.id === awaited) to('newest');
      else if (place === 'elsewhere') button.hidden = false;
    },
    expect(entryId) {
      awaited = entryId;
      if (document.getElementById(entryId) !== null) to('newest');
    },
  };
}
