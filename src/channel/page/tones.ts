import type { WireComponent } from '../contract.ts';
import { numberOf } from './wire.ts';

/** Accent colours that stand for a state here; words and shape say it too, so that colour is never alone. */
const TONES: Readonly<Record<number, string>> = {
  10893860: 'late',
  9069584: 'soon',
  3107671: 'done',
  1915502: 'plain',
};

/** The state that a card's accent colour stands for; `undefined` for any other colour, and for none. */
export function toneOf(container: WireComponent): string | undefined {
  return TONES[numberOf(container['accent_color']) ?? -1];
}
