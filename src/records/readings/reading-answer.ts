import type { Answer, Button, Fact, Item, Tone } from '../../core/reply.ts';
import { type Day, dayAt, sayDay } from '../../core/time.ts';
import { sayOwn, sayReading, sayReadings } from './log-readings.ts';
import type { Look, Spread } from './look-at.ts';
import type { Reading } from './reading.ts';
import { lookData } from './reading-data.ts';
import { sayConditions, sayValue } from './say.ts';
import { daysUntil, previousOf, sayTrend } from './series.ts';
import { type Grade, sayLimits, sayOrigin, sayVerdict, unsaidHeat, type Verdict } from './verdict.ts';

const TONES: Readonly<Record<Grade, Tone>> = {
  good: 'done',
  doubtful: 'soon',
  bad: 'late',
  unjudged: 'plain',
};
const RANK: Readonly<Record<Grade, number>> = { bad: 0, doubtful: 1, good: 2, unjudged: 3 };

/** Where and when the crew reads it. */
export interface Reader {
  readonly today: Day;
  readonly zone: string;
}

export interface ReadingView extends Reader {
  readonly looks: readonly Look[];
  readonly spread?: Spread | undefined;
  readonly certainty?: string;
  readonly said?: string;
  readonly changeId?: number;
  readonly extraButtons?: readonly Button[];
}

/** Readings as a card: what was measured, how it stands, what it was before, and what to do first when it is wrong. */
export function readingAnswer(view: ReadingView): Answer {
  const { looks, spread, certainty, said, changeId, extraButtons = [] } = view;
  const worst = looks.toSorted((a, b) => RANK[a.verdict.grade] - RANK[b.verdict.grade])[0];
  if (worst === undefined) throw new Error('no reading to show');
  const { reading, kind } = worst;
  const graver = spread !== undefined && RANK[spread.verdict.grade] < RANK[worst.verdict.grade];
  const verdict =
    graver || spread !== undefined
      ? graver || worst.verdict.grade === 'unjudged'
        ? spread.verdict
        : worst.verdict
      : worst.verdict;
  const falling = kind.falling === true && (worst.trend?.perWeek ?? 0) < 0;
  const grade = falling && RANK[verdict.grade] > RANK.doubtful ? 'doubtful' : verdict.grade;
  // a wide spread is one low cylinder
  const high = verdict.side === 'high' && verdict !== spread?.verdict;
  const advice = high ? kind.first.high : kind.first.low;
  const caution = grade === 'bad' ? advice : falling ? kind.first.falling : undefined;
  return {
    kind: 'answer',
    subject: looks.length === 1 ? `Reading #${reading.id}` : 'Readings',
    result: headline(view, worst, verdict),
    tone: TONES[grade],
    ...(certainty === undefined || certainty === '' ? {} : { certainty }),
    ...(looks.length === 1
      ? { facts: factsOf(worst, view) }
      : { items: looks.map((look) => itemOf(look)), facts: sharedFacts(looks, spread) }),
    ...(caution === undefined ? {} : { caution }),
    buttons: [...buttonsOf(looks, reading), ...extraButtons],
    audience: 'crew',
    data: {
      readings: looks.map(lookData),
      ...(spread === undefined
        ? {}
        : {
            spreadRatio: spread.ratio,
            weakest: spread.weakest.conditions.place ?? null,
            spreadGrade: spread.verdict.grade,
          }),
      ...(said === undefined ? {} : { said }),
      ...(changeId === undefined ? {} : { change: changeId }),
    },
  };
}

function headline({ looks, spread }: ReadingView, worst: Look, verdict: Verdict): string {
  const { reading, kind } = worst;
  const whole = looks.length === 1 ? `${sayTitle(reading)}` : sayReadings(looks.map((look) => look.reading));
  if (spread !== undefined) {
    const ratio = sayValue(spread.ratio, '1', 'percent', 2);
    return `${whole}: spread ${ratio}, ${sayVerdict(spread.verdict, '1', 'percent')}`;
  }
  if (kind.grows) return whole;
  if (looks.length > 1 && (verdict.grade === 'bad' || verdict.grade === 'doubtful')) {
    return `${whole}: ${reading.conditions.place ?? reading.conditions.states.join(' ')} ${sayVerdict(verdict, reading.unit, reading.shownIn)}`;
  }
  const heat = verdict.grade === 'good' && unsaidHeat(reading.conditions, kind) ? ', if the oil was hot' : '';
  return `${whole}: ${sayVerdict(verdict, reading.unit, reading.shownIn)}${heat}`;
}

const sayTitle = (reading: Reading): string =>
  `${sayReading({ ...reading, conditions: { states: [], ...(reading.conditions.place === undefined ? {} : { place: reading.conditions.place }) } })}`;

function factsOf(look: Look, { today, zone }: Reader): readonly Fact[] {
  const { reading, kind, verdict, like, trend } = look;
  const { conditions, note, link, firstValue, unit, shownIn, byName, takenAtMs, typed } = reading;
  const at = sayConditions(conditions, typed);
  const before = previousOf(like);
  const day = (ms: number): string => sayDay(dayAt(ms, zone), today);
  return [
    ...(at === '' ? [] : [['Taken at', at.replace(/^at /u, '')] as const]),
    ...(verdict.limit === undefined || kind.grows
      ? []
      : [
          [
            'Limit',
            `${sayLimits(verdict.limit, unit, shownIn)}: ${verdict.limit.item} (${sayOrigin(verdict.limit.origin)})`,
          ] as const,
        ]),
    ...(firstValue === null ? [] : [['First given as', sayValue(firstValue, unit, shownIn, 7)] as const]),
    ...(before === undefined ? [] : [['Before', `${sayOwn(before)}, ${day(before.takenAtMs)}`] as const]),
    ...(trend === undefined
      ? []
      : [['Trend', `${sayTrend(trend, kind, shownIn)}${untilLimit(look)}`] as const]),
    ...(note === null ? [] : [['Note', note] as const]),
    ...(link === null ? [] : [['Photo', link] as const]),
    ['Logged by', `${byName}, ${day(takenAtMs)}, as “${typed}”`],
  ];
}

/** "; at this rate at its limit in 3 weeks". */
function untilLimit({ verdict, trend }: Look): string {
  const limit =
    trend === undefined || verdict.limit === undefined
      ? undefined
      : trend.perWeek < 0
        ? verdict.limit.min
        : verdict.limit.max;
  const days = limit === undefined || trend === undefined ? undefined : daysUntil(limit, trend);
  if (days === undefined || days > MOST_DAYS_AHEAD) return '';
  return `; at this rate at its limit in ${days < 14 ? `${Math.max(1, Math.round(days))} days` : `${Math.round(days / 7)} weeks`}`;
}

/** Further ahead nobody can see. */
const MOST_DAYS_AHEAD = 120;

function sharedFacts(looks: readonly Look[], spread: Spread | undefined): readonly Fact[] {
  const [first] = looks;
  if (first === undefined) return [];
  const { note, link, typed, byName } = first.reading;
  const limit = spread?.verdict.limit;
  return [
    ...(spread === undefined
      ? []
      : [['Weakest', `${spread.weakest.conditions.place ?? ''}, ${sayOwn(spread.weakest)}`] as const]),
    ...(limit === undefined
      ? []
      : [['Limit', `${sayLimits(limit, '1', 'percent')} spread (${sayOrigin(limit.origin)})`] as const]),
    ...(note === null ? [] : [['Note', note] as const]),
    ...(link === null ? [] : [['Photo', link] as const]),
    ['Logged by', `${byName}, as “${typed}”`],
  ];
}

function itemOf({ reading, verdict, like, kind, trend }: Look): Item {
  const before = previousOf(like);
  const notes = [
    ...(verdict.limit === undefined ? [] : [`${sayVerdict(verdict, reading.unit, reading.shownIn)}.`]),
    ...(before === undefined ? [] : [`Before: ${sayOwn(before)}.`]),
    ...(trend === undefined ? [] : [`It ${sayTrend(trend, kind, reading.shownIn)}.`]),
    ...(reading.firstValue === null
      ? []
      : [`First given as ${sayValue(reading.firstValue, reading.unit, reading.shownIn, 7)}.`]),
  ];
  const states = reading.conditions.states.join(', ');
  const place = reading.conditions.place ?? states;
  return {
    text: `#${reading.id} ${place === '' ? '' : `${place}: `}${sayOwn(reading)}`,
    ...(notes.length === 0 ? {} : { note: notes.join(' ') }),
    tone: TONES[verdict.grade],
  };
}

function buttonsOf(looks: readonly Look[], reading: Reading): readonly Button[] {
  return [
    { label: 'Chart', does: { command: 'reading', action: 'chart', args: { kind: reading.kind } } },
    ...(looks.length === 1
      ? [
          {
            label: 'Correct',
            does: { command: 'reading', action: 'correct', args: { reading: reading.id } },
          } as const,
        ]
      : []),
  ];
}
