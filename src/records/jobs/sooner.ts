import type { Day } from '../../core/time.ts';
import type { WorkingDays } from '../../core/working-days.ts';
import { latenessBook } from '../suppliers/expected.ts';
import { calendarsOf } from '../suppliers/supplier-days.ts';
import type { TeamRecord } from '../team-record.ts';
import { type Awaited, arrivingOf, daysBetween } from './plan.ts';
import type { Driver, Sooner } from './start-day.ts';

/** Working days from an order by courier to the door. Common practice, no source. */
export const COURIER_DAYS = 2;

/** How many of the parts that drive the day are looked into, and from what share of the runs on. */
const [MOST_PARTS, LEAST_SHARE] = [3, 0.05];

/**
 * The ways to have the parts that drive a day sooner, ordered today: by courier, and from the supplier who would be here
 * first by its own time and its lateness so far. None where it would not be sooner.
 */
export function soonerWays(
  record: TeamRecord,
  awaited: readonly Awaited[],
  today: Day,
  crewDays: WorkingDays,
): (drivers: readonly Driver<Awaited>[]) => readonly Sooner[] {
  const calendarOf = calendarsOf(record);
  const book = latenessBook(record.orders.timings(), today, calendarOf);
  const others = record.suppliers
    .all()
    .flatMap(({ id, name, leadDays }) => {
      if (leadDays === null) return [];
      const promisedOn = calendarOf(id).add(today, leadDays);
      return [{ name, ...book.expect(id, promisedOn), promisedOn }];
    })
    .toSorted((a, b) => (a.expectedOn < b.expectedOn ? -1 : 1));
  const courierOn = crewDays.add(today, COURIER_DAYS);
  const courierDay = daysBetween(today, courierOn);
  return (drivers) =>
    drivers
      .filter(({ what, share }) => what.kind !== 'fluid' && share >= LEAST_SHARE)
      .slice(0, MOST_PARTS)
      .flatMap(({ what }): readonly Sooner[] => {
        const place = awaited.indexOf(what);
        const other = others.find(({ name }) => name !== what.supplier);
        const courier = { least: courierDay, likely: courierDay, late: courierDay };
        return [
          { place, how: 'by courier', hereOn: courierOn, arriving: courier },
          ...(other === undefined
            ? []
            : [
                {
                  place,
                  how: `from ${other.name}`,
                  hereOn: other.expectedOn,
                  arriving: arrivingOf(other, today),
                },
              ]),
        ].filter(({ arriving }) => arriving.likely < what.arriving.likely);
      });
}
