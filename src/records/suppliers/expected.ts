import {
  type Lateness,
  type LatenessSeen,
  supplierLateness,
  type TeamLateness,
  teamLateness,
  type Wait,
  waitBeyond,
} from '../../calc/lateness/lateness.ts';
import type { Day } from '../../core/time.ts';
import type { WorkingDays } from '../../core/working-days.ts';
import type { Timing } from '../orders/order-store.ts';
import type { CalendarOf } from './supplier-days.ts';

/** When to expect an order beside the day it is promised for, and on what that rests. */
export interface Expected {
  readonly expectedOn: Day;
  /** By when nine of ten such orders had come. */
  readonly latestOn: Day;
  /** Orders of this supplier that have come, and those of the whole team. */
  readonly orders: number;
  readonly teamOrders: number;
}

/** What each supplier's orders so far tell of the next one. */
export interface LatenessBook {
  readonly team: TeamLateness;
  of(supplierId: number): Lateness;
  /** How long beyond its day an order of this supplier is likely to take. */
  waitOf(supplierId: number): Wait;
  /** When something promised for this day and not here by today is to be expected. */
  expect(supplierId: number, promisedOn: Day): Expected;
}

/**
 * Reads every supplier's lateness off the team's orders: what came, by the day first promised; and what is late and has
 * not come by today, by the day now promised.
 */
export function latenessBook(timings: readonly Timing[], today: Day, calendarOf: CalendarOf): LatenessBook {
  const seen = new Map<number, { came: number[]; waiting: number[] }>();
  for (const { supplierId, firstPromisedOn, promisedOn, lastCameOn, outstanding } of timings) {
    const own = seen.get(supplierId) ?? { came: [], waiting: [] };
    seen.set(supplierId, own);
    if (outstanding <= 0) {
      if (lastCameOn !== null) own.came.push(lateness(firstPromisedOn, lastCameOn, calendarOf(supplierId)));
    } else if (promisedOn < today) {
      own.waiting.push(lateness(promisedOn, today, calendarOf(supplierId)));
    }
  }
  const team = teamLateness([...seen.values()]);
  const of = remembered((supplierId: number) => supplierLateness(seen.get(supplierId) ?? NOTHING, team));
  const waitOf = remembered((supplierId: number) => waitBeyond(of(supplierId)));
  return {
    team,
    of,
    waitOf,
    expect(supplierId, promisedOn) {
      const own = of(supplierId);
      const { meanDays, latestDays } = waitOf(supplierId);
      const days = calendarOf(supplierId);
      const from = promisedOn < today ? workedFrom(today, days) : promisedOn;
      const wait = Math.round(meanDays);
      return {
        expectedOn: days.add(from, wait),
        latestOn: days.add(from, Math.max(wait, latestDays)),
        orders: own.orders,
        teamOrders: team.orders,
      };
    },
  };
}

const NOTHING: LatenessSeen = { came: [], waiting: [] };

/** Each worked out once, when it is first asked for. */
function remembered<Value>(make: (supplierId: number) => Value): (supplierId: number) => Value {
  const known = new Map<number, Value>();
  return (supplierId) => {
    const found = known.get(supplierId);
    if (found !== undefined) return found;
    const made = make(supplierId);
    known.set(supplierId, made);
    return made;
  };
}

const lateness = (promisedOn: Day, on: Day, days: WorkingDays): number =>
  on <= promisedOn ? 0 : days.between(promisedOn, on);

/** Nothing comes on a day nobody works. */
const workedFrom = (day: Day, days: WorkingDays): Day => (days.isWorkingDay(day) ? day : days.add(day, 1));
