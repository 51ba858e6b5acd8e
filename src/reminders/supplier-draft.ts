import type { Draft } from '../core/reply.ts';
import { type Day, sayDay } from '../core/time.ts';
import type { Order } from '../records/orders/order.ts';
import { sayOutstanding } from '../records/orders/say-order.ts';

/** The message to each supplier whose orders are late, ready to send: one per supplier, all its orders in it. */
export function supplierDrafts(late: readonly Order[], today: Day): readonly Draft[] {
  return [...Map.groupBy(late, ({ supplier }) => supplier)].map(([supplier, orders]) => ({
    label: `To ${supplier}`,
    text: draftTo(orders, today),
  }));
}

function draftTo(orders: readonly Order[], today: Day): string {
  const lines = orders.map((order) => {
    const since = `${order.kind === 'work' ? 'brought to you' : 'ordered'} ${sayDay(order.orderedOn, today)}`;
    return `- ${sayOutstanding(order)}, ${since}, promised for ${sayDay(order.promisedOn, today)} (our number ${order.id})`;
  });
  const [first] = orders;
  return [
    'Good morning,',
    orders.length === 1 ? 'we are still waiting for:' : 'we are still waiting for these:',
    ...lines,
    orders.every(({ kind }) => kind === 'work')
      ? 'Is it ready? If so we will fetch it; if not, please give us the day we can count on.'
      : 'Has it been sent? If so please give us the tracking number; if not, the day we can count on.',
    `Regards, ${first?.chaserName ?? ''}`,
  ].join('\n');
}
