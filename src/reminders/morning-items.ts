import type { Button, Item } from '../core/reply.ts';
import { type Day, sayDay } from '../core/time.ts';
import { needsAHand, type Order, standing } from '../records/orders/order.ts';
import { chaseButtons, sortOutButton } from '../records/orders/order-buttons.ts';
import { sayChase, sayLateness, sayOutstanding, sayWhat, sayWhere } from '../records/orders/say-order.ts';
import { parcelButtons } from '../records/purchases/parcel-buttons.ts';
import type { CalendarOf } from '../records/suppliers/supplier-days.ts';

/** Orders with the lines of one purchase together, each where its first one stands. */
export function parcels(orders: readonly Order[]): readonly (readonly Order[])[] {
  return [
    ...Map.groupBy(orders, ({ id, purchaseId }) => (purchaseId === null ? `#${id}` : purchaseId)).values(),
  ];
}

/** One order of the morning message, or the lines of one parcel, with the buttons for what can have happened. */
export function itemOf(lines: readonly Order[], day: Day, noticeId: number, daysOf: CalendarOf): Item {
  const [first, ...more] = lines;
  if (first === undefined) throw new Error('a parcel without lines');
  return more.length === 0
    ? orderItem(first, day, noticeId, daysOf)
    : parcelItem(lines, first, day, noticeId, daysOf);
}

function orderItem(order: Order, day: Day, noticeId: number, daysOf: CalendarOf): Item {
  const { state, outstanding, toSortOut } = standing(order);
  const name = `#${order.id} ${outstanding > 0 ? sayOutstanding(order) : sayWhat(order)}`;
  const from = sayWhere(order);
  if (state === 'cancelled') return { text: name, note: `Cancelled.`, tone: 'plain' };
  if (state === 'arrived')
    return { text: name, note: `${came(order)}, ${from}. ${lastBy(order)}`, tone: 'done' };
  const sortOut = sortOutNote([order]);
  const sortOutButtons = toSortOut > 0 ? [sortOutButton(order, noticeId)] : [];
  if (outstanding === 0) {
    return { text: name, note: [from, ...sortOut].join('. '), tone: 'soon', buttons: sortOutButtons };
  }
  if (order.promisedOn > day) {
    return {
      text: name,
      note: [`New date ${sayDay(order.promisedOn, day)}, ${from}.`, ...sortOut].join(' '),
      tone: 'plain',
      buttons: sortOutButtons,
    };
  }
  return {
    text: name,
    note: [`${from}, ${when(order, day, daysOf)}.`, `${sayChase(order, day)}.`, ...sortOut].join(' '),
    tone: order.promisedOn < day ? 'late' : 'soon',
    buttons: [...chaseButtons(order, noticeId), ...sortOutButtons],
  };
}

function parcelItem(
  lines: readonly Order[],
  first: Order,
  day: Day,
  noticeId: number,
  daysOf: CalendarOf,
): Item {
  const awaited = lines.filter((line) => standing(line).outstanding > 0 && !line.cancelled);
  const due = awaited.filter((line) => line.promisedOn <= day);
  const wrong = lines.filter((line) => standing(line).toSortOut > 0);
  const here = lines.length - awaited.length - lines.filter(({ cancelled }) => cancelled).length;
  const buttons: readonly Button[] = [
    ...(due.length > 0 && first.purchaseId !== null ? parcelButtons(first.purchaseId, noticeId) : []),
    ...wrong.slice(0, 1).map((line) => sortOutButton(line, noticeId)),
  ];
  const [soonest] = due.toSorted((a, b) => (a.promisedOn < b.promisedOn ? -1 : 1));
  const note = [
    soonest === undefined ? '' : `${when(soonest, day, daysOf)}. ${sayChase(soonest, day)}.`,
    here > 0 && `${here} of ${lines.length} arrived${lastOf(lines)}.`,
    ...(due.length === 0 && awaited[0] !== undefined
      ? [`New date ${sayDay(awaited[0].promisedOn, day)}.`]
      : []),
    ...sortOutNote(wrong),
  ];
  return {
    text: `Parcel from ${first.supplier}: ${sayLines(awaited.length > 0 ? awaited : lines)}`,
    note: note.filter(Boolean).join(' ') || 'Cancelled.',
    tone: due.some(({ promisedOn }) => promisedOn < day)
      ? 'late'
      : lines.some((line) => needsAHand(line, day))
        ? 'soon'
        : here > 0
          ? 'done'
          : 'plain',
    buttons,
  };
}

/** As many lines as read at a glance; the others are counted. */
const MOST_NAMED = 4;

function sayLines(lines: readonly Order[]): string {
  const named = lines
    .slice(0, MOST_NAMED)
    .map((line) => `#${line.id} ${standing(line).outstanding > 0 ? sayOutstanding(line) : sayWhat(line)}`);
  const more = lines.length - named.length;
  return `${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

function when(order: Order, day: Day, daysOf: CalendarOf): string {
  if (order.promisedOn >= day) return order.kind === 'work' ? 'due back today' : 'due today';
  const late = sayLateness(order.promisedOn, day, daysOf(order.supplierId));
  return `${late}, ${order.kind === 'work' ? 'promised back' : 'promised'} ${sayDay(order.promisedOn, day)}`;
}

const came = ({ kind }: Order): string => (kind === 'work' ? 'Back' : 'Arrived');

function sortOutNote(orders: readonly Order[]): readonly string[] {
  const count = orders.reduce((sum, order) => sum + standing(order).toSortOut, 0);
  return count > 0 ? [`${count} came wrong or damaged and must be sorted out.`] : [];
}

function lastBy({ arrivals }: Order): string {
  const last = arrivals.at(-1);
  return last ? `Logged by ${last.byName}.` : '';
}

function lastOf(lines: readonly Order[]): string {
  const last = lines.flatMap(({ arrivals }) => arrivals).at(-1);
  return last === undefined ? '' : `, logged by ${last.byName}`;
}
