import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
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

/** A part somebody asks about, and from whom it would come; from whoever is first where nobody is named. */
export interface AskedSooner {
  readonly part: { readonly id: number; readonly name: string };
  readonly supplier?: string;
}

/**
 * The ways to have the parts that drive a day sooner, ordered today: by courier, and from the supplier who would be here
 * first by its own time and its lateness so far; and everything not ordered yet by courier. None where it would not be sooner,
 * but for a part that is asked about.
 *
 * @throws UserError 'already-done' when nothing waits for that part, 'not-found' when that supplier's time is not known.
 */
export function soonerWays(
  record: TeamRecord,
  awaited: readonly Awaited[],
  today: Day,
  crewDays: WorkingDays,
  asked?: AskedSooner,
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
  const byCourier = { least: courierDay, likely: courierDay, late: courierDay };
  const waysFor = (what: Awaited, supplier?: string): readonly Sooner[] => {
    const of = { places: [awaited.indexOf(what)], name: what.name };
    const other = others.find(({ name }) =>
      supplier === undefined ? name !== what.supplier : name === supplier,
    );
    const from = other && {
      ...of,
      how: `from ${other.name}`,
      hereOn: other.expectedOn,
      arriving: arrivingOf(other, today),
    };
    return [
      { ...of, how: 'by courier', hereOn: courierOn, arriving: byCourier },
      ...(from === undefined ? [] : [from]),
    ];
  };
  if (asked !== undefined) {
    const of = awaited.filter(({ partId }) => partId === asked.part.id);
    if (of.length === 0) throw notAwaited(asked.part.name);
    if (asked.supplier !== undefined && !others.some(({ name }) => name === asked.supplier)) {
      throw unknownTime(asked.supplier);
    }
    return () => of.flatMap((what) => waysFor(what, asked.supplier).map((way) => ({ ...way, asked: true })));
  }
  return (drivers) => {
    const own = drivers.filter(({ what, share }) => what.kind !== 'fluid' && share >= LEAST_SHARE);
    const each = own
      .slice(0, MOST_PARTS)
      .flatMap(({ what }) => waysFor(what).filter(({ arriving }) => arriving.likely < what.arriving.likely));
    // several that wait together gain little one by one
    const open = awaited.flatMap(({ kind }, place) => (kind === 'not ordered' ? [place] : []));
    if (open.length < 2) return each;
    const name = `all ${open.length} not ordered`;
    return [...each, { places: open, name, how: 'by courier', hereOn: courierOn, arriving: byCourier }];
  };
}

const notAwaited = (name: string): UserError =>
  new UserError('already-done', `No job of this stage waits for ${name}: it is here, or nothing needs it.`);

const unknownTime = (name: string): UserError =>
  new UserError(
    'not-found',
    `Nobody has said how long ${name} takes from order to door. Nothing was changed. /supplier set with lead says it.`,
  );
