import type { Answer } from '../core/reply.ts';
import { dayAt } from '../core/time.ts';
import { NOTICE_ARG } from '../records/orders/order-buttons.ts';
import { sayOwn } from '../records/readings/log-readings.ts';
import { lookAt, spreadAround } from '../records/readings/look-at.ts';
import { readingAnswer } from '../records/readings/reading-answer.ts';
import { capital, sayConditions } from '../records/readings/say.ts';
import { sayTrend } from '../records/readings/series.ts';
import type { TeamRecord } from '../records/team-record.ts';
import type { AlertNotice } from './notice.ts';

/** Whether the reading is still there and still wrong: a correction takes its alert back before it is sent. */
export function alertNeeded(record: TeamRecord, { readingId, about }: AlertNotice): boolean {
  const reading = record.readings.find(readingId);
  if (reading === undefined) return false;
  const { verdict, trend } = lookAt(record, reading);
  if (about === 'trend') return (trend?.perWeek ?? 0) < 0;
  return verdict.grade === 'bad' || spreadAround(record, reading)?.spread.verdict.grade === 'bad';
}

/** An alert in words, from the record as it is now: what is wrong, by which limit, and what to do first. */
export function alertAnswer(
  record: TeamRecord,
  notice: AlertNotice,
  noticeId: number,
  nowMs: number,
): Answer {
  const { readingId, about, buildId } = notice;
  const reading = record.readings.find(readingId);
  const buildName = record.builds.find(buildId)?.name ?? '';
  if (reading === undefined) {
    return {
      kind: 'answer',
      subject: 'Alert',
      result: 'The reading of this alert was taken back',
      tone: 'plain',
      certainty: buildName,
      audience: 'crew',
      data: { reading: readingId },
    };
  }
  const { zone } = record.settings.read();
  const look = lookAt(record, reading);
  const line = spreadAround(record, reading);
  const card = readingAnswer({
    looks: line === undefined ? [look] : line.set.map((each) => lookAt(record, each)),
    spread: line?.spread,
    today: dayAt(nowMs, zone),
    zone,
  });
  const chart = {
    label: 'Chart',
    does: { command: 'reading', action: 'chart', args: { kind: reading.kind, [NOTICE_ARG]: noticeId } },
  };
  const buttons = [chart, ...(card.buttons ?? []).filter(({ label }) => label !== 'Chart')];
  const over = !alertNeeded(record, notice);
  if (over) {
    return {
      ...card,
      subject: 'Alert',
      tone: 'done',
      certainty: `${buildName}. Corrected since: no longer wrong.`,
      buttons,
    };
  }
  const at = sayConditions(reading.conditions, reading.typed);
  const falls = look.trend === undefined ? '' : sayTrend(look.trend, look.kind, reading.shownIn);
  return {
    ...card,
    subject: 'Alert',
    tone: 'late',
    certainty: buildName,
    ...(about === 'trend'
      ? { result: `${capital(reading.kind)} ${falls}: now ${sayOwn(reading)}${at === '' ? '' : ` at ${at}`}` }
      : {}),
    buttons,
  };
}
