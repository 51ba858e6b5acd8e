import { z } from 'zod';
import demonstration from '../../data/demo/build.json' with { type: 'json' };
import { workingDays } from '../calendar/working-days.ts';
import type { LocalChannel } from '../channel/contract.ts';
import type { Chargehand } from '../chargehand.ts';
import { addDays, type Day, dayAt, instantOf, wallTime } from '../core/time.ts';
import type { WorkingDays } from '../core/working-days.ts';
import { place } from '../records/orders/place.ts';
import type { TeamSettings } from '../records/team/team.ts';
import type { TeamRecord } from '../records/team-record.ts';
import { DemoJobs, writeDemoJobs } from './jobs.ts';
import { DemoParts, writeDemoParts } from './parts.ts';
import { DemoReadings, writeDemoReadings } from './readings.ts';
import { DemoStages, writeDemoFluids, writeDemoMeasures } from './stages.ts';

const Demonstration = z.object({
  team: z.string(),
  channel: z.string(),
  build: z.string(),
  crew: z.array(z.string()),
  starters: z.array(z.string()),
  orders: z.array(
    z.object({
      what: z.string(),
      supplier: z.string(),
      quantity: z.int(),
      price_minor: z.int(),
      currency: z.string(),
      /** In working days from the day it is loaded. */
      ordered: z.int(),
      due: z.int(),
      chaser: z.string(),
      chased: z.array(z.int()),
      came: z
        .array(
          z.object({
            on: z.int(),
            quantity: z.int(),
            condition: z.enum(['good', 'wrong', 'damaged']),
            note: z.string().optional(),
            by: z.string(),
          }),
        )
        .default([]),
    }),
  ),
  parts: DemoParts,
  jobs: DemoJobs,
  stages: DemoStages,
  readings: DemoReadings,
});

/** A build of our own invention, to try things on. */
export const demo = Demonstration.parse(demonstration);

/**
 * Puts the demonstration into an empty record and posts its last morning message, so that the page opens with
 * something to do whatever the hour. Does nothing to a record that holds anything.
 */
export async function loadDemo(
  { teams, tick }: Chargehand,
  channel: LocalChannel,
  nowMs: number,
): Promise<void> {
  const { record, ledger } = teams.at(channel.guildId);
  const [first] = channel.channels;
  if (record.builds.all().length > 0 || first === undefined) return;
  const settings = record.settings.read();
  const days = workingDays(settings.country);
  const morning = lastMorning(nowMs, settings, days);
  const by = {
    interactionId: 'demonstration',
    personId: 'chargehand',
    personName: 'Chargehand',
    atMs: nowMs,
  };
  ledger.change(by, () => {
    writeOrders(record, channel, first.id, dayAt(morning, settings.zone), days);
    return { value: null, said: 'the demonstration build loaded' };
  });
  await tick(morning);
}

function writeOrders(
  record: TeamRecord,
  channel: LocalChannel,
  channelId: string,
  today: Day,
  days: WorkingDays,
): void {
  const build = record.builds.open(channelId, demo.build);
  for (const order of demo.orders) {
    const { value } = place(record, {
      buildId: build.id,
      what: order.what,
      supplier: order.supplier,
      quantity: order.quantity,
      price: { minor: order.price_minor, currency: order.currency },
      orderedOn: days.add(today, order.ordered),
      due: days.add(today, order.due),
      chaser: { id: channel.hands(order.chaser).id, name: order.chaser },
    });
    for (const offset of order.chased) record.orders.chase(value.order.id, days.add(today, offset));
    for (const { on, by, note, ...came } of order.came) {
      const cameOn = days.add(today, on);
      record.orders.receive({ orderId: value.order.id, cameOn, byName: by, note: note ?? null, ...came });
    }
  }
  const personOf = (name: string) => ({ id: channel.hands(name).id, name });
  writeDemoParts(record, build.id, demo.parts, personOf, today, days);
  writeDemoFluids(record, build.id, demo.stages, today);
  writeDemoJobs(record, build.id, demo.jobs, today, days);
  writeDemoMeasures(record, build.id, demo.stages, today);
  writeDemoReadings(record, build.id, demo.readings, today, record.settings.read().zone);
}

/** The latest instant at which a working day's morning message was due. */
function lastMorning(nowMs: number, { zone, morning }: TeamSettings, days: WorkingDays): number {
  const now = wallTime(nowMs, zone);
  let day = now.toPlainDate().toString();
  if (now.toPlainTime().toString() < morning) day = addDays(day, -1);
  while (!days.isWorkingDay(day)) day = addDays(day, -1);
  return instantOf(day, morning, zone);
}
