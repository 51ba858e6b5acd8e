import type { TeamRecord } from '../team-record.ts';
import { alike } from './alike.ts';
import type { Kind } from './kinds.ts';
import { judgedBy, lookAt } from './look-at.ts';
import type { Sample } from './reading.ts';
import { capital, figureIn, sayConditions, sayValue, signOf } from './say.ts';
import { type SeriesTrend, sayTrend } from './series.ts';
import { type AppliedLimit, type Grade, judge, sayLimits, sayStands } from './verdict.ts';

const DAY_MS = 86_400_000;

/** A point of the chart, in the unit shown. */
export interface SeriesPoint {
  readonly atMs: number;
  readonly value: number;
  readonly standing: 'ok' | 'doubtful' | 'bad';
  readonly like: boolean;
}

/** Readings of one kind as a picture wants them, with what they say in a sentence. */
export interface ChartSeries {
  readonly kind: Kind;
  /** "Oil pressure falls 0.1 bar a week at 2500 rpm, 92 °C". */
  readonly sentence: string;
  readonly newest: Grade;
  readonly panel: {
    readonly axis: string;
    readonly conditions: string;
    readonly points: readonly SeriesPoint[];
    readonly limits: readonly {
      readonly value: number;
      readonly words: string;
      readonly side: 'least' | 'most';
    }[];
    readonly trend?: readonly [
      { readonly atMs: number; readonly value: number },
      { readonly atMs: number; readonly value: number },
    ];
    readonly newest: string;
    readonly least: string;
    readonly most: string;
  };
}

/** Everything of a kind, judged; those like the newest are told from the others. Nothing where none is logged. */
export function chartSeries(
  record: TeamRecord,
  buildId: number,
  kind: Kind,
  place?: string,
): ChartSeries | undefined {
  const last = record.readings.latest(buildId, kind.name, place);
  if (last === undefined) return undefined;
  const by = judgedBy(record, buildId);
  const { shownIn, conditions } = last;
  const look = lookAt(record, last, by);
  const samples = record.readings
    .series(buildId, kind.name)
    .filter((sample) => place === undefined || sample.conditions.place === place);
  const shown = (value: number): number => figureIn(value, kind.unit, shownIn);
  const said = (value: number): string => sayValue(value, kind.unit, shownIn);
  const [least, most] = samples.reduce(
    ([low, high], { value }) => [Math.min(low, value), Math.max(high, value)],
    [last.value, last.value],
  );
  const isLike = (sample: Sample): boolean => kind.grows === true || alike(sample.conditions, conditions);
  const at = kind.grows ? '' : sayConditions(conditions, last.typed);
  const named = `${capital(kind.name)}${conditions.place === undefined || kind.grows ? '' : `, ${conditions.place}`}`;
  const { place: _named, ...others } = conditions;
  const under = sayConditions(others, last.typed);
  const trend = look.trend === undefined ? undefined : lineOf(look.trend, last, shown);
  return {
    kind,
    sentence:
      look.trend === undefined
        ? `${named} ${said(last.value)}${kind.grows ? '' : ` ${sayStands(look.verdict, kind.unit, shownIn)}`}`
        : `${named} ${sayTrend(look.trend, kind, shownIn).replace(/, by \d+ readings.*$/u, '')}${under === '' ? '' : ` at ${under}`}`,
    newest: look.verdict.grade,
    panel: {
      axis: `${capital(kind.name)}${signOf(shownIn) === '' ? '' : `, ${signOf(shownIn)}`}`,
      conditions: at === '' ? '' : `Joined: ${at}`,
      points: samples.map((sample) => ({
        atMs: sample.takenAtMs,
        value: shown(sample.value),
        standing: standingOf(judge(sample, kind, by).grade),
        like: isLike(sample),
      })),
      limits:
        look.verdict.limit === undefined || kind.grows ? [] : chartLimits(look.verdict.limit, kind, shownIn),
      ...(trend === undefined ? {} : { trend }),
      newest: said(last.value),
      least: said(least),
      most: said(most),
    },
  };
}

const standingOf = (grade: Grade): SeriesPoint['standing'] =>
  grade === 'bad' || grade === 'doubtful' ? grade : 'ok';

function chartLimits(limit: AppliedLimit, kind: Kind, shownIn: string): ChartSeries['panel']['limits'] {
  const origin = limit.origin === 'common practice' ? 'common practice' : limit.origin;
  const words = (end: Pick<AppliedLimit, 'min' | 'max'>): string =>
    `${sayLimits(end, kind.unit, shownIn)} (${origin})`;
  const shown = (value: number): number => figureIn(value, kind.unit, shownIn);
  return [
    ...(limit.min === undefined
      ? []
      : [{ value: shown(limit.min), words: words({ min: limit.min }), side: 'least' as const }]),
    ...(limit.max === undefined
      ? []
      : [{ value: shown(limit.max), words: words({ max: limit.max }), side: 'most' as const }]),
  ];
}

function lineOf(
  { trend, days }: SeriesTrend,
  last: Sample,
  shown: (value: number) => number,
): ChartSeries['panel']['trend'] {
  const firstMs = last.takenAtMs - days * DAY_MS;
  return [
    { atMs: firstMs, value: shown(trend.intercept) },
    { atMs: last.takenAtMs, value: shown(trend.intercept + trend.slope * days) },
  ];
}
