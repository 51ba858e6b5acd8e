import { type Choice, UserError } from '../../core/user-error.ts';
import { likeNames, plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import { byUrgency, type Order, standing } from './order.ts';
import { sayWhat } from './say-order.ts';

/**
 * The order meant by `12`, `#12`, or its name as the crew types it.
 *
 * @throws UserError 'not-found' when there is none, 'which-one' when the name fits several of those still open.
 */
export function findOrder(record: TeamRecord, buildId: number, typed: string): Order {
  const number = /^\s*#?\s*(\d{1,9})\s*$/.exec(typed)?.[1];
  if (number !== undefined) {
    const order = record.orders.find(Number(number));
    if (order?.buildId === buildId) return order;
    throw new UserError(
      'not-found',
      `There is no order #${number} in this build. /order list shows the open ones.`,
    );
  }
  const orders = record.orders.ofBuild(buildId).toSorted(byUrgency);
  const open = orders.filter(needsSomething);
  const meant = named(typed, open);
  const [only, ...more] = meant.length > 0 ? meant : named(typed, orders);
  if (only === undefined) {
    throw new UserError(
      'not-found',
      `No order here is called "${typed}". Nothing was changed. Type its number, or pick it from /order list.`,
    );
  }
  if (more.length === 0) return only;
  throw new UserError('which-one', `Several orders fit "${typed}". Which one?`, {
    field: 'order',
    choices: [only, ...more].map(orderChoice),
  });
}

/** Open orders that fit what is typed so far, the most urgent first; all of them for nothing typed. */
export function suggestOrders(record: TeamRecord, buildId: number, typed: string): readonly Choice[] {
  const wanted = plain(typed.replace('#', ''));
  return record.orders
    .ofBuild(buildId)
    .filter(needsSomething)
    .toSorted(byUrgency)
    .filter(({ id, what, supplier }) => plain(`${id} ${what} ${supplier}`).includes(wanted))
    .map(orderChoice);
}

function needsSomething(order: Order): boolean {
  const { state } = standing(order);
  return state === 'open' || state === 'to sort out';
}

function named(typed: string, orders: readonly Order[]): readonly Order[] {
  const inside = orders.filter(({ what }) => plain(what).includes(plain(typed)));
  if (inside.length > 0) return inside;
  const like = likeNames(
    typed,
    orders.map(({ what }) => what),
  );
  return orders.filter(({ what }) => like.includes(what));
}

const orderChoice = (order: Order): Choice => ({
  label: `#${order.id} ${sayWhat(order)} (${order.supplier})`.slice(0, 100),
  value: String(order.id),
});
