import { judgeReading, type Standing as Side } from '../../calc/readings/limit.ts';
import { toBase } from '../../calc/units/convert.ts';
import { isUnitId, type UnitId } from '../../calc/units/table.ts';
import { type ReadingLimit, readingLimits } from '../../tables/reading-limits.ts';
import { IDLE_TO_RPM, impliedStates, meets } from './alike.ts';
import type { Kind } from './kinds.ts';
import type { Conditions, LimitOrigin, OwnLimit, Reading } from './reading.ts';
import { sayValue } from './say.ts';

export type Grade = 'good' | 'doubtful' | 'bad' | 'unjudged';

/** A limit as it applies to one reading, in the kind's own unit. */
export interface AppliedLimit {
  readonly min?: number;
  readonly max?: number;
  readonly origin: LimitOrigin | 'common practice';
  /** What it is a limit of: "hot idle oil pressure". */
  readonly item: string;
  /** Beyond it something is wrong, and not merely to be looked into. */
  readonly grave: boolean;
  /** It says from where on something is wrong, not where sound readings lie. */
  readonly warns: boolean;
  /** How much it asks for: of two limits the one that asks for more is the nearer one. */
  readonly weight: number;
}

export interface Verdict {
  readonly grade: Grade;
  readonly side: Side;
  /** The limit it was judged by. */
  readonly limit?: AppliedLimit;
}

type Judged = Pick<Reading, 'value' | 'conditions'>;

/** What else the build tells of how its readings are to be judged. */
export interface JudgedBy {
  readonly limits: readonly OwnLimit[];
  /** The engine is boosted: full load is judged by that. */
  readonly boosted: boolean;
}

/**
 * A reading against its limits: the maker's figure first, then the crew's, then common practice. Of those that apply it is
 * judged by the one that asks for most; a maker's or crew's limit puts every common one out of force.
 */
export function judge(reading: Judged, kind: Kind, by: JudgedBy): Verdict {
  const applied = limitsFor(reading, kind, by);
  const judged = applied.map((limit) => ({ limit, side: sideOf(reading.value, limit) }));
  const broken = judged.filter(({ side }) => side !== 'ok');
  const worst = broken.toSorted(
    (a, b) => Number(b.limit.grave) - Number(a.limit.grave) || b.limit.weight - a.limit.weight,
  )[0];
  if (worst !== undefined) {
    return { grade: worst.limit.grave ? 'bad' : 'doubtful', side: worst.side, limit: worst.limit };
  }
  const [nearest] = judged.toSorted((a, b) => b.limit.weight - a.limit.weight);
  return nearest === undefined
    ? { grade: 'unjudged', side: 'ok' }
    : { grade: 'good', side: 'ok', limit: nearest.limit };
}

/** The limits in force for a reading. */
export function limitsFor(
  reading: Judged,
  kind: Kind,
  { limits, boosted }: JudgedBy,
): readonly AppliedLimit[] {
  const ofKind = limits.filter((limit) => limit.kind === kind.name);
  const own = ofKind.filter((limit) => meets(reading.conditions, limit.conditions));
  const carried: AppliedLimit[] = [];
  for (const origin of ['maker', 'crew'] as const) {
    const mine = own.filter((limit) => limit.origin === origin);
    const most = Math.max(...mine.map(weightOf));
    const nearest = mine.filter((limit) => weightOf(limit) === most);
    if (nearest.length > 0) return [...nearest.map((limit) => ofOwn(limit, kind)), ...carried];
    carried.push(
      ...carriedOver(
        reading,
        kind,
        ofKind.filter((limit) => limit.origin === origin),
      ),
    );
  }
  const common = readingLimits
    .filter((row) => row.kind === kind.common && row.rule !== 'marks')
    .flatMap((row) => ofCommon(row, reading, kind, boosted) ?? []);
  // of the usual ranges the one that knows most of the conditions stands for the others; a warning always stands
  const nearest = Math.max(...common.filter(({ warns }) => !warns).map(({ weight }) => weight));
  return [...common.filter(({ warns, weight }) => warns || weight === nearest), ...carried];
}

/**
 * The least oil pressure asked for at a lower speed, which a higher one must keep as well, and that for hot oil where the heat
 * was not said. It stands beside what else applies, as it asks for less than the speed that was driven may.
 */
function carriedOver(
  { conditions }: Judged,
  kind: Kind,
  limits: readonly OwnLimit[],
): readonly AppliedLimit[] {
  if (kind.name !== 'oil pressure') return [];
  const { speedRpm = Number.NaN } = conditions;
  const below = limits.filter(({ min, conditions: asked }) => {
    const { speedRpm: from, ...rest } = asked;
    const states = rest.states.filter(
      (state) => state !== 'hot' && !(state === 'idle' && speedRpm > IDLE_TO_RPM),
    );
    const reached = from === undefined || from <= speedRpm;
    return min !== null && reached && meets(conditions, { ...rest, states });
  });
  const [highest] = below.toSorted((a, b) => (b.min ?? 0) - (a.min ?? 0));
  if (highest === undefined) return [];
  const { max: _, ...least } = ofOwn(highest, kind);
  const from = highest.conditions.speedRpm;
  return [{ ...least, item: from === undefined ? kind.name : `${kind.name} at ${from} rpm already` }];
}

/** How many things a limit names. */
function weightOf({ conditions }: Pick<OwnLimit, 'conditions'>): number {
  const { states, ...figures } = conditions;
  return states.length + Object.keys(figures).length;
}

function ofOwn(limit: OwnLimit, kind: Kind): AppliedLimit {
  return {
    ...(limit.min === null ? {} : { min: limit.min }),
    ...(limit.max === null ? {} : { max: limit.max }),
    origin: limit.origin,
    item: kind.name,
    grave: true,
    warns: false,
    weight: weightOf(limit),
  };
}

function ofCommon(
  row: ReadingLimit,
  reading: Judged,
  kind: Kind,
  boosted: boolean,
): AppliedLimit | undefined {
  const { conditions } = reading;
  if (row.intake !== undefined && row.intake !== (boosted ? 'boosted' : 'natural')) return undefined;
  if (row.piston !== undefined || row.minutes !== undefined) return undefined;
  if (row.place !== undefined && row.place !== conditions.place) return undefined;
  if (!isUnitId(kind.unit) || (row.unit === '1' && kind.unit !== '1')) return undefined;
  if (row.per !== undefined && conditions.speedRpm === undefined) return undefined;
  const scale = row.per === undefined ? 1 : perThousand(row, conditions.speedRpm ?? 0);
  const missing = row.states.filter((state) => !impliedStates(conditions).includes(state));
  const kept = endsWithout(missing, kind);
  // no engine leaks too little
  const least = kind.name === 'leak-down' && row.rule === 'between' ? undefined : row.min;
  const min = kept.min && least !== undefined ? inUnit(least * scale, row.unit, kind.unit) : undefined;
  const max = kept.max && row.max !== undefined ? inUnit(row.max * scale, row.unit, kind.unit) : undefined;
  if (min === undefined && max === undefined) return undefined;
  return {
    // a warning says from where on it is wrong: that is where a sound reading ends
    ...(row.rule === 'warns'
      ? flipped(min, max)
      : { ...(min === undefined ? {} : { min }), ...(max === undefined ? {} : { max }) }),
    origin: 'common practice',
    item: row.per === undefined ? row.item : `${row.item}, never more than a relief valve lets through`,
    grave: row.rule === 'warns' || isGrave(row, kind),
    warns: row.rule === 'warns',
    weight: row.states.length,
  };
}

/** Where relief valves usually open: no speed asks for more oil pressure. Common practice, no source. */
const RELIEF_KPA = 400;

/** How often a figure for each 1000 rpm counts at a speed. */
function perThousand({ min, unit }: ReadingLimit, speedRpm: number): number {
  const topped = min === undefined ? Number.POSITIVE_INFINITY : RELIEF_KPA / toBase(min, unit);
  return Math.min(speedRpm / 1000, topped);
}

/**
 * Which ends of a limit still hold where a state it asks for was not said. Hot oil is the thinnest, so a pressure too low
 * for hot oil is too low for any; and what is too hot is too hot whatever was said.
 */
function endsWithout(
  missing: readonly string[],
  kind: Kind,
): { readonly min: boolean; readonly max: boolean } {
  if (missing.length === 0) return { min: true, max: true };
  if (missing.length > 1 || missing[0] !== 'hot') return { min: false, max: false };
  return { min: kind.name === 'oil pressure', max: kind.field === 'temperature' };
}

const flipped = (min?: number, max?: number): { readonly min?: number; readonly max?: number } => ({
  ...(min === undefined ? {} : { max: min }),
  ...(max === undefined ? {} : { min: max }),
});

function isGrave({ id, min, states }: ReadingLimit, { grave, name }: Kind): boolean {
  if (id === 'compression-spread-service') return true;
  if (name === 'lambda') return states.includes('full load');
  if (name === 'battery voltage') return !states.includes('at rest');
  return grave.some((side) => (side === 'low' ? min !== undefined : min === undefined));
}

function inUnit(figure: number, from: UnitId, to: UnitId): number {
  const base = toBase(figure, from);
  return to === 'km' || to === 'h' ? base / toBase(1, to) : base;
}

function sideOf(value: number, limit: AppliedLimit): Side {
  const ends = {
    ...(limit.min === undefined ? {} : { min: limit.min }),
    ...(limit.max === undefined ? {} : { max: limit.max }),
  };
  // reading and limit are both in the kind's own unit: plain numbers beside each other
  return judgeReading(value, { ...ends, unit: '1' }).value.standing;
}

/** "at least 0.69 bar", "80 °C to 105 °C". */
export function sayLimits(
  { min, max }: Pick<AppliedLimit, 'min' | 'max'>,
  unit: string,
  shownIn: string,
): string {
  const said = (value: number): string => sayValue(value, unit, shownIn, 3);
  if (min === undefined) return max === undefined ? 'no limit' : `at most ${said(max)}`;
  return max === undefined ? `at least ${said(min)}` : `${said(min)} to ${said(max)}`;
}

/** "the maker's figure", "common practice". */
export function sayOrigin(origin: AppliedLimit['origin']): string {
  switch (origin) {
    case 'maker':
      return "the maker's figure";
    case 'crew':
      return "the crew's figure";
    case 'common practice':
      return 'common practice, no source';
  }
}

/** The verdict as a sentence goes on: "within limits", "too low: at least 0.69 bar hot at idle". */
export function sayVerdict({ grade, side, limit }: Verdict, unit: string, shownIn: string): string {
  if (limit === undefined) return 'no limit known';
  const limits = sayLimits(limit, unit, shownIn);
  if (grade === 'good') return `within limits (${limits})`;
  if (grade === 'doubtful') return `${side === 'low' ? 'lower' : 'higher'} than usual (${limits})`;
  return `${side === 'low' ? 'too low' : 'too high'}: ${limits}`;
}

/** The same behind a value, as a whole sentence has it: "is too low: at least 0.69 bar". */
export const sayStands = (verdict: Verdict, unit: string, shownIn: string): string =>
  verdict.limit === undefined ? 'has no limit here' : `is ${sayVerdict(verdict, unit, shownIn)}`;

/** Whether a condition the limit hangs on was left unsaid, so that the verdict is only half a one. */
export function unsaidHeat(conditions: Conditions, kind: Kind): boolean {
  return (
    kind.name === 'oil pressure' &&
    !impliedStates(conditions).some((state) => state === 'hot' || state === 'cold')
  );
}
