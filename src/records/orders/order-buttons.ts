import type { Button } from '../../core/reply.ts';
import type { Order } from './order.ts';

/** Button argument that names the notice a message came from; also how a message that may be lost is found again. */
export const NOTICE_ARG = 'notice';

/** The buttons of an order that is awaited; with a notice they redraw the message they sit on. */
export function chaseButtons(order: Order, noticeId?: number): readonly Button[] {
  return [
    button('Arrived', 'arrived', order, noticeId, 'main'),
    button('Only some, or not right', 'partly', order, noticeId),
    button('New date', 'date', order, noticeId),
    button('Chased', 'chased', order, noticeId),
  ];
}

export function sortOutButton(order: Order, noticeId?: number): Button {
  return button('Sort out', 'settle', order, noticeId, 'main');
}

function button(
  label: string,
  action: string,
  { id }: Order,
  noticeId: number | undefined,
  weight: NonNullable<Button['weight']> = 'plain',
): Button {
  const args = noticeId === undefined ? { order: id } : { order: id, [NOTICE_ARG]: noticeId };
  return { label, does: { command: 'order', action, args }, weight };
}
