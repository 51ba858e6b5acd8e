import type { Json } from '../core/json.ts';
import type { Answer } from '../core/reply.ts';
import { calendarsOf } from '../records/suppliers/supplier-days.ts';
import type { TeamRecord } from '../records/team-record.ts';
import { morningAnswer } from './morning-answer.ts';
import { Notice } from './notice.ts';

/** The morning message of a notice as the record now has it. */
export function morningNow(record: TeamRecord, notice: Notice, noticeId: number): Answer {
  const orders = notice.orderIds.flatMap((id) => record.orders.find(id) ?? []);
  const buildName = record.builds.find(notice.buildId)?.name ?? '';
  return morningAnswer({ buildName, notice, noticeId, orders, daysOf: calendarsOf(record) });
}

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
  const notice = Notice.safeParse(kept).data;
  if (notice === undefined || !touched.some((id) => notice.orderIds.includes(id))) return undefined;
  return morningNow(record, notice, noticeId);
}
