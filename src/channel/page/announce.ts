import { place } from './dom.ts';

/** Has a screen reader say this when it next pauses. */
export function announce(sentence: string): void {
  const announcer = place('announcer');
  // The same sentence twice is only said twice when the text changes in between.
  announcer.textContent = announcer.textContent === sentence ? `${sentence}\u00a0` : sentence;
}
