import { z } from 'zod';
import type { Day } from '../core/time.ts';
import type { WorkingDays } from '../core/working-days.ts';
import { place } from '../records/orders/place.ts';
import { alsoCall, setPart } from '../records/parts/edit-part.ts';
import { findPart } from '../records/parts/find-part.ts';
import { FIRST_OF_A_PART } from '../records/parts/open-part.ts';
import { sendOut } from '../records/parts/send-out.ts';
import { placePurchase } from '../records/purchases/place-purchase.ts';
import { setSupplier, shutSupplier } from '../records/suppliers/edit-supplier.ts';
import type { TeamRecord } from '../records/team-record.ts';

/** Days are in working days from the day it is loaded; minus is past. */
export const DemoParts = z.object({
  suppliers: z.array(
    z.object({
      name: z.string(),
      country: z.string(),
      lead: z.int(),
      shut: z.object({ from: z.int(), to: z.int(), reason: z.string() }).optional(),
    }),
  ),
  /** Orders of earlier weeks that came: what each supplier's lateness is learnt from. */
  came: z.array(
    z.object({
      what: z.string(),
      supplier: z.string(),
      price_minor: z.int(),
      ordered: z.int(),
      due: z.int(),
      on: z.int(),
      by: z.string(),
    }),
  ),
  parcel: z.object({
    supplier: z.string(),
    ordered: z.int(),
    due: z.int(),
    chaser: z.string(),
    currency: z.string(),
    carriage_minor: z.int(),
    lines: z.array(z.object({ what: z.string(), quantity: z.int(), price_minor: z.int() })),
  }),
  work: z.object({
    part: z.string(),
    to: z.string(),
    work: z.string(),
    taken: z.int(),
    due: z.int(),
    price_minor: z.int(),
    chaser: z.string(),
  }),
  parts: z.array(
    z.object({
      part: z.string(),
      also: z.array(z.string()),
      system: z.string(),
      single_use: z.boolean(),
    }),
  ),
});

/** The person of a name as the channel knows them. */
export type PersonOf = (name: string) => { readonly id: string; readonly name: string };

/** Puts suppliers abroad, a parcel, something out for work and what has come before into the demonstration's build. */
export function writeDemoParts(
  record: TeamRecord,
  buildId: number,
  demo: z.output<typeof DemoParts>,
  personOf: PersonOf,
  today: Day,
  days: WorkingDays,
): void {
  const on = (offset: number): Day => days.add(today, offset);
  for (const { name, country, lead, shut } of demo.suppliers) {
    const known = record.suppliers.all().find((supplier) => supplier.name === name);
    const { value } = setSupplier(record, known ?? record.suppliers.add(name), { country, leadDays: lead });
    if (shut)
      shutSupplier(record, value, { from: on(shut.from), to: on(shut.to), reason: shut.reason }, today);
  }
  for (const { what, supplier, price_minor: minor, ordered, due, on: cameOn, by } of demo.came) {
    const price = { minor, currency: 'GBP' };
    const wanted = { buildId, what, supplier, quantity: 1, price, orderedOn: on(ordered), due: on(due) };
    const { order } = place(record, { ...wanted, chaser: personOf(by) }).value;
    const came = { quantity: 1, condition: 'good', note: null } as const;
    record.orders.receive({ orderId: order.id, cameOn: on(cameOn), byName: by, ...came });
  }
  writeParcel(record, buildId, demo.parcel, personOf, on);
  writeWork(record, buildId, demo.work, personOf, on);
  for (const { part, also, system, single_use: singleUse } of demo.parts) {
    const { value } = setPart(record, findPart(record, buildId, part), { system, singleUse });
    for (const name of also) alsoCall(record, value, name);
  }
}

function writeParcel(
  record: TeamRecord,
  buildId: number,
  {
    supplier,
    ordered,
    due,
    chaser,
    currency,
    carriage_minor: minor,
    lines,
  }: z.output<typeof DemoParts>['parcel'],
  personOf: PersonOf,
  on: (offset: number) => Day,
): void {
  const wanted = lines.map(({ what, quantity, price_minor }) => ({
    what,
    quantity,
    price: { minor: price_minor, currency },
  }));
  const shared = { carriage: { minor, currency }, reference: null, link: null, chaser: personOf(chaser) };
  const days = { orderedOn: on(ordered), due: on(due) };
  placePurchase(record, { buildId, supplier, lines: wanted, ...shared, ...days }, () => supplier);
}

function writeWork(
  record: TeamRecord,
  buildId: number,
  { part: name, to, work, taken, due, price_minor: minor, chaser }: z.output<typeof DemoParts>['work'],
  personOf: PersonOf,
  on: (offset: number) => Day,
): void {
  const part = record.parts.add({ ...FIRST_OF_A_PART, origin: 'used', buildId, name });
  sendOut(
    record,
    part,
    {
      quantity: 1,
      to,
      work,
      price: { minor, currency: 'GBP' },
      due: on(due),
      chaser: personOf(chaser),
      link: null,
    },
    { today: on(taken), byName: chaser },
  );
}
