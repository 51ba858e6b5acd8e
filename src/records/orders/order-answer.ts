import type { JsonObject } from '../../core/json.ts';
import type { Answer, Button } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import type { WorkingDays } from '../../core/working-days.ts';
import type { Expected } from '../suppliers/expected.ts';
import { sayExpected } from '../suppliers/say-expected.ts';
import { isLate, type Order, standing } from './order.ts';
import { chaseButtons, fittedButton, parcelButton, sortOutButton } from './order-buttons.ts';
import { sayChase, sayDue, sayLateness, sayMoney, sayWhat } from './say-order.ts';

export interface OrderView {
  readonly order: Order;
  readonly today: Day;
  /** The supplier's working days. */
  readonly days: WorkingDays;
  /** When it is likely to come, while it is awaited. */
  readonly expected?: Expected | undefined;
  /** What has just been done, in words; absent when it was only asked for. */
  readonly said?: string;
  /** Said under the result: how a date was read, that a supplier is new. */
  readonly certainty?: string;
  readonly extraButtons?: readonly Button[];
}

/** One order as a card. */
export function orderAnswer(view: OrderView): Answer {
  const { order, today, days, said, certainty, expected, extraButtons = [] } = view;
  const { state, toSortOut, received } = standing(order);
  const own = [
    ...(state === 'open' ? chaseButtons(order) : []),
    ...(toSortOut > 0 ? [sortOutButton(order)] : []),
    ...(state === 'arrived' && received > 0 && order.partId !== null ? [fittedButton(order.partId)] : []),
    ...(order.purchaseId === null ? [] : [parcelButton(order.purchaseId)]),
  ];
  return {
    kind: 'answer',
    subject: `Order #${order.id}`,
    result: `${sayWhat(order)}: ${whereItStands(order, today, days)}`,
    tone: toneOf(order, today),
    ...(certainty === undefined ? {} : { certainty }),
    facts: factsOf(order, today, expected),
    buttons: [...own, ...extraButtons],
    audience: 'crew',
    data: { ...orderData(order), ...expectedData(expected), ...(said === undefined ? {} : { said }) },
  };
}

function whereItStands(order: Order, today: Day, days: WorkingDays): string {
  const { state, outstanding, toSortOut, received, refunded } = standing(order);
  switch (state) {
    case 'cancelled':
      return 'cancelled';
    case 'arrived':
      if (refunded > 0) return received === 0 ? 'refunded' : `${received} here, ${refunded} refunded`;
      return order.kind === 'work' ? 'back' : 'all here';
    case 'to sort out':
      return `${toSortOut} to sort out`;
    case 'open': {
      const count = outstanding === order.quantity ? '' : `${outstanding} still to come, `;
      const due = isLate(order, today)
        ? `${sayLateness(order.promisedOn, today, days)}`
        : sayDue(order, today);
      return `${count}${due}${toSortOut > 0 ? `, ${toSortOut} to sort out` : ''}`;
    }
  }
}

function toneOf(order: Order, today: Day): 'plain' | 'late' | 'soon' | 'done' {
  const { state } = standing(order);
  if (isLate(order, today)) return 'late';
  if (state === 'to sort out') return 'soon';
  return state === 'arrived' ? 'done' : 'plain';
}

function factsOf(order: Order, today: Day, expected: Expected | undefined): (readonly [string, string])[] {
  const promised = sayDay(order.promisedOn, today);
  const first =
    order.firstPromisedOn === order.promisedOn ? '' : `, first ${sayDay(order.firstPromisedOn, today)}`;
  return [
    [order.kind === 'work' ? 'Work at' : 'From', order.supplier],
    [order.kind === 'work' ? 'Taken there' : 'Ordered', sayDay(order.orderedOn, today)],
    ['Promised', promised + first],
    ...(expected === undefined || standing(order).state !== 'open'
      ? []
      : [['Expect it', sayExpected(expected, today)] as const]),
    ...(order.price === null ? [] : [['Price', sayMoney(order.price)] as const]),
    ...(standing(order).state === 'open' ? [['Chase', sayChase(order, today)] as const] : []),
    ...(order.link === null ? [] : [['Photo', order.link] as const]),
    ...order.arrivals.map(
      ({ cameOn, quantity, condition, settlement, note, byName }) =>
        [
          `Came ${sayDay(cameOn, today)}`,
          [`${quantity} ${condition}`, settlement, note, `logged by ${byName}`].filter(Boolean).join(', '),
        ] as const,
    ),
  ];
}

/** The order as scripts get it: dates as ISO 8601, money in the currency's smallest unit. */
export function orderData(order: Order): JsonObject {
  const { state, received, toSortOut, refunded, outstanding } = standing(order);
  return {
    order: order.id,
    what: order.what,
    part: order.partId,
    kind: order.kind,
    purchase: order.purchaseId,
    supplier: order.supplier,
    quantity: order.quantity,
    state,
    received,
    outstanding,
    toSortOut,
    refunded,
    orderedOn: order.orderedOn,
    dueOn: order.promisedOn,
    firstDueOn: order.firstPromisedOn,
    priceMinor: order.price?.minor ?? null,
    currency: order.price?.currency ?? null,
    chaser: order.chaserName,
    chasedTimes: order.chasedTimes,
    chasedOn: order.chasedOn,
    link: order.link,
  };
}

const expectedData = (expected: Expected | undefined): JsonObject =>
  expected === undefined
    ? {}
    : {
        expectedOn: expected.expectedOn,
        latestOn: expected.latestOn,
        restsOnOrders: expected.orders,
        teamOrders: expected.teamOrders,
      };
