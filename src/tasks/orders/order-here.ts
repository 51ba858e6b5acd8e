import { buildHere, crewOf } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import type { Answer, Button } from '../../core/reply.ts';
import { type Choice, UserError } from '../../core/user-error.ts';
import type { Build } from '../../records/builds/build.ts';
import { findOrder, suggestOrders } from '../../records/orders/find-order.ts';
import { type Order, standing } from '../../records/orders/order.ts';
import { orderAnswer } from '../../records/orders/order-answer.ts';
import type { PurchaseLines } from '../../records/purchases/purchase.ts';
import { purchaseAnswer } from '../../records/purchases/purchase-answer.ts';
import { latenessBook } from '../../records/suppliers/expected.ts';
import { calendarsOf } from '../../records/suppliers/supplier-days.ts';
import { shelveButtons } from '../fluids/fluid-orders.ts';

/** What a card says beside the record: what was done, how it was read, and buttons of its own. */
export interface Saying {
  readonly said?: string;
  readonly certainty?: string;
  readonly extraButtons?: readonly Button[];
}

export function orderHere(hand: Hand, typed: string): Order {
  return findOrder(hand.record, requireBuild(hand).id, typed);
}

export function suggestOrdersHere(typed: string, hand: Hand): readonly Choice[] {
  const build = buildHere(hand);
  return build ? suggestOrders(hand.record, build.id, typed) : [];
}

export function requireBuild(hand: Hand): Build {
  const build = buildHere(hand);
  if (build) return build;
  throw new UserError(
    'not-found',
    'Nothing has been ordered in this channel yet. /order place writes the first one down.',
  );
}

/** One order as a card, with when to expect it. */
export function orderCard(hand: Hand, order: Order, saying: Saying = {}): Answer {
  const { today } = crewOf(hand);
  const { days, expected } = outlook(hand, order);
  const shelve = shelveButtons(hand, order);
  const extraButtons = [...shelve, ...(saying.extraButtons ?? [])];
  const card = orderAnswer({ order, today, days, expected, ...saying, extraButtons });
  // a bottle is poured, not fitted
  return shelve.length === 0 ? card : { ...card, buttons: card.buttons?.filter(isNotFitting) ?? [] };
}

const isNotFitting = ({ does }: Button): boolean => does.command !== 'part' || does.action !== 'fitted';

/** A purchase as a card, with when to expect what is still to come. */
export function purchaseCard(hand: Hand, { purchase, lines }: PurchaseLines, saying: Saying = {}): Answer {
  const { today } = crewOf(hand);
  const open = lines.find((line) => standing(line).state === 'open') ?? lines[0];
  if (open === undefined) throw new Error(`purchase ${purchase.id} has no lines`);
  return purchaseAnswer({ purchase, lines, today, ...outlook(hand, open), ...saying });
}

/** The supplier's working days, and when to expect what is still to come of an order. */
function outlook(hand: Hand, order: Order) {
  const { today } = crewOf(hand);
  const calendarOf = calendarsOf(hand.record);
  const days = calendarOf(order.supplierId);
  if (standing(order).state !== 'open') return { days, expected: undefined };
  const book = latenessBook(hand.record.orders.timings(), today, calendarOf);
  return { days, expected: book.expect(order.supplierId, order.promisedOn) };
}
