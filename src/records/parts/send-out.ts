import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { Money, Order } from '../orders/order.ts';
import { standing } from '../orders/order.ts';
import { place } from '../orders/place.ts';
import type { TeamRecord } from '../team-record.ts';
import { type Came, countOf, makeUp, moveOf, type Said } from './part-moves.ts';
import type { KnownPart } from './part-store.ts';
import { ordersOf } from './standings.ts';

/** Work to be done on a part elsewhere. */
export interface WorkOut {
  readonly quantity: number;
  readonly to: string;
  readonly work: string;
  readonly price: Money | null;
  readonly due: Day;
  readonly came?: Came | undefined;
  readonly chaser: { readonly id: string; readonly name: string };
  readonly link: string | null;
}

/**
 * Takes a part to somebody who works on it: an order of work, due back and chased like any other. What was fitted is
 * taken off for it.
 *
 * @throws UserError 'which-one' about the supplier's name, or about some that are still to come.
 */
export function sendOut(
  record: TeamRecord,
  part: KnownPart,
  out: WorkOut,
  by: Said,
): ReturnType<typeof place> {
  const { inHand, fitted } = countOf(record, part);
  const off = Math.min(fitted, Math.max(0, out.quantity - inHand));
  if (off > 0) record.parts.say(moveOf(part, 'taken off', off, by));
  makeUp(record, part, out.quantity, out.came, by);
  const { quantity, to, work, price, due, chaser, link } = out;
  const placed = place(record, {
    buildId: part.buildId,
    what: `${part.name}: ${work}`.slice(0, 200),
    part: part.name,
    kind: 'work',
    supplier: to,
    quantity,
    price,
    orderedOn: by.today,
    due,
    chaser,
    link,
  });
  const { order } = placed.value;
  return { ...placed, said: `${part.name} out for ${work} at ${order.supplier}, order #${order.id}` };
}

/**
 * The work order that a part is to come back from.
 *
 * @throws UserError 'not-found' when it is not out, 'which-one' when it is out at several places.
 */
export function workOut(record: TeamRecord, part: KnownPart, at: string | undefined): Order {
  const out = ordersOf(record, part).filter(
    (order) => order.kind === 'work' && !order.cancelled && standing(order).outstanding > 0,
  );
  const meant = at === undefined ? out : out.filter(({ id }) => `#${id}` === at);
  const [only, ...more] = meant;
  if (only !== undefined && more.length === 0) return only;
  if (only === undefined) {
    throw new UserError(
      'not-found',
      `${part.name} is not out for work by the record. Nothing was changed. /part out says where something was taken.`,
    );
  }
  throw new UserError('which-one', `${part.name} is out at several places. Which one is it back from?`, {
    field: 'at',
    choices: meant.map((order) => ({
      label: `${order.supplier}: ${order.what}`.slice(0, 80),
      value: `#${order.id}`,
    })),
  });
}
