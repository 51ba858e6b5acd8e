import type { Answer, Item } from '../../core/reply.ts';
import { dayAt, sayDay } from '../../core/time.ts';
import { sayOwn } from './log-readings.ts';
import type { Look } from './look-at.ts';
import type { Reader } from './reading-answer.ts';
import { lookData } from './reading-data.ts';
import { capital, sayConditions } from './say.ts';
import { sayTrend } from './series.ts';
import { sayVerdict } from './verdict.ts';

/** More do not fit one message with room to read. */
export const READINGS_A_PAGE = 8;

export interface ListView extends Reader {
  /** Those of this page. */
  readonly looks: readonly Look[];
  readonly page: number;
  readonly all: number;
  /** Only of this kind. */
  readonly kind?: string | undefined;
}

/** Readings one under the other, a page at a time. */
export function readingList(view: ListView): Answer {
  const { looks, page, all, kind } = view;
  const pages = Math.max(1, Math.ceil(all / READINGS_A_PAGE));
  const what = kind === undefined ? '' : ` of ${kind}`;
  const turn = (to: number, label: string) => ({
    label,
    does: { command: 'reading', action: 'list', args: { page: to, ...(kind === undefined ? {} : { kind }) } },
  });
  return {
    kind: 'answer',
    subject: 'Readings',
    result:
      all === 0
        ? `No reading${what} is logged yet`
        : `${all} ${all === 1 ? 'reading' : 'readings'}${kind === undefined ? ', the newest first' : what}`,
    certainty:
      all === 0
        ? '/reading log writes one down, as in reading:"oil 4.2 bar at 2500 rpm 92C".'
        : pages > 1
          ? `Page ${page} of ${pages}.`
          : '',
    items: looks.map((look) => itemOf(look, view)),
    buttons: [
      ...(page > 1 ? [turn(page - 1, 'Newer')] : []),
      ...(page < pages ? [turn(page + 1, 'Older')] : []),
      ...(kind === undefined || all === 0
        ? []
        : [{ label: 'Chart', does: { command: 'reading', action: 'chart', args: { kind } } }]),
    ],
    audience: 'crew',
    data: { readings: looks.map(lookData), page, pages, all },
  };
}

function itemOf({ reading, kind, verdict, trend }: Look, { today, zone }: Reader): Item {
  const at = sayConditions(reading.conditions, reading.typed);
  const notes = [
    `${sayDay(dayAt(reading.takenAtMs, zone), today)}, ${reading.byName}.`,
    ...(verdict.limit === undefined || kind.grows
      ? []
      : [`${capital(sayVerdict(verdict, reading.unit, reading.shownIn))}.`]),
    ...(trend === undefined ? [] : [`It ${sayTrend(trend, kind, reading.shownIn)}.`]),
    ...(reading.note === null ? [] : [`${reading.note}.`]),
  ];
  return {
    text: `#${reading.id} ${capital(reading.kind)} ${sayOwn(reading)}${at === '' ? '' : `, ${at}`}`,
    note: notes.join(' '),
    tone: verdict.grade === 'bad' ? 'late' : verdict.grade === 'doubtful' ? 'soon' : 'plain',
  };
}
