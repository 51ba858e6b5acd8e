import { buildHere, crewOf } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import type { Answer, Reply } from '../../core/reply.ts';
import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { asSeveral, holdsSeveral } from '../../phrases/order-lines.ts';
import { cancel, chase, promise, receive } from '../../records/orders/moves.ts';
import {
  byUrgency,
  type Condition,
  type Order,
  type Settlement,
  standing,
} from '../../records/orders/order.ts';
import { orderList } from '../../records/orders/order-list.ts';
import { sayMoney } from '../../records/orders/say-order.ts';
import { settle } from '../../records/orders/settle.ts';
import { chaseParcel, promiseParcel } from '../../records/purchases/parcel-moves.ts';
import type { PurchaseLines } from '../../records/purchases/purchase.ts';
import { knownSupplier } from '../../records/suppliers/find-supplier.ts';
import { calendarsOf } from '../../records/suppliers/supplier-days.ts';
import type { TeamRecord } from '../../records/team-record.ts';
import { readDue } from './due-day.ts';
import { orderHere } from './order-here.ts';
import { moveOrder, type Redraw } from './order-moves.ts';
import { moveParcel, type ParcelGiven, parcelArrived } from './parcel-here.ts';
import { moneyHere, placeHere, type Wanted } from './place-here.ts';
import { placeSeveral, severalForm, type WantedSeveral } from './place-several.ts';

/** Something came of one order. */
export interface Came {
  readonly order: string;
  readonly quantity?: number | undefined;
  readonly condition: Condition;
  readonly rest?: string | undefined;
  readonly note?: string | undefined;
}

type SomeOf<Whole> = { readonly [Key in keyof Whole]?: Whole[Key] | undefined };

/** Everything that can be done to orders, from a typed line or a button; `noticeId` is the morning message it sits on. */
export interface OrderTasks {
  place(hand: Hand, wanted: Wanted & { readonly carriage?: string | undefined }): Answer;
  several(hand: Hand, wanted: SomeOf<WantedSeveral>): Reply;
  list(hand: Hand, supplier: string | undefined, page: number): Answer;
  arrived(hand: Hand, came: Came, noticeId?: number): Answer;
  date(hand: Hand, order: string, due: string, noticeId?: number): Answer;
  chased(hand: Hand, order: string, noticeId?: number): Answer;
  settle(hand: Hand, order: string, outcome: Settlement, due: string | undefined, noticeId?: number): Answer;
  cancel(hand: Hand, order: string): Answer;
  parcelArrived(hand: Hand, parcel: PurchaseLines, given: ParcelGiven, noticeId?: number): Answer;
  parcelDate(hand: Hand, parcel: PurchaseLines, due: string, noticeId?: number): Answer;
  parcelChased(hand: Hand, parcel: PurchaseLines, noticeId?: number): Answer;
}

type Work = (record: TeamRecord, found: Order, today: Day) => { value: Order; said: string };

/** @param redraw draws a morning message again that a button was pressed on */
export function orderTasks(redraw: Redraw): OrderTasks {
  const move = (hand: Hand, order: string, work: Work, noticeId?: number, certainty?: string): Answer =>
    moveOrder(hand, order, work, { noticeId, redraw }, certainty);

  return {
    place(hand, { carriage, ...wanted }) {
      const { what, supplier, due, chaser, link } = wanted;
      const several = isSeveral(what);
      if (!several && carriage === undefined) return placeHere(hand, wanted);
      const lines = several ? what : oneLine(hand, wanted);
      return placeSeveral(hand, { lines, supplier, due, carriage, chaser, link }, 'what');
    },
    several(hand, wanted) {
      const { lines, supplier } = wanted;
      if (lines === undefined || supplier === undefined) return severalForm(wanted);
      return placeSeveral(hand, { ...wanted, lines, supplier });
    },
    list,
    arrived: (hand, came, noticeId) =>
      arrived(hand, came, (work, readAs) => move(hand, came.order, work, noticeId, readAs)),
    date(hand, order, due, noticeId) {
      const { day, readAs } = readDue(hand, due, orderHere(hand, order).supplier);
      return move(
        hand,
        order,
        (record, found, today) => promise(record, found, day, today),
        noticeId,
        readAs,
      );
    },
    chased: (hand, order, noticeId) => move(hand, order, chase, noticeId),
    settle(hand, order, outcome, due, noticeId) {
      const read = due === undefined ? undefined : readDue(hand, due, orderHere(hand, order).supplier);
      const work: Work = (record, found, today) => settle(record, found, outcome, read?.day, today);
      return move(hand, order, work, noticeId, read?.readAs);
    },
    cancel: (hand, order) => move(hand, order, cancel),
    parcelArrived: (hand, parcel, given, noticeId) =>
      parcelArrived(hand, parcel, given, { noticeId, redraw }),
    parcelDate(hand, parcel, due, noticeId) {
      const { day, readAs } = readDue(hand, due, parcel.lines[0]?.supplier ?? '');
      const work = (record: TeamRecord, lines: readonly Order[], today: Day) =>
        promiseParcel(record, lines, day, today);
      return moveParcel(hand, parcel, work, { noticeId, redraw }, readAs);
    },
    parcelChased: (hand, parcel, noticeId) => moveParcel(hand, parcel, chaseParcel, { noticeId, redraw }),
  };
}

/** @throws UserError 'which-one' where it could be one thing or several. */
function isSeveral(what: string): boolean {
  const held = holdsSeveral(what);
  if (held !== 'perhaps') return held === 'yes';
  throw new UserError('which-one', `Is "${what}" one thing, or several?`, {
    field: 'what',
    choices: [
      { label: 'Several things', value: asSeveral(what) },
      { label: 'One thing', value: `+${what}` },
    ],
  });
}

/**
 * One order that has carriage of its own, as a line that is read back the same.
 *
 * @throws UserError 'bad-input' when the price is none: in a line it would become part of the name.
 */
export function oneLine(
  hand: Hand,
  { what, quantity, price }: Pick<Wanted, 'what' | 'quantity' | 'price'>,
): string {
  return `"${what}" x${quantity}${price === undefined ? '' : ` @ ${sayMoney(moneyHere(hand, price))}`}`;
}

function arrived(
  hand: Hand,
  { order, quantity, condition, rest, note }: Came,
  move: (work: Work, readAs: string | undefined) => Answer,
): Answer {
  const read = rest === undefined ? undefined : readDue(hand, rest, orderHere(hand, order).supplier, 'rest');
  const byName = hand.who.name;
  return move(
    (record, found, today) =>
      receive(record, found, { quantity, condition, note, rest: read?.day, cameOn: today, byName }),
    read?.readAs,
  );
}

function list(hand: Hand, supplier: string | undefined, page: number): Answer {
  const build = buildHere(hand);
  const only = supplier === undefined ? undefined : knownSupplier(hand.record, supplier);
  const open = (build ? hand.record.orders.ofBuild(build.id) : [])
    .filter(({ supplierId }) => only === undefined || supplierId === only.id)
    .filter((one) => ['open', 'to sort out'].includes(standing(one).state))
    .toSorted(byUrgency);
  const { today } = crewOf(hand);
  const named = only === undefined ? {} : { supplier: only.name };
  return orderList(open, { today, daysOf: calendarsOf(hand.record), page, ...named });
}
