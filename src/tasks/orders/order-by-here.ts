import { buildHere, crewOf, type DayRead, readDay } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import type { Answer } from '../../core/reply.ts';
import { sayDay } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { neededOn } from '../../records/jobs/needed-on.ts';
import { findPart } from '../../records/parts/find-part.ts';
import { ordersOf } from '../../records/parts/standings.ts';
import { latenessBook } from '../../records/suppliers/expected.ts';
import { knownSupplier } from '../../records/suppliers/find-supplier.ts';
import { orderBy } from '../../records/suppliers/order-by.ts';
import { sayBasis } from '../../records/suppliers/say-expected.ts';
import type { Supplier } from '../../records/suppliers/supplier.ts';
import { calendarsOf } from '../../records/suppliers/supplier-days.ts';
import { whoseDays } from './due-day.ts';

export interface ByAsked {
  readonly part: string;
  /** As typed; left out, the day on which the first job that needs it is likely to begin. */
  readonly needed?: string | undefined;
  readonly supplier?: string | undefined;
  /** Working days from order to door, where the supplier's usual time is not known or not meant. */
  readonly lead?: number | undefined;
}

/** By when to order a part so that it is here on the day it is needed. */
export function orderByHere(hand: Hand, { part, needed, supplier: named, lead }: ByAsked): Answer {
  const { today } = crewOf(hand);
  const { day, readAs } = needed === undefined ? dayOfItsJob(hand, part) : readDay(hand, 'needed', needed);
  const supplier = supplierFor(hand, part, named);
  const leadDays = lead ?? supplier.leadDays;
  if (leadDays === null) {
    throw new UserError(
      'bad-input',
      `How long does ${supplier.name} take? Nothing was changed. Give it as lead:5, or once and for all with /supplier set supplier:"${supplier.name}" lead:5.`,
    );
  }
  const calendarOf = calendarsOf(hand.record);
  const days = calendarOf(supplier.id);
  const book = latenessBook(hand.record.orders.timings(), today, calendarOf);
  const lateness = book.of(supplier.id);
  const { latestOn, safeOn } = orderBy(day, days, leadDays, book.waitOf(supplier.id));
  const sure = safeOn === latestOn ? '' : `, by ${sayDay(safeOn, today)} to be fairly sure`;
  return {
    kind: 'answer',
    subject: 'Order by',
    result:
      latestOn < today
        ? `Too late for ${sayDay(day, today)}: order by ${sayDay(latestOn, today)} was needed`
        : `Order by ${sayDay(latestOn, today)}${sure}`,
    tone: latestOn < today ? 'late' : safeOn < today ? 'soon' : 'plain',
    certainty: readAs,
    facts: [
      ['Needed', `${part}, ${sayDay(day, today)}`],
      ['From', supplier.name],
      [
        'From order to door',
        `${leadDays} working ${leadDays === 1 ? 'day' : 'days'}, ${whoseDays(supplier)}`,
      ],
      ['Fairly sure', `nine times in ten (${sayBasis(lateness.orders, book.team.orders)})`],
      ...(latestOn < today
        ? [['Ordered today', `promised ${sayDay(days.add(today, leadDays), today)}`] as const]
        : []),
    ],
    audience: 'crew',
    data: {
      neededOn: day,
      supplier: supplier.name,
      leadDays,
      latestOn,
      safeOn,
      restsOnOrders: lateness.orders,
      teamOrders: book.team.orders,
    },
  };
}

/** When the first job that waits for a part is likely to begin. */
function dayOfItsJob(hand: Hand, part: string): DayRead {
  const { today } = crewOf(hand);
  const build = buildHere(hand);
  const known = build && findPart(hand.record, build.id, part);
  const day = known && neededOn(hand.record, known.buildId, today).get(known.id);
  if (day !== undefined) {
    return { day, readAs: `${sayDay(day, today)} is when its first job is likely to begin (/when date).` };
  }
  throw new UserError(
    'bad-input',
    `No planned job waits for ${part}, so say for which day: needed:"in 3 weeks". Nothing was changed.`,
  );
}

/** The supplier named, or the one that the part was ordered from last. */
function supplierFor(hand: Hand, part: string, named: string | undefined): Supplier {
  if (named !== undefined) return knownSupplier(hand.record, named);
  const build = buildHere(hand);
  const known = build && findPart(hand.record, build.id, part);
  const last = known && ordersOf(hand.record, known).findLast(({ kind }) => kind === 'goods');
  const supplier = last && hand.record.suppliers.find(last.supplierId);
  if (supplier) return supplier;
  throw new UserError(
    'bad-input',
    `${part} has not been ordered yet, so say from whom: supplier:"…". Nothing was changed.`,
  );
}
