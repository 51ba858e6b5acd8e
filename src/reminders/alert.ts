import type { Build } from '../records/builds/build.ts';
import { kindNamed } from '../records/readings/kinds.ts';
import { judgedBy } from '../records/readings/look-at.ts';
import type { Reading, Sample } from '../records/readings/reading.ts';
import { likeOnes, seriesTrend } from '../records/readings/series.ts';
import { judge } from '../records/readings/verdict.ts';
import type { TeamRecord } from '../records/team-record.ts';
import { openSpell } from './episodes.ts';
import type { AlertNotice, DueNotice } from './notice.ts';
import { openSpread } from './spread-alert.ts';

/** What was measured longer ago is known, or was brought in from elsewhere: no news. */
const NEWS_FOR_MS = 24 * 60 * 60_000;

/**
 * Alerts due for a build: a reading beyond a limit, once for each spell of bad ones, compressions too far apart, and a
 * pressure that falls under like conditions, once for each run of readings that carry the trend. Pure but for reading the record: the same readings give
 * the same keys, whenever and however often it is asked.
 */
export function dueAlerts(
  record: TeamRecord,
  build: Build,
  nowMs: number,
): readonly DueNotice<AlertNotice>[] {
  const fresh = record.readings
    .since(build.id, nowMs - NEWS_FOR_MS)
    .filter(({ takenAtMs }) => takenAtMs <= nowMs);
  const series = Map.groupBy(fresh, ({ kind, conditions }) => `${kind}|${conditions.place ?? ''}`);
  const due: DueNotice<AlertNotice>[] = [];
  for (const readings of series.values()) {
    const last = readings.at(-1);
    if (last !== undefined) due.push(...alertsOf(record, build, last, nowMs));
  }
  return due;
}

function alertsOf(
  record: TeamRecord,
  build: Build,
  last: Reading,
  nowMs: number,
): readonly DueNotice<AlertNotice>[] {
  const kind = kindNamed(last.kind, record.readingRules.ownKinds(build.id), last.unit);
  if (kind.grows) return [];
  const by = judgedBy(record, build.id);
  const samples = record.readings
    .series(build.id, last.kind)
    .filter(({ conditions, takenAtMs }) => conditions.place === last.conditions.place && takenAtMs <= nowMs);
  const spell = openSpell(
    samples.map((sample) => {
      const { grade } = judge(sample, kind, by);
      return { sample, bad: grade === 'unjudged' ? undefined : grade === 'bad' };
    }),
  );
  const notice = (readingId: number, about: AlertNotice['about']): AlertNotice => ({
    kind: 'alert',
    buildId: build.id,
    readingId,
    about,
  });
  const { channelId } = build;
  const uneven = openSpread(record, last, by);
  if (uneven !== undefined) {
    const key = `alert:${build.id}:spread:${uneven.began.id}`;
    return [{ key, channelId, notice: notice(uneven.newest.id, 'limit') }];
  }
  const news = spell !== undefined && spell.newest.takenAtMs > nowMs - NEWS_FOR_MS;
  const limit = news
    ? [{ key: `alert:${build.id}:${spell.began.id}`, channelId, notice: notice(spell.newest.id, 'limit') }]
    : [];
  const since = kind.falling && limit.length === 0 ? fallingSince(likeOnes(samples, last)) : undefined;
  return since === undefined
    ? limit
    : [
        ...limit,
        { key: `alert:${build.id}:falling:${since.id}`, channelId, notice: notice(last.id, 'trend') },
      ];
}

/** The reading from which on those under like conditions have carried a falling trend, up to the last one. */
export function fallingSince(like: readonly Sample[]): Sample | undefined {
  let since: Sample | undefined;
  for (let count = like.length; count > 0; count -= 1) {
    const trend = seriesTrend(like.slice(0, count));
    if (trend === undefined || trend.perWeek >= 0) return since;
    since = like[count - 1];
  }
  return since;
}
