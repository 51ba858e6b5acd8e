import { type Day, sayDay } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import { again } from './moves.ts';
import { type Order, type Settlement, standing } from './order.ts';
import { sayWhat } from './say-order.ts';

/**
 * Settles what becomes of everything of an order that came wrong or damaged. Kept counts as received; refunded is no
 * longer wanted; replaced is awaited again, for a day of its own.
 *
 * @throws UserError when nothing waits to be sorted out, or a replacement has no day.
 */
export function settle(
  record: TeamRecord,
  order: Order,
  settlement: Settlement,
  due: Day | undefined,
  today: Day,
): { value: Order; said: string } {
  const { toSortOut } = standing(order);
  const name = `#${order.id} ${sayWhat({ what: order.what, quantity: toSortOut })}`;
  if (toSortOut === 0) {
    throw new UserError(
      'already-done',
      `Nothing of #${order.id} ${order.what} waits to be sorted out. Nothing was changed.`,
    );
  }
  if (settlement === 'replaced' && due === undefined) {
    throw new UserError(
      'bad-input',
      `When is the replacement for ${name} due? Give it as due:"12 Dec". Nothing was changed.`,
    );
  }
  if (settlement !== 'replaced' && due !== undefined) {
    throw new UserError(
      'bad-input',
      `A day is only for a replacement, and ${name} is to be ${settlement}. Leave it out. Nothing was changed.`,
    );
  }
  for (const arrival of order.arrivals) {
    if (arrival.condition !== 'good' && arrival.settlement === null)
      record.orders.settle(arrival.id, settlement);
  }
  if (settlement === 'replaced' && due !== undefined) record.orders.promise(order.id, due);
  const how = {
    kept: 'kept as it is',
    refunded: 'given back for a refund',
    replaced: due === undefined ? 'to be replaced' : `to be replaced by ${sayDay(due, today)}`,
  }[settlement];
  return { value: again(record, order), said: `${name}: ${how}` };
}
