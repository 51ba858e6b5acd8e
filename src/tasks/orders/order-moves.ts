import { crewOf } from '../../bot/crew.ts';
import type { Changed, Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { JsonObject } from '../../core/json.ts';
import type { Answer } from '../../core/reply.ts';
import type { Day } from '../../core/time.ts';
import { findOrder } from '../../records/orders/find-order.ts';
import type { Order } from '../../records/orders/order.ts';
import { orderData } from '../../records/orders/order-answer.ts';
import type { TeamRecord } from '../../records/team-record.ts';
import { orderCard, orderHere } from './order-here.ts';

/** Draws a morning message again, from the record as it now is; handed in, since the bot does not know reminders. */
export type Redraw = (hand: Hand, noticeId: number, touched: readonly number[]) => Answer | undefined;

export interface Pressed {
  /** The morning message that the press came from. */
  readonly noticeId: number | undefined;
  readonly redraw: Redraw;
}

/** Does one thing to one order, then shows it: in place on the morning message it was pressed on, else as a card. */
export function moveOrder(
  hand: Hand,
  typed: string,
  what: (record: TeamRecord, found: Order, today: Day) => { value: Order; said: string },
  { noticeId, redraw }: Pressed,
  certainty?: string,
): Answer {
  const found = orderHere(hand, typed);
  const changed = hand.change((record) =>
    what(record, findOrder(record, found.buildId, String(found.id)), crewOf(hand).today),
  );
  const inPlace = redrawn(hand, noticeId, [changed.value.id], redraw);
  if (inPlace !== undefined) return { ...inPlace, data: { ...orderData(changed.value), ...dataOf(changed) } };
  return reportOrder(hand, changed, certainty);
}

/** What was done, as the order's card, with a button to take it back. */
export function reportOrder(hand: Hand, changed: Changed<Order>, certainty?: string): Answer {
  const card = orderCard(hand, changed.value, {
    said: changed.said,
    ...(certainty ? { certainty } : {}),
    extraButtons: [undoButton(changed)],
  });
  return { ...card, data: { ...card.data, ...dataOf(changed) } };
}

/** The morning message as it now is, or nothing when the press came from elsewhere. */
export function redrawn(
  hand: Hand,
  noticeId: number | undefined,
  touched: readonly number[],
  redraw: Redraw,
): Answer | undefined {
  if (noticeId === undefined || !hand.pressedInPlace) return undefined;
  const answer = redraw(hand, noticeId, touched);
  return answer && { ...answer, inPlace: true };
}

export const dataOf = ({ said, changeId }: Changed<unknown>): JsonObject => ({ said, change: changeId });
