import { crewOf, readDay } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer } from '../../core/reply.ts';
import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { readCountedNames } from '../../phrases/counted-names.ts';
import type { Order } from '../../records/orders/order.ts';
import { orderData } from '../../records/orders/order-answer.ts';
import { findLine } from '../../records/purchases/find-line.ts';
import { type Exception, receiveParcel } from '../../records/purchases/parcel-moves.ts';
import type { PurchaseLines } from '../../records/purchases/purchase.ts';
import type { TeamRecord } from '../../records/team-record.ts';
import { orderHere, purchaseCard, requireBuild } from './order-here.ts';
import { dataOf, type Pressed, redrawn } from './order-moves.ts';

/** What did not come right of a parcel, as typed. */
export interface ParcelGiven {
  readonly missing?: string | undefined;
  readonly wrong?: string | undefined;
  readonly damaged?: string | undefined;
  readonly rest?: string | undefined;
  readonly note?: string | undefined;
}

/** The purchase of this number in this build. @throws UserError 'not-found'. */
export function purchaseHere(hand: Hand, purchaseId: number): PurchaseLines {
  const purchase = hand.record.purchases.find(purchaseId);
  const lines = hand.record.orders.ofPurchase(purchaseId);
  if (purchase?.buildId === requireBuild(hand).id && lines.length > 0) return { purchase, lines };
  throw new UserError(
    'not-found',
    'There is no such parcel in this build any more. /order list shows what is open.',
  );
}

/** The purchase that an order is a line of. @throws UserError 'not-found' when it was ordered by itself. */
export function purchaseOf(hand: Hand, typed: string): PurchaseLines {
  const order = orderHere(hand, typed);
  if (order.purchaseId !== null) return purchaseHere(hand, order.purchaseId);
  throw new UserError(
    'not-found',
    `#${order.id} ${order.what} was ordered by itself. Nothing was changed. /order arrived order:${order.id} logs it.`,
  );
}

/** Logs what came of a parcel: all of it but what is named. */
export function parcelArrived(
  hand: Hand,
  parcel: PurchaseLines,
  given: ParcelGiven,
  pressed: Pressed,
): Answer {
  const { lines } = parcel;
  const exceptions = [
    ...exceptionsIn(lines, given.missing, 'missing'),
    ...exceptionsIn(lines, given.wrong, 'wrong'),
    ...exceptionsIn(lines, given.damaged, 'damaged'),
  ];
  const rest = given.rest === undefined ? undefined : readDay(hand, 'rest', given.rest);
  return moveParcel(
    hand,
    parcel,
    (record, now, today) =>
      receiveParcel(record, now, {
        exceptions,
        rest: rest?.day,
        note: given.note,
        cameOn: today,
        byName: hand.who.name,
      }),
    pressed,
    rest?.readAs,
  );
}

function exceptionsIn(
  lines: readonly Order[],
  typed: string | undefined,
  how: Exception['how'],
): readonly Exception[] {
  if (typed === undefined) return [];
  return readCountedNames(typed).map(({ typed: piece, readings }) => ({
    ...findLine(lines, readings, piece),
    how,
  }));
}

/** Does one thing to all lines of a parcel, then shows it: in place on a morning message, else as a card. */
export function moveParcel(
  hand: Hand,
  { purchase }: PurchaseLines,
  what: (
    record: TeamRecord,
    lines: readonly Order[],
    today: Day,
  ) => { readonly value: readonly Order[]; readonly said: string },
  { noticeId, redraw }: Pressed,
  certainty?: string,
): Answer {
  const { today } = crewOf(hand);
  const changed = hand.change((record) => what(record, record.orders.ofPurchase(purchase.id), today));
  const touched = changed.value.map(({ id }) => id);
  const inPlace = redrawn(hand, noticeId, touched, redraw);
  if (inPlace !== undefined) {
    return { ...inPlace, data: { orders: changed.value.map(orderData), ...dataOf(changed) } };
  }
  const saying = {
    said: changed.said,
    ...(certainty ? { certainty } : {}),
    extraButtons: [undoButton(changed)],
  };
  const card = purchaseCard(hand, { purchase, lines: changed.value }, saying);
  return { ...card, data: { ...card.data, ...dataOf(changed) } };
}
