import type { Answer, Item } from '../core/reply.ts';
import { sayDay } from '../core/time.ts';
import { needsAHand, type Order, standing } from '../records/orders/order.ts';
import { NOTICE_ARG } from '../records/orders/order-buttons.ts';
import { sayOutstanding, sayWhere } from '../records/orders/say-order.ts';
import type { CalendarOf } from '../records/suppliers/supplier-days.ts';
import { itemOf, parcels } from './morning-items.ts';
import type { MorningNotice } from './notice.ts';
import { NO_REMARKS, type RemarksSaid } from './remarks.ts';
import { supplierDrafts } from './supplier-draft.ts';

/**
 * More than these with their own buttons do not fit one message (40 components); the rest go into a menu. The first
 * ones keep their places whatever becomes of them, so that no button moves under a thumb.
 */
const MOST_WITH_BUTTONS = 4;
/** Beside remarks there is room for one order less; of the remarks, for these. Which ones is the notice's to say, so it holds. */
const MOST_BESIDE_REMARKS = 3;
const MOST_REMARKS = 3;

export interface MorningView {
  readonly buildName: string;
  readonly notice: MorningNotice;
  readonly noticeId: number;
  /** The orders the notice named, as they stand now, in its order. */
  readonly orders: readonly Order[];
  /** Each supplier's working days. */
  readonly daysOf: CalendarOf;
  /** What else it speaks of. */
  readonly remarks?: RemarksSaid;
}

/**
 * The morning message in words, from the record as it is now: what is late, by how long, whose chase it is, each with
 * its buttons, lines of one parcel together; what has been dealt with since stays listed as such.
 */
export function morningAnswer(view: MorningView): Answer {
  const { buildName, notice, noticeId, orders, daysOf, remarks = NO_REMARKS } = view;
  const { day } = notice;
  const open = orders.filter((order) => needsAHand(order, day));
  const late = open.filter((order) => standing(order).outstanding > 0 && order.promisedOn < day);
  const all = parcels(orders);
  const most = remarks.said.length === 0 ? MOST_WITH_BUTTONS : MOST_BESIDE_REMARKS;
  const shown = all.slice(0, most);
  const rest = all
    .slice(most)
    .flat()
    .filter((order) => open.includes(order));
  return {
    kind: 'answer',
    subject: `Morning, ${sayDay(day, day)}`,
    result: headline(open, late, day, remarks),
    tone: late.length > 0 ? 'late' : open.length + remarks.headlines.length > 0 ? 'soon' : 'done',
    certainty: buildName,
    items: [
      ...shown.map((lines) => itemOf(lines, day, noticeId, daysOf)),
      ...remarks.said.slice(0, MOST_REMARKS).map(({ item }) => item),
      ...othersOf(remarks),
    ],
    ...(rest.length === 0 ? {} : { menu: menuOf(rest, noticeId) }),
    drafts: supplierDrafts(late.filter(({ chasedOn }) => chasedOn !== day).slice(0, MOST_WITH_BUTTONS), day),
    notify: [...new Set(late.map(({ chaserId }) => chaserId))],
    audience: 'crew',
    data: {
      day,
      late: late.map(({ id }) => id),
      orders: orders.map(({ id }) => id),
      ...(notice.remarks === undefined ? {} : { remarks: notice.remarks.map((remark) => ({ ...remark })) }),
    },
  };
}

/** Whether anything is left for which the message is worth sending. */
export function stillNeeded(
  orders: readonly Order[],
  { day }: MorningNotice,
  { said }: RemarksSaid = NO_REMARKS,
): boolean {
  return said.some(({ open }) => open) || orders.some((order) => needsAHand(order, day));
}

/** Remarks beyond those with room for their buttons: named, so that none is left out in silence. */
function othersOf({ said }: RemarksSaid): readonly Item[] {
  const others = said.slice(MOST_REMARKS);
  if (others.length === 0) return [];
  return [{ text: `And ${others.length} more`, note: others.map(({ item }) => item.text).join('; ') }];
}

function headline(
  open: readonly Order[],
  late: readonly Order[],
  day: string,
  { headlines }: RemarksSaid,
): string {
  const dueToday = open.filter((order) => standing(order).outstanding > 0 && order.promisedOn === day);
  const toSortOut = open.filter((order) => standing(order).toSortOut > 0);
  const parts = [
    late.length > 0 && `${late.length} late`,
    dueToday.length > 0 && `${dueToday.length} due today`,
    toSortOut.length > 0 && `${toSortOut.length} to sort out`,
    ...headlines,
  ].filter(Boolean);
  return parts.length === 0 ? 'All of this is dealt with' : parts.join(', ');
}

function menuOf(rest: readonly Order[], noticeId: number): NonNullable<Answer['menu']> {
  return {
    prompt: `${rest.length} more: choose one`,
    does: { command: 'order', action: 'show', args: { [NOTICE_ARG]: noticeId } },
    arg: 'order',
    choices: rest.slice(0, 25).map((order) => ({
      label: `#${order.id} ${sayOutstanding(order)}`,
      note: sayWhere(order),
      value: String(order.id),
    })),
  };
}
