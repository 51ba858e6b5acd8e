import { waitBeyond } from '../../calc/lateness/lateness.ts';
import type { Day } from '../../core/time.ts';
import { latenessBook } from '../suppliers/expected.ts';
import { type OrderBy, orderBy } from '../suppliers/order-by.ts';
import { calendarsOf } from '../suppliers/supplier-days.ts';
import type { TeamRecord } from '../team-record.ts';

/** By when to order something, and from whom. */
export interface OrderDay extends OrderBy {
  readonly supplier: string;
}

/**
 * Counts back from the day something is needed with the supplier that leaves most time; undefined while no supplier has a
 * time from order to door.
 */
export function lastOrderDays(
  record: TeamRecord,
  today: Day,
): ((needed: Day) => OrderDay | undefined) | undefined {
  const able = record.suppliers
    .all()
    .flatMap(({ id, name, leadDays }) => (leadDays === null ? [] : [{ id, name, leadDays }]));
  if (able.length === 0) return undefined;
  const calendarOf = calendarsOf(record);
  const book = latenessBook(record.orders.timings(), today, calendarOf);
  return (needed) =>
    able
      .map(({ id, name, leadDays }) => ({
        supplier: name,
        ...orderBy(needed, calendarOf(id), leadDays, waitBeyond(book.of(id))),
      }))
      .toSorted((a, b) => (a.safeOn > b.safeOn ? -1 : 1))[0];
}
