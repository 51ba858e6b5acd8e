import { type Day, wallTime } from '../core/time.ts';
import type { WorkingDays } from '../core/working-days.ts';
import type { Build } from '../records/builds/build.ts';
import { byUrgency, needsAHand, type Order } from '../records/orders/order.ts';
import type { TeamSettings } from '../records/team/team.ts';
import type { DueNotice, MorningNotice } from './notice.ts';
import type { Remark } from './remark.ts';

/** After this, a morning message missed while the machine was off waits for the next morning: never at night. */
export const EVENING = '20:00';

/**
 * The morning message of a build, if it is due: once on a working day, from the team's morning time until the evening,
 * when something is late, due today, or waits to be sorted out, or when there is something else to remark on. Pure: the same
 * records and instant give the same answer.
 *
 * @param remarksOn what else there is to say of the build on a day; asked only when a message could be due.
 */
export function dueMorning(
  build: Build,
  orders: readonly Order[],
  settings: TeamSettings,
  calendar: WorkingDays,
  nowMs: number,
  remarksOn: (day: Day) => readonly Remark[] = () => [],
): DueNotice<MorningNotice> | null {
  const now = wallTime(nowMs, settings.zone);
  const day = now.toPlainDate().toString();
  const time = now.toPlainTime().toString({ smallestUnit: 'minute' });
  if (time < settings.morning || time >= EVENING || !calendar.isWorkingDay(day)) return null;
  if (build.lastMorning !== null && build.lastMorning >= day) return null; // sent already, or the clock went back
  const orderIds = orders
    .filter((order) => needsAHand(order, day))
    .toSorted(byUrgency)
    .map(({ id }) => id);
  const remarks = remarksOn(day);
  if (orderIds.length === 0 && remarks.length === 0) return null;
  return {
    key: `morning:${build.id}:${day}`,
    channelId: build.channelId,
    notice: {
      kind: 'morning',
      buildId: build.id,
      day,
      orderIds,
      ...(remarks.length === 0 ? {} : { remarks: [...remarks] }),
    },
  };
}

/**
 * Whether a morning message that has not gone out yet still may: on its day, until the evening. After that the next
 * morning's says all of it, so one held up by an outage neither comes at night nor beside a newer one.
 */
export function stillTimely({ day }: MorningNotice, { zone }: TeamSettings, nowMs: number): boolean {
  const now = wallTime(nowMs, zone);
  const today = now.toPlainDate().toString();
  return day > today || (day === today && now.toPlainTime().toString() < EVENING);
}
