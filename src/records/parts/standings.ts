import type { Day } from '../../core/time.ts';
import { type Order, standing } from '../orders/order.ts';
import type { CountedOrder } from '../orders/order-store.ts';
import { type LatenessBook, latenessBook } from '../suppliers/expected.ts';
import { type CalendarOf, calendarsOf } from '../suppliers/supplier-days.ts';
import type { TeamRecord } from '../team-record.ts';
import { countPart } from './count-part.ts';
import type { Coming, PartStanding } from './part.ts';
import type { KnownPart, PartMove } from './part-store.ts';

/** Where a part is, with all that is known of the part itself. */
export type KnownStanding = PartStanding & { readonly part: KnownPart };

/**
 * Where every part of a build is, in the order in which they were first named. Five queries, however many parts there
 * are.
 */
export function standings(
  record: TeamRecord,
  buildId: number,
  today: Day,
  calendarOf: CalendarOf = calendarsOf(record),
): readonly KnownStanding[] {
  const parts = record.parts.ofBuild(buildId);
  const orders = ordersByPart(parts, record.orders.countedOfBuild(buildId));
  const moves = Map.groupBy(record.parts.movesOfBuild(buildId), ({ partId }) => partId);
  const book = latenessBook(record.orders.timings(), today, calendarOf);
  return parts.map((part) => standingOf(part, orders.get(part.id) ?? [], moves.get(part.id) ?? [], book));
}

/** Where one part is. */
export function partStanding(
  record: TeamRecord,
  part: KnownPart,
  today: Day,
  calendarOf: CalendarOf = calendarsOf(record),
): KnownStanding {
  const book = latenessBook(record.orders.timings(), today, calendarOf);
  return standingOf(part, ordersOf(record, part), record.parts.movesOf(part.id), book);
}

/** Every order of a part, cancelled ones too; those from before parts were kept, by their name. */
export const ordersOf = (record: TeamRecord, part: KnownPart): readonly Order[] => record.orders.ofPart(part);

/** Where many parts are is found part by part, so their orders are sorted out once. */
function ordersByPart<One extends Pick<Order, 'partId' | 'what'>>(
  parts: readonly KnownPart[],
  orders: readonly One[],
): ReadonlyMap<number, readonly One[]> {
  const byName = new Map(parts.map(({ id, name }) => [name, id]));
  return Map.groupBy(orders, ({ partId, what }) => partId ?? byName.get(what) ?? NO_PART);
}

const NO_PART = 0;

function standingOf(
  part: KnownPart,
  orders: readonly CountedOrder[],
  moves: readonly PartMove[],
  book: LatenessBook,
): KnownStanding {
  const { inHand, fitted, toSortOut, sentBack, missing, whereabouts } = countPart(part.needed, orders, moves);
  const awaited = orders.filter((order) => !order.cancelled && standing(order).outstanding > 0);
  const of = (kind: Order['kind']): readonly Coming[] =>
    awaited.filter((order) => order.kind === kind).map((order) => comingOf(order, book));
  const counts = { inHand, fitted, toSortOut, sentBack, missing };
  return { part, whereabouts, ...counts, coming: of('goods'), out: of('work') };
}

function comingOf(order: CountedOrder, book: LatenessBook): Coming {
  const { id: orderId, supplierId, supplier, promisedOn } = order;
  const { expectedOn, latestOn } = book.expect(supplierId, promisedOn);
  return { orderId, quantity: standing(order).outstanding, supplier, promisedOn, expectedOn, latestOn };
}
