import { pressable } from './dom.ts';

/** The way back into earlier entries. */
export interface Earlier {
  /** Whether there are any more. */
  set(more: boolean): void;
}

/** A button above the entries; scrolling up to it does the same as pressing it. */
export function earlierEntries(scroller: HTMLElement, load: () => Promise<void>): Earlier {
  let loading = false;
  const button = pressable('Earlier entries', () => void once(), { class: 'press earlier', hidden: true });
  const once = async (): Promise<void> => {
    if (loading || button.hidden) return;
    loading = true;
    await load();
    loading = false;
  };
  scroller.prepend(button);
  const seen = new IntersectionObserver(
    (changes) => {
      if (changes.some((change) => change.isIntersecting)) void once();
    },
    { root: scroller },
  );
  seen.observe(button);
  return {
    set(more) {
      button.hidden = !more;
    },
  };
}
