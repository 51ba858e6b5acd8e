import { z } from 'zod';
import type { Day } from '../../core/time.ts';

/** Names an order; shown as `#12`. */
export const OrderId = z.int().positive().brand<'OrderId'>();
export type OrderId = z.infer<typeof OrderId>;

/** Money in the currency's smallest unit, as an integer. */
export interface Money {
  readonly minor: number;
  /** ISO 4217. */
  readonly currency: string;
}

export const ORDER_KINDS = ['goods', 'work'] as const;
export type OrderKind = (typeof ORDER_KINDS)[number];

/** One thing ordered from one supplier, with everything that has come of it so far. */
export interface Order {
  readonly id: OrderId;
  readonly buildId: number;
  readonly what: string;
  /** The part it is an order of; null for one placed before parts were kept. */
  readonly partId: number | null;
  /** Something bought, or work done elsewhere on something of ours. */
  readonly kind: OrderKind;
  /** The purchase that it is a line of. */
  readonly purchaseId: number | null;
  readonly supplierId: number;
  readonly supplier: string;
  readonly quantity: number;
  readonly price: Money | null;
  readonly orderedOn: Day;
  /** The day now promised for what is still to come. */
  readonly promisedOn: Day;
  readonly firstPromisedOn: Day;
  readonly chaserId: string;
  readonly chaserName: string;
  readonly chasedOn: Day | null;
  readonly chasedTimes: number;
  readonly cancelled: boolean;
  /** The message that holds its photograph or document. */
  readonly link: string | null;
  readonly arrivals: readonly Arrival[];
}

export type Condition = 'good' | 'wrong' | 'damaged';

/** What is to become of something that came wrong or damaged. */
export type Settlement = 'kept' | 'replaced' | 'refunded';

/** Something that came, on its day. */
export interface Arrival {
  readonly id: number;
  readonly cameOn: Day;
  readonly quantity: number;
  readonly condition: Condition;
  readonly note: string | null;
  /** Null until somebody has settled what becomes of it; always null for what came good. */
  readonly settlement: Settlement | null;
  readonly byName: string;
}

/** Where an order stands, in counts that always add up to its quantity. */
export interface Standing {
  readonly state: 'open' | 'to sort out' | 'arrived' | 'cancelled';
  /** Good, or kept although not as ordered. */
  readonly received: number;
  /** Wrong or damaged, and nobody has settled what becomes of it. */
  readonly toSortOut: number;
  readonly refunded: number;
  /** Still to come. */
  readonly outstanding: number;
}

/** What it takes to say where an order stands. */
export interface Counted extends Pick<Order, 'quantity' | 'cancelled'> {
  readonly arrivals: readonly Pick<Arrival, 'quantity' | 'condition' | 'settlement'>[];
}

/** An order is open while anything is still to come, also when some of what came must be sorted out. */
export function standing(order: Counted): Standing {
  let [received, toSortOut, refunded] = [0, 0, 0];
  for (const { condition, settlement, quantity } of order.arrivals) {
    if (condition === 'good' || settlement === 'kept') received += quantity;
    else if (settlement === null) toSortOut += quantity;
    else if (settlement === 'refunded') refunded += quantity;
  }
  const outstanding = order.quantity - received - toSortOut - refunded;
  return {
    state: stateOf(order.cancelled, outstanding, toSortOut),
    received,
    toSortOut,
    refunded,
    outstanding,
  };
}

function stateOf(cancelled: boolean, outstanding: number, toSortOut: number): Standing['state'] {
  if (cancelled) return 'cancelled';
  if (outstanding > 0) return 'open';
  return toSortOut > 0 ? 'to sort out' : 'arrived';
}

/** Whether something is still to come and its promised day has passed. */
export function isLate(order: Order, today: Day): boolean {
  return standing(order).state === 'open' && order.promisedOn < today;
}

/** Whether somebody has to do something about it on this day: it is due or late, or must be sorted out. */
export function needsAHand(order: Order, today: Day): boolean {
  const { state, outstanding, toSortOut } = standing(order);
  return state !== 'cancelled' && ((outstanding > 0 && order.promisedOn <= today) || toSortOut > 0);
}

/** Late first, the longest late at the top; then by the day promised. */
export function byUrgency(a: Order, b: Order): number {
  return a.promisedOn < b.promisedOn ? -1 : a.promisedOn > b.promisedOn ? 1 : a.id - b.id;
}
