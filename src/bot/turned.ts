import { z } from 'zod';
import type { Answer } from '../core/reply.ts';
import type { Hand } from './hand.ts';

/** The page a button leads to; left out when another card led here. */
export const turnedPage = z.coerce.number().int().min(1).max(100_000).optional();

/** Turning a page redraws the card it is on; whoever comes from another card gets a new one beside it. */
export function turned(hand: Hand, page: number | undefined, show: (page: number) => Answer): Answer {
  const answer = show(page ?? 1);
  return page === undefined ? answer : { ...answer, inPlace: hand.pressedInPlace };
}
