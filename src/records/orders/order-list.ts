import { pageOf } from '../../core/pages.ts';
import type { Answer, Item } from '../../core/reply.ts';
import type { Day } from '../../core/time.ts';
import { sayDay } from '../../core/time.ts';
import type { CalendarOf } from '../suppliers/supplier-days.ts';
import { isLate, type Order, standing } from './order.ts';
import { orderData } from './order-answer.ts';
import { sayChase, sayDue, sayLateness, sayOutstanding, sayWhat } from './say-order.ts';

export interface ListView {
  readonly today: Day;
  readonly daysOf: CalendarOf;
  readonly page?: number;
  /** Set when only one supplier's orders were asked for. */
  readonly supplier?: string;
}

/** Open orders one under the other, late first, and a menu to open one. */
export function orderList(open: readonly Order[], { today, daysOf, supplier, page = 1 }: ListView): Answer {
  const late = open.filter((order) => isLate(order, today)).length;
  const args: Readonly<Record<string, string>> = supplier === undefined ? {} : { supplier };
  const leaf = pageOf(open, page, { command: 'order', action: 'list', args });
  const from = supplier === undefined ? '' : ` from ${supplier}`;
  return {
    kind: 'answer',
    subject: 'On order',
    result:
      open.length === 0
        ? `Nothing is on order${from}`
        : `${open.length} open${from}${late > 0 ? `, ${late} late` : ''}`,
    tone: late > 0 ? 'late' : 'plain',
    items: leaf.things.map((order) => itemOf(order, today, daysOf)),
    ...(open.length === 0
      ? {}
      : {
          menu: {
            prompt: 'Open one',
            does: { command: 'order', action: 'show', args: {} },
            arg: 'order',
            choices: leaf.things.map((order) => ({
              label: `#${order.id} ${sayWhat(order)}`,
              value: String(order.id),
            })),
          },
          buttons: leaf.buttons,
        }),
    audience: 'crew',
    data: { open: open.length, late, orders: open.map(orderData) },
  };
}

function itemOf(order: Order, today: Day, daysOf: CalendarOf): Item {
  const { outstanding, toSortOut } = standing(order);
  const when = isLate(order, today)
    ? `${sayLateness(order.promisedOn, today, daysOf(order.supplierId))}, promised ${sayDay(order.promisedOn, today)}`
    : sayDue(order, today);
  const sortOut = toSortOut > 0 ? `${toSortOut} to sort out.` : '';
  return {
    text: `#${order.id} ${outstanding > 0 ? sayOutstanding(order) : sayWhat(order)}`,
    note: [
      `${order.kind === 'work' && outstanding > 0 ? 'At' : 'From'} ${order.supplier}`,
      outstanding > 0 ? `, ${when}. ${sayChase(order, today)}. ` : '. ',
      sortOut,
    ]
      .join('')
      .trim(),
    tone: isLate(order, today) ? 'late' : 'plain',
  };
}
