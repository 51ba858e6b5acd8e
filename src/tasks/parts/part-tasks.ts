import { buildHere, crewOf } from '../../bot/crew.ts';
import type { Changed, Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer, Fact, Form } from '../../core/reply.ts';
import { sayDay } from '../../core/time.ts';
import { receive } from '../../records/orders/moves.ts';
import type { Condition } from '../../records/orders/order.ts';
import type { Whereabouts } from '../../records/parts/part.ts';
import { partAnswer } from '../../records/parts/part-answer.ts';
import { orderPartForm, outForm } from '../../records/parts/part-buttons.ts';
import { partList } from '../../records/parts/part-list.ts';
import { type Came, countOf, type Said } from '../../records/parts/part-moves.ts';
import type { KnownPart } from '../../records/parts/part-store.ts';
import { sendOut, workOut } from '../../records/parts/send-out.ts';
import { ordersOf, partStanding, standings } from '../../records/parts/standings.ts';
import { latenessBook } from '../../records/suppliers/expected.ts';
import { calendarsOf } from '../../records/suppliers/supplier-days.ts';
import type { TeamRecord } from '../../records/team-record.ts';
import { readDue, supplierNamed } from '../orders/due-day.ts';
import type { Saying } from '../orders/order-here.ts';
import { dataOf, moveOrder, reportOrder } from '../orders/order-moves.ts';
import { chaserOf, moneyHere } from '../orders/place-here.ts';
import { partHere, partInHand } from './part-here.ts';

/** One part as a card, from the record as it now is. */
export function partCard(hand: Hand, part: KnownPart, saying: Saying = {}): Answer {
  const { record } = hand;
  const { today } = crewOf(hand);
  const calendarOf = calendarsOf(record);
  const book = latenessBook(record.orders.timings(), today, calendarOf);
  const orders = ordersOf(record, part);
  return partAnswer({
    standing: partStanding(record, part, today, calendarOf),
    orders,
    moves: record.parts.movesOf(part.id),
    book,
    today,
    extraFacts: ifOrderedToday(hand, part),
    ...saying,
  });
}

interface InHand {
  readonly part: string;
  readonly quantity?: number | undefined;
  readonly note?: string | undefined;
}

type Work = (
  record: TeamRecord,
  part: KnownPart,
  by: Said,
) => { readonly value: KnownPart; readonly said: string };

/** Does one thing to a part, then shows it. */
export function movePart(hand: Hand, typed: string, work: Work, note?: string): Answer {
  const { id } = partHere(hand, typed);
  return move(hand, () => partHere(hand, `#${id}`), work, note);
}

/** The same to a part in somebody's hand: a new one is written down with it. */
export function moveInHand(hand: Hand, { part, quantity, note }: InHand, work: Work): Answer {
  return move(hand, partInHand(hand, part, quantity), work, note);
}

function move(
  hand: Hand,
  find: (record: TeamRecord) => KnownPart,
  work: Work,
  note: string | undefined,
): Answer {
  const { today } = crewOf(hand);
  const changed = hand.change((record) => work(record, find(record), { today, byName: hand.who.name, note }));
  return reportPart(hand, changed);
}

/** What was done, as the part's card, with a button to take it back. */
export function reportPart(hand: Hand, changed: Changed<KnownPart>, certainty?: string): Answer {
  const gone = hand.record.parts.find(changed.value.id) === undefined;
  if (gone) {
    return {
      kind: 'answer',
      subject: 'Part',
      result: `${changed.value.name} is off the list`,
      buttons: [undoButton(changed)],
      audience: 'crew',
      data: { part: changed.value.id, ...dataOf(changed) },
    };
  }
  const card = partCard(hand, changed.value, {
    said: changed.said,
    ...(certainty ? { certainty } : {}),
    extraButtons: [undoButton(changed)],
  });
  return { ...card, data: { ...card.data, ...dataOf(changed) } };
}

export interface ListAsked {
  readonly where?: Whereabouts | 'missing' | undefined;
  readonly system?: string | undefined;
  readonly page: number;
}

export function listParts(hand: Hand, { where, system, page }: ListAsked): Answer {
  const build = buildHere(hand);
  const { today } = crewOf(hand);
  const { record } = hand;
  const orders = Map.groupBy(build ? record.orders.allOfBuild(build.id) : [], ({ partId }) => partId);
  return partList({
    standings: build ? standings(record, build.id, today) : [],
    ordersOf: ({ id }) => orders.get(id) ?? [],
    today,
    where,
    system,
    page,
  });
}

export interface OutGiven {
  readonly part: string;
  readonly to: string;
  readonly work: string;
  readonly due?: string | undefined;
  readonly quantity?: number | undefined;
  readonly price?: string | undefined;
  readonly came?: Came | undefined;
  readonly chaser?: string | undefined;
  readonly link?: string | undefined;
}

/** Writes down that a part was taken somewhere to be worked on. */
export function takeOut(hand: Hand, given: OutGiven): Answer {
  const find = partInHand(hand, given.part, given.quantity);
  const { today } = crewOf(hand);
  const to = supplierNamed(hand, given.to, 'to');
  const read = readDue(hand, given.due, to);
  const price = given.price === undefined ? null : moneyHere(hand, given.price);
  const changed = hand.change((record) => {
    const part = find(record);
    return sendOut(
      record,
      part,
      {
        quantity: given.quantity ?? Math.max(1, countOf(record, part).inHand),
        to,
        work: given.work,
        price,
        due: read.day,
        came: given.came,
        chaser: chaserOf(hand, given.chaser),
        link: given.link ?? null,
      },
      { today, byName: hand.who.name },
    );
  });
  const { order, supplierIsNew } = changed.value;
  const certainty = [read.readAs, supplierIsNew && `${order.supplier} is new here.`]
    .filter(Boolean)
    .join(' ');
  return reportOrder(hand, { ...changed, value: order }, certainty);
}

export interface BackGiven {
  readonly part: string;
  readonly quantity?: number | undefined;
  readonly condition: Condition;
  readonly at?: string | undefined;
  readonly note?: string | undefined;
}

/** Logs that a part is back from work. */
export function bringBack(hand: Hand, { part, quantity, condition, at, note }: BackGiven): Answer {
  const order = workOut(hand.record, partHere(hand, part), at);
  const byName = hand.who.name;
  return moveOrder(
    hand,
    String(order.id),
    (record, found, today) => receive(record, found, { quantity, condition, note, cameOn: today, byName }),
    { noticeId: undefined, redraw: () => undefined },
  );
}

/** The form that orders what is missing of a part, with the supplier it came from last. */
export function orderForm(hand: Hand, typed: string): Form {
  const part = partHere(hand, typed);
  const last = ordersOf(hand.record, part).findLast(({ kind }) => kind === 'goods');
  return orderPartForm(part, countOf(hand.record, part).missing, last?.supplier);
}

/** The form that takes a part out for work. */
export function outFormOf(hand: Hand, typed: string): Form {
  const part = partHere(hand, typed);
  return outForm(part, countOf(hand.record, part).inHand);
}

/** When what is missing would come if it were ordered today where it was ordered last. */
function ifOrderedToday(hand: Hand, part: KnownPart): readonly Fact[] {
  const { record } = hand;
  const { today } = crewOf(hand);
  const last = ordersOf(record, part).findLast(({ kind }) => kind === 'goods');
  const supplier = last && record.suppliers.find(last.supplierId);
  if (!supplier || supplier.leadDays === null || countOf(record, part).missing === 0) return [];
  const calendarOf = calendarsOf(record);
  const promised = calendarOf(supplier.id).add(today, supplier.leadDays);
  const book = latenessBook(record.orders.timings(), today, calendarOf);
  const { expectedOn, latestOn } = book.expect(supplier.id, promised);
  const range = latestOn === expectedOn ? '' : `, by ${sayDay(latestOn, today)} nine times in ten`;
  return [['If ordered today', `from ${supplier.name}, here ${sayDay(expectedOn, today)}${range}`]];
}
