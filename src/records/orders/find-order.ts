import { type Choice, UserError } from '../../core/user-error.ts';
import { namesOf } from '../parts/find-part.ts';
import { likeNames, plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import { byUrgency, type Order, standing } from './order.ts';
import { sayWhat } from './say-order.ts';

/**
 * The order meant by `12`, `#12`, or a name as the crew types it: its own, or any that its part goes by.
 *
 * @throws UserError 'not-found' when there is none, 'which-one' when the name fits several, or is only nearly
 * one.
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
  const names = openNames(record, buildId);
  const [only, ...more] = firstOf([() => named(typed, open, names), () => named(typed, orders, names)]);
  if (only !== undefined && more.length === 0) return only;
  if (only !== undefined) throw whichOne(`Several orders fit "${typed}". Which one?`, [only, ...more]);
  // "stud M10" is not "stud M12": what is only nearly the name is asked, never taken
  const near = firstOf([() => nearlyNamed(typed, open), () => nearlyNamed(typed, orders)]);
  if (near.length > 0) throw whichOne(`No order here is called "${typed}". Is this the one?`, near);
  throw new UserError(
    'not-found',
    `No order here is called "${typed}". Nothing was changed. Type its number, or pick it from /order list.`,
  );
}

const whichOne = (question: string, orders: readonly Order[]): UserError =>
  new UserError('which-one', question, { field: 'order', choices: orders.map(orderChoice) });

function firstOf(ways: readonly (() => readonly Order[])[]): readonly Order[] {
  for (const way of ways) {
    const found = way();
    if (found.length > 0) return found;
  }
  return [];
}

/** Open orders that fit what is typed so far, the most urgent first; all of them for nothing typed. */
export function suggestOrders(record: TeamRecord, buildId: number, typed: string): readonly Choice[] {
  const wanted = plain(typed.replace('#', ''));
  const names = openNames(record, buildId);
  return record.orders
    .ofBuild(buildId)
    .filter(needsSomething)
    .toSorted(byUrgency)
    .filter((order) => plain(`${order.id} ${names(order).join(' ')} ${order.supplier}`).includes(wanted))
    .map(orderChoice);
}

function needsSomething(order: Order): boolean {
  const { state } = standing(order);
  return state === 'open' || state === 'to sort out';
}

/** What an order goes by: its own name, then every name of its part. */
type NamesOf = (order: Order) => readonly string[];

function openNames(record: TeamRecord, buildId: number): NamesOf {
  const ofPart = new Map(record.parts.ofBuild(buildId).map((part) => [part.id, namesOf(part)]));
  return ({ what, partId }) => [what, ...(ofPart.get(partId ?? 0) ?? [])];
}

/** Orders of exactly this name, or else those whose name holds it. */
function named(typed: string, orders: readonly Order[], names: NamesOf): readonly Order[] {
  const wanted = plain(typed);
  const exact = orders.filter((order) => names(order).some((name) => plain(name) === wanted));
  if (exact.length > 0) return exact;
  return orders.filter((order) => names(order).some((name) => plain(name).includes(wanted)));
}

function nearlyNamed(typed: string, orders: readonly Order[]): readonly Order[] {
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
