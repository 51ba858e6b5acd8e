import type { Answer, Item } from '../../core/reply.ts';
import type { Day } from '../../core/time.ts';
import { sayDay } from '../../core/time.ts';
import type { WorkingDays } from '../../core/working-days.ts';
import { isLate, type Order, standing } from './order.ts';
import { orderData } from './order-answer.ts';
import { sayChase, sayLateness, sayOutstanding, sayWhat } from './say-order.ts';

export interface ListView {
  readonly today: Day;
  readonly days: WorkingDays;
  /** Set when only one supplier's orders were asked for. */
  readonly supplier?: string;
}

/** Open orders one under the other, late first, and a menu to open one. */
export function orderList(open: readonly Order[], { today, days, supplier }: ListView): Answer {
  const late = open.filter((order) => isLate(order, today)).length;
  const from = supplier === undefined ? '' : ` from ${supplier}`;
  return {
    kind: 'answer',
    subject: 'On order',
    result:
      open.length === 0
        ? `Nothing is on order${from}`
        : `${open.length} open${from}${late > 0 ? `, ${late} late` : ''}`,
    tone: late > 0 ? 'late' : 'plain',
    items: open.map((order) => itemOf(order, today, days)),
    ...(open.length === 0
      ? {}
      : {
          menu: {
            prompt: 'Open one',
            does: { command: 'order', action: 'show', args: {} },
            arg: 'order',
            choices: open
              .slice(0, 25)
              .map((order) => ({ label: `#${order.id} ${sayWhat(order)}`, value: String(order.id) })),
          },
        }),
    audience: 'crew',
    data: { open: open.length, late, orders: open.map(orderData) },
  };
}

function itemOf(order: Order, today: Day, days: WorkingDays): Item {
  const { outstanding, toSortOut } = standing(order);
  const when = isLate(order, today)
    ? `${sayLateness(order.promisedOn, today, days)}, promised ${sayDay(order.promisedOn, today)}`
    : `due ${sayDay(order.promisedOn, today)}`;
  const sortOut = toSortOut > 0 ? `${toSortOut} to sort out.` : '';
  return {
    text: `#${order.id} ${outstanding > 0 ? sayOutstanding(order) : sayWhat(order)}`,
    note: [
      `From ${order.supplier}`,
      outstanding > 0 ? `, ${when}. ${sayChase(order, today)}. ` : '. ',
      sortOut,
    ]
      .join('')
      .trim(),
    tone: isLate(order, today) ? 'late' : 'plain',
  };
}
