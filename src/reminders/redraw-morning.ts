import type { Json } from '../core/json.ts';
import type { Answer } from '../core/reply.ts';
import { calendarsOf } from '../records/suppliers/supplier-days.ts';
import type { TeamRecord } from '../records/team-record.ts';
import { morningAnswer, stillNeeded } from './morning-answer.ts';
import { MorningNotice } from './notice.ts';
import type { Remark } from './remark.ts';
import { type RemarksSaid, sayRemarks } from './remarks.ts';

/** The morning message of a notice as the record now has it. */
export function morningNow(record: TeamRecord, notice: MorningNotice, noticeId: number): Answer {
  const orders = notice.orderIds.flatMap((id) => record.orders.find(id) ?? []);
  const buildName = record.builds.find(notice.buildId)?.name ?? '';
  const remarks = remarksOf(record, notice, noticeId);
  return morningAnswer({ buildName, notice, noticeId, orders, daysOf: calendarsOf(record), remarks });
}

/** Whether anything a message was to speak of still needs a hand. */
export function morningNeeded(record: TeamRecord, notice: MorningNotice, noticeId = 0): boolean {
  const orders = notice.orderIds.flatMap((id) => record.orders.find(id) ?? []);
  return stillNeeded(orders, notice, remarksOf(record, notice, noticeId));
}

const remarksOf = (record: TeamRecord, { remarks = [], day }: MorningNotice, noticeId: number): RemarksSaid =>
  sayRemarks(record, remarks, { day, noticeId });

/**
 * The same for a press on it: undefined when what was kept is no notice, or when nothing that the press touched is in it,
 * so that a forged button cannot put one message in another's place.
 */
export function redrawMorning(
  record: TeamRecord,
  kept: Json | undefined,
  noticeId: number,
  touched: readonly number[],
): Answer | undefined {
  const notice = MorningNotice.safeParse(kept).data;
  if (notice === undefined || !touched.some((id) => notice.orderIds.includes(id))) return undefined;
  return morningNow(record, notice, noticeId);
}

/** The same for a press on something other than an order. */
export function redrawForRemark(
  record: TeamRecord,
  kept: Json | undefined,
  noticeId: number,
  touched: Remark,
): Answer | undefined {
  const notice = MorningNotice.safeParse(kept).data;
  const isIn = notice?.remarks?.some(({ kind, id }) => kind === touched.kind && id === touched.id);
  return notice === undefined || isIn !== true ? undefined : morningNow(record, notice, noticeId);
}
