import type { Answer } from '../core/reply.ts';
import type { TeamRecord } from '../records/team-record.ts';
import { alertAnswer, alertNeeded } from './alert-answer.ts';
import { stillTimely } from './morning.ts';
import type { Notice } from './notice.ts';
import { morningNeeded, morningNow } from './redraw-morning.ts';
import { runInAnswer, runInNeeded } from './run-in-answer.ts';

/** Whether anything of a notice is left that is worth a message. */
export function isNeeded(record: TeamRecord, notice: Notice, nowMs: number): boolean {
  switch (notice.kind) {
    case 'morning':
      return stillTimely(notice, record.settings.read(), nowMs) && morningNeeded(record, notice);
    case 'alert':
      return alertNeeded(record, notice);
    case 'run-in':
      return runInNeeded(record, notice, nowMs);
  }
}

/** A notice in words, from the record as it stands when it is shown. */
export function wordNotice(record: TeamRecord, notice: Notice, noticeId: number, nowMs: number): Answer {
  switch (notice.kind) {
    case 'morning':
      return morningNow(record, notice, noticeId);
    case 'alert':
      return alertAnswer(record, notice, noticeId, nowMs);
    case 'run-in':
      return runInAnswer(record, notice, noticeId, nowMs);
  }
}
