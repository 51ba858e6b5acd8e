import type { Day } from '../../core/time.ts';
import { sayDay } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import { type Condition, type Order, standing } from './order.ts';
import { sayOutstanding, sayWhat } from './say-order.ts';

/** Something came of an order. */
export interface Receipt {
  /** How many; all that is still to come when left out. */
  readonly quantity?: number | undefined;
  readonly condition: Condition;
  readonly note?: string | undefined;
  /** The day promised for what is still missing; the old one stands when left out. */
  readonly rest?: Day | undefined;
  readonly cameOn: Day;
  readonly byName: string;
}

/**
 * Logs what came of an order, in full or in part. What came wrong or damaged is kept as something to sort out; what is
 * still missing stays open. Returns the order as it then is, and the change in words.
 *
 * @throws UserError when nothing is still to come, or less than this.
 */
export function receive(record: TeamRecord, order: Order, receipt: Receipt): { value: Order; said: string } {
  const { outstanding } = standing(order);
  refuseIfDone(order, receipt.cameOn);
  const quantity = receipt.quantity ?? outstanding;
  if (quantity > outstanding) {
    throw new UserError(
      'out-of-range',
      `Only ${outstanding} of #${order.id} ${order.what} ${outstanding === 1 ? 'is' : 'are'} still to come, so ${quantity} cannot have arrived. Nothing was changed.`,
    );
  }
  const { condition, note, rest, cameOn, byName } = receipt;
  record.orders.receive({ orderId: order.id, cameOn, quantity, condition, note: note ?? null, byName });
  if (rest !== undefined && quantity < outstanding) record.orders.promise(order.id, rest);
  const came = sayWhat({ what: order.what, quantity });
  const how = { good: 'arrived', wrong: 'came wrong, to sort out', damaged: 'came damaged, to sort out' }[
    condition
  ];
  return { value: again(record, order), said: `#${order.id} ${came} ${how}` };
}

function refuseIfDone(order: Order, today: Day): void {
  const { state } = standing(order);
  const name = `#${order.id} ${sayWhat(order)}`;
  if (state === 'cancelled') {
    throw new UserError(
      'already-done',
      `${name} was cancelled. Nothing was changed. Place a new order if it came after all.`,
    );
  }
  if (state === 'open') return;
  const last = order.arrivals.at(-1);
  const when = last ? `on ${sayDay(last.cameOn, today)}, logged by ${last.byName}` : 'already';
  const next = state === 'to sort out' ? ' What came is still to be sorted out: /order settle.' : '';
  throw new UserError(
    'already-done',
    `Nothing of ${name} is still to come: it arrived ${when}. Nothing was changed.${next}`,
  );
}

/** @throws UserError when nothing is still to come, or it is promised for that day already. */
export function promise(
  record: TeamRecord,
  order: Order,
  on: Day,
  today: Day,
): { value: Order; said: string } {
  refuseIfDone(order, today);
  if (on === order.promisedOn) {
    throw new UserError(
      'already-done',
      `#${order.id} ${sayOutstanding(order)} is promised for ${sayDay(on, today)} already. Nothing was changed.`,
    );
  }
  record.orders.promise(order.id, on);
  return {
    value: again(record, order),
    said: `#${order.id} ${sayOutstanding(order)} now promised for ${sayDay(on, today)}, was ${sayDay(order.promisedOn, today)}`,
  };
}

/** @throws UserError when nothing is still to come. */
export function chase(record: TeamRecord, order: Order, today: Day): { value: Order; said: string } {
  refuseIfDone(order, today);
  record.orders.chase(order.id, today);
  return { value: again(record, order), said: `#${order.id} ${sayOutstanding(order)} chased` };
}

/** @throws UserError when it is cancelled already, all of it has come, or some of it must be sorted out first. */
export function cancel(record: TeamRecord, order: Order, today: Day): { value: Order; said: string } {
  refuseIfDone(order, today);
  const { toSortOut } = standing(order);
  if (toSortOut > 0) {
    throw new UserError(
      'not-now',
      `${toSortOut} of #${order.id} ${order.what} must be sorted out first, or nobody would see it again: /order settle. Nothing was changed.`,
    );
  }
  record.orders.cancel(order.id);
  return { value: again(record, order), said: `#${order.id} ${sayWhat(order)} cancelled` };
}

export function again(record: TeamRecord, { id }: Order): Order {
  const order = record.orders.find(id);
  if (!order) throw new Error(`order ${id} vanished inside its own change`);
  return order;
}
