import { pressable } from './dom.ts';

/** The way back into earlier entries. */
export interface Earlier {
  /** Whether there are any more. */
  set(more: boolean): void;
  /** Brings the next stretch; false when there is none, or it could not be had. */
  load(): Promise<boolean>;
}

/** A button above the entries; scrolling up to it does the same as pressing it. `bring` says whether any came. */
export function earlierEntries(scroller: HTMLElement, bring: () => Promise<boolean>): Earlier {
  let under: Promise<boolean> | undefined;
  const button = pressable('Earlier entries', () => void load(), { class: 'press earlier', hidden: true });
  const load = async (): Promise<boolean> => {
    if (button.hidden) return false;
    under ??= bring().finally(() => {
      under = undefined;
    });
    return await under;
  };
  scroller.prepend(button);
  const seen = new IntersectionObserver(
    (changes) => {
      if (changes.some((change) => change.isIntersecting)) void load();
    },
    { root: scroller },
  );
  seen.observe(button);
  return {
    load,
    set(more) {
      button.hidden = !more;
    },
  };
}
