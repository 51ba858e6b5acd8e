import { type Counted, type OrderKind, standing } from '../orders/order.ts';
import type { PartStanding, Whereabouts } from './part.ts';
import type { PartMove } from './part-store.ts';

/** How many of a part are where, before it is said when the rest comes. */
export type PartCount = Omit<PartStanding, 'part' | 'coming' | 'out'> & {
  /** Came of orders, good or kept, whatever became of them since. */
  readonly hadCome: number;
  readonly coming: number;
  readonly out: number;
};

/**
 * Counts a part from its orders and from what was said of it.
 *
 * Goods come from outside; work takes some of what is here away and brings it back, also when it is cancelled or paid
 * back. No count goes below nothing: where more was fitted than ever came, it was here without an order.
 */
export function countPart(
  needed: number,
  orders: readonly (Counted & { readonly kind: OrderKind })[],
  moves: readonly PartMove[],
): PartCount {
  let [inHand, hadCome, toSortOut, sentBack, coming, out] = [0, 0, 0, 0, 0, 0];
  for (const order of orders) {
    const counts = standing(order);
    toSortOut += counts.toSortOut;
    if (order.kind === 'goods') {
      inHand += counts.received;
      hadCome += counts.received;
      sentBack += counts.refunded;
      coming += order.cancelled ? 0 : counts.outstanding;
    } else {
      const away = order.cancelled ? 0 : counts.outstanding;
      out += away;
      inHand -= away + counts.toSortOut;
    }
  }
  let fitted = 0;
  for (const { kind, quantity } of moves) {
    if (kind === 'counted') inHand += quantity;
    else if (kind === 'fitted') [fitted, inHand] = [fitted + quantity, inHand - quantity];
    else if (kind === 'taken off') [fitted, inHand] = [fitted - quantity, inHand + quantity];
    else if (kind === 'used up') fitted -= quantity;
    else [sentBack, inHand] = [sentBack + quantity, inHand - quantity];
  }
  inHand = Math.max(0, inHand);
  fitted = Math.max(0, fitted);
  const missing = Math.max(0, needed - inHand - fitted - toSortOut - coming - out);
  const counts = { inHand, fitted, toSortOut, sentBack, missing, hadCome, coming, out };
  return { ...counts, whereabouts: whereabouts(counts, moves) };
}

function whereabouts(counts: Omit<PartCount, 'whereabouts'>, moves: readonly PartMove[]): Whereabouts {
  if (counts.toSortOut > 0) return 'to sort out';
  if (counts.out > 0) return 'out for work';
  if (counts.coming > 0) return 'on order';
  if (counts.inHand > 0) return stillInTheBox(counts.hadCome, moves) ? 'in the box' : 'on the shelf';
  if (counts.fitted > 0) return 'fitted';
  return counts.sentBack > 0 ? 'sent back' : 'not ordered';
}

/** In the box is what came after anybody last said where it lies, and what was said to lie there. */
function stillInTheBox(hadCome: number, moves: readonly PartMove[]): boolean {
  const last = moves.findLast(({ place }) => place !== null);
  if (last === undefined) return hadCome > 0;
  return last.place === 'box' || hadCome > last.hadCome;
}
