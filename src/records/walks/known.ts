import type { Known, PartChanged } from '../../calc/guide/raise.ts';
import { type Day, dayAt } from '../../core/time.ts';
import { isInPlace } from '../measures/measure.ts';
import type { TeamRecord } from '../team-record.ts';

/** How far back the record is asked for parts; the guide itself has its own, shorter idea of lately. */
const PART_DAYS = 60;
const READING_DAYS = 7;
const DAY_MS = 24 * 3_600_000;

/** What a build's record can tell a search: parts fitted or come lately, what is open for now, readings. */
export function knownOf(record: TeamRecord, buildId: number, nowMs: number): Known {
  const { zone } = record.settings.read();
  const today = dayAt(nowMs, zone);
  return {
    partsChanged: partsChanged(record, buildId, today),
    measuresOpen: record.measures
      .ofBuild(buildId)
      .filter(isInPlace)
      .map(({ id, what, putOn }) => ({ id, what, daysAgo: daysBetween(putOn, today) })),
    readings: record.readings
      .since(buildId, nowMs - READING_DAYS * DAY_MS)
      .map(({ kind, value, unit, conditions, typed, takenAtMs }) => ({
        kind,
        value,
        unit,
        states: conditions.states,
        typed,
        daysAgo: daysBetween(dayAt(takenAtMs, zone), today),
      }))
      .toReversed(),
  };
}

function partsChanged(record: TeamRecord, buildId: number, today: Day): readonly PartChanged[] {
  const names = new Map(record.parts.ofBuild(buildId).map(({ id, name }) => [id, name]));
  const fitted = record.parts
    .movesOfBuild(buildId)
    .filter(({ kind }) => kind === 'fitted')
    .flatMap(({ partId, saidOn }) => changed(names.get(partId), 'fitted', saidOn, today));
  const came = record.orders
    .ofBuild(buildId)
    .filter(({ kind }) => kind === 'goods')
    .flatMap(({ what, arrivals }) => arrivals.flatMap(({ cameOn }) => changed(what, 'came', cameOn, today)));
  return [...fitted, ...came].toSorted((a, b) => a.daysAgo - b.daysAgo);
}

function changed(
  name: string | undefined,
  how: PartChanged['how'],
  on: Day,
  today: Day,
): readonly PartChanged[] {
  const daysAgo = daysBetween(on, today);
  return name === undefined || daysAgo > PART_DAYS ? [] : [{ name, how, daysAgo }];
}

/** Whole days from one to the other; never less than nought, since clocks go back. */
const daysBetween = (from: Day, to: Day): number =>
  Math.max(0, Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'days' }).days);
