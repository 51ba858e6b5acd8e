import { type Lateness, type TeamLateness, waitBeyond } from '../../calc/lateness/lateness.ts';
import type { JsonObject } from '../../core/json.ts';
import { pageOf } from '../../core/pages.ts';
import type { Answer, Button, Fact, Item } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import type { Supplier } from './supplier.ts';

/** A supplier with what its orders so far tell. */
export interface SupplierKnown {
  readonly supplier: Supplier;
  readonly lateness: Lateness;
  readonly openOrders: number;
  readonly lateOrders: number;
}

export interface SupplierView extends SupplierKnown {
  readonly team: TeamLateness;
  readonly crewCountry: string;
  readonly today: Day;
  readonly certainty?: string;
  readonly extraButtons?: readonly Button[];
}

/** One supplier as a card: how late it comes, whose days it works, when it is shut. */
export function supplierAnswer(view: SupplierView): Answer {
  const { supplier, lateness, certainty, extraButtons = [], lateOrders } = view;
  return {
    kind: 'answer',
    subject: 'Supplier',
    result: `${supplier.name}: ${sayLate(lateness)}`,
    tone: lateOrders > 0 ? 'late' : 'plain',
    certainty: certainty ?? sayRests(view),
    facts: factsOf(view),
    buttons: [
      ...supplier.shutdowns.slice(0, 3).map(
        ({ id, from, to }): Button => ({
          label: `Open ${sayDay(from, view.today)} to ${sayDay(to, view.today)}`.slice(0, 34),
          does: { command: 'supplier', action: 'open', args: { shutdown: id } },
        }),
      ),
      ...extraButtons,
    ],
    audience: 'crew',
    data: supplierData(view),
  };
}

/** All suppliers, the latest first. */
export function supplierList(known: readonly SupplierKnown[], page: number): Answer {
  const sorted = known.toSorted((a, b) => meanOf(b.lateness) - meanOf(a.lateness));
  const leaf = pageOf(sorted, page, { command: 'supplier', action: 'list', args: {} });
  const late = known.filter(({ lateOrders }) => lateOrders > 0).length;
  return {
    kind: 'answer',
    subject: 'Suppliers',
    result:
      known.length === 0
        ? 'Nobody has been ordered from yet'
        : `${known.length} ${known.length === 1 ? 'supplier' : 'suppliers'}${late > 0 ? `, ${late} late with something` : ''}`,
    items: leaf.things.map(itemOf),
    ...(leaf.things.length === 0
      ? {}
      : {
          menu: {
            prompt: 'Open one',
            does: { command: 'supplier', action: 'show', args: {} },
            arg: 'supplier',
            choices: leaf.things.map(({ supplier }) => ({ label: supplier.name, value: supplier.name })),
          },
        }),
    buttons: leaf.buttons,
    audience: 'crew',
    data: { count: known.length, page: leaf.page, pages: leaf.pages, suppliers: sorted.map(supplierData) },
  };
}

function itemOf({ supplier, lateness, openOrders, lateOrders }: SupplierKnown): Item {
  const orders = [openOrders > 0 && `${openOrders} open`, lateOrders > 0 && `${lateOrders} late`].filter(
    Boolean,
  );
  return {
    text: `${supplier.name}: ${sayLate(lateness)}`,
    note: [supplier.country, ...orders, sayCount(lateness)].filter(Boolean).join(', '),
    tone: lateOrders > 0 ? 'late' : 'plain',
  };
}

const meanOf = (lateness: Lateness): number => waitBeyond(lateness).meanDays;

/** "about 2 working days late, at most 6 nine times in ten". */
export function sayLate(lateness: Lateness): string {
  const { meanDays, latestDays } = waitBeyond(lateness);
  const mean = Math.round(meanDays);
  const days = (count: number): string => `${count} working ${count === 1 ? 'day' : 'days'}`;
  if (latestDays === 0) return 'on the day, nine times in ten';
  const about = mean === 0 ? 'mostly on the day' : `about ${days(mean)} late`;
  return `${about}, at most ${days(latestDays)} nine times in ten`;
}

const sayCount = ({ orders }: Lateness): string => `rests on ${orders} of their orders`;

function sayRests({ lateness, team }: SupplierView): string {
  const { orders, waiting } = lateness;
  const weight = Math.round(team.weightOrders * 10) / 10;
  const late = waiting === 0 ? '' : ` and ${waiting} late now`;
  return `Rests on ${orders} of their orders that came${late}; the team's ${team.orders} weigh as much as ${weight}.`;
}

function factsOf({ supplier, crewCountry, today, openOrders, lateOrders }: SupplierView): readonly Fact[] {
  const { country, leadDays, note, shutdowns } = supplier;
  return [
    [
      'Works',
      country === null
        ? `by your own holidays, ${crewCountry}, as nobody has said where it is`
        : `by the holidays of ${country}`,
    ],
    [
      'From order to door',
      leadDays === null ? 'nobody has said' : `${leadDays} working ${leadDays === 1 ? 'day' : 'days'}`,
    ],
    ['Open orders', lateOrders === 0 ? String(openOrders) : `${openOrders}, ${lateOrders} late`],
    ...shutdowns.map(
      ({ from, to, reason }) =>
        ['Shut', `${sayDay(from, today)} to ${sayDay(to, today)}, ${reason}`] as const,
    ),
    ...(note === null ? [] : [['Note', note] as const]),
  ];
}

function supplierData({ supplier, lateness, openOrders, lateOrders }: SupplierKnown): JsonObject {
  const { latestDays, meanDays } = waitBeyond(lateness);
  return {
    supplier: supplier.id,
    name: supplier.name,
    country: supplier.country,
    leadDays: supplier.leadDays,
    note: supplier.note,
    shutdowns: supplier.shutdowns.map(({ from, to, reason }) => ({ from, to, reason })),
    expectedLateDays: Math.round(meanDays),
    latestLateDays: latestDays,
    restsOnOrders: lateness.orders,
    openOrders,
    lateOrders,
  };
}
