import type { Button } from '../../core/reply.ts';
import type { Order } from './order.ts';

/** Button argument that names the notice a message came from; also how a message that may be lost is found again. */
export const NOTICE_ARG = 'notice';

/** The buttons of an order that is awaited; with a notice they redraw the message they sit on. */
export function chaseButtons(order: Order, noticeId?: number): readonly Button[] {
  return [
    button(order.kind === 'work' ? 'It is back' : 'Arrived', 'arrived', order, noticeId, 'main'),
    button(
      order.kind === 'work' ? 'Not all, or not right' : 'Only some, or not right',
      'partly',
      order,
      noticeId,
    ),
    button('New date', 'date', order, noticeId),
    button('Chased', 'chased', order, noticeId),
  ];
}

export function sortOutButton(order: Order, noticeId?: number): Button {
  return button('Sort out', 'settle', order, noticeId, 'main');
}

/** The next thing that happens to what has come. */
export function fittedButton(partId: number, weight: NonNullable<Button['weight']> = 'plain'): Button {
  return {
    label: 'Fitted',
    weight,
    does: { command: 'part', action: 'fitted', args: { part: `#${partId}` } },
  };
}

/** Opens the parcel that a line came with. */
export function parcelButton(purchaseId: number): Button {
  return {
    label: 'The whole parcel',
    does: { command: 'order', action: 'parcel', args: { purchase: purchaseId } },
  };
}

/** What names an order, and the message to redraw if it was pressed on one. */
export function argsOf({ id }: Order, noticeId: number | undefined): Readonly<Record<string, number>> {
  return noticeId === undefined ? { order: id } : { order: id, [NOTICE_ARG]: noticeId };
}

function button(
  label: string,
  action: string,
  order: Order,
  noticeId: number | undefined,
  weight: NonNullable<Button['weight']> = 'plain',
): Button {
  return { label, does: { command: 'order', action, args: argsOf(order, noticeId) }, weight };
}
