import { compressionSpread } from '../../calc/readings/compression.ts';
import type { TeamRecord } from '../team-record.ts';
import { type Kind, kindNamed, kindsWith } from './kinds.ts';
import type { Reading } from './reading.ts';
import { likeOnes, type SeriesTrend, seriesTrend } from './series.ts';
import { type JudgedBy, judge, type Verdict } from './verdict.ts';

/** A reading with everything that is known of it. */
export interface Look {
  readonly reading: Reading;
  readonly kind: Kind;
  readonly verdict: Verdict;
  /** Taken under like conditions, the oldest first, this one last. */
  readonly like: readonly Reading[];
  readonly trend: SeriesTrend | undefined;
}

const BOOSTED_FROM_KPA = 20;

/** By what a build's readings are judged. */
export function judgedBy(record: TeamRecord, buildId: number): JudgedBy {
  const boosted =
    record.runIn.ofBuild(buildId)?.boostKPa != null ||
    record.readings.series(buildId, 'boost').some(({ value }) => value > BOOSTED_FROM_KPA);
  return { limits: record.readingRules.limits(buildId), boosted };
}

/** Looks at a reading beside its limits and beside those taken under like conditions before it. */
export function lookAt(record: TeamRecord, reading: Reading, by = judgedBy(record, reading.buildId)): Look {
  const { buildId, kind: name, unit } = reading;
  const kind = kindNamed(name, record.readingRules.ownKinds(buildId), unit);
  const like = likeOnes(record.readings.ofKind(buildId, name), reading);
  return {
    reading,
    kind,
    verdict: judge(reading, kind, by),
    like,
    trend: kind.grows ? undefined : seriesTrend(like),
  };
}

/** How even a set of compressions is, judged like any reading. */
export interface Spread {
  readonly ratio: number;
  readonly weakest: Reading;
  readonly verdict: Verdict;
}

const ANY_LIMIT = 0.1;

/** The spread of a line of compressions; nothing for anything else. */
export function spreadOf(set: readonly Reading[], by: JudgedBy, kinds: readonly Kind[]): Spread | undefined {
  const spread = kinds.find(({ name }) => name === 'compression spread');
  const [first] = set;
  if (set.length < 2 || first?.kind !== 'compression' || spread === undefined) return undefined;
  const best = Math.max(...set.map(({ value }) => value));
  if (best < 50 || best > 4000 || set.length > 16) return undefined;
  const { spreadRatio, weakest } = compressionSpread({
    readingsKpa: set.map(({ value }) => value),
    limitRatio: ANY_LIMIT,
  }).value;
  const lowest = set[weakest - 1] ?? first;
  return {
    ratio: spreadRatio,
    weakest: lowest,
    verdict: judge({ value: spreadRatio, conditions: { states: [] } }, spread, by),
  };
}

/** The spread of the line of compressions that a reading was typed in; nothing for one that stands alone. */
export function spreadAround(
  record: TeamRecord,
  reading: Reading,
  by = judgedBy(record, reading.buildId),
): { readonly set: readonly Reading[]; readonly spread: Spread } | undefined {
  if (reading.setId === null || reading.kind !== 'compression') return undefined;
  const set = record.readings
    .ofKind(reading.buildId, reading.kind)
    .filter(({ setId }) => setId === reading.setId);
  const spread = spreadOf(set, by, kindsWith([]));
  return spread === undefined ? undefined : { set, spread };
}
