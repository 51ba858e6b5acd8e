import { convert } from '../../calc/units/convert.ts';
import { isUnitId, type UnitId, units } from '../../calc/units/table.ts';
import type { Kind } from './kinds.ts';
import type { Reading } from './reading.ts';
import { capital, figureIn, sayValue } from './say.ts';

const DAY_MS = 86_400_000;
/** No crew drives or runs an engine more in a day. Common practice. */
const MOST_A_DAY: Readonly<Record<string, number>> = { km: 1500, h: 24 };
/** A first jump may bridge some days that nobody wrote down. */
const LEAST_DAYS = 1;

/** A value that is possible and not likely, and what it may have been. */
export interface Unlikely {
  /** In words, without the question. */
  readonly why: string;
  /** Likelier values, in the unit they would be typed in. */
  readonly instead: readonly { readonly figure: number; readonly unit: string }[];
}

/** @param earlier readings of the kind, the oldest first: what was accepted once is not asked about again. */
export function unlikely(
  value: number,
  shownIn: string,
  kind: Kind,
  earlier: readonly Pick<Reading, 'value' | 'takenAtMs'>[],
  atMs: number,
): Unlikely | undefined {
  if (kind.grows) return unlikelyCount(value, shownIn, kind, earlier, atMs);
  if (kind.usual === undefined || isUsual(value, kind)) return undefined;
  if (
    earlier.some(
      (each) => !isUsual(each.value, kind) && Math.abs(each.value - value) <= 0.5 * Math.abs(value),
    )
  ) {
    return undefined;
  }
  const [min, max] = kind.usual;
  const said = sayValue(value, kind.unit, shownIn);
  const usual = `${min} and ${max} ${isUnitId(kind.shown) ? units[kind.shown].sign : kind.shown}`.trim();
  return {
    why: `${capital(kind.name)} ${said} is unlikely: it usually lies between ${usual}.`,
    instead: likelier(value, shownIn, kind),
  };
}

function isUsual(value: number, { usual, unit, shown }: Kind): boolean {
  if (usual === undefined) return true;
  const figure = figureIn(value, unit, shown);
  return figure >= usual[0] && figure <= usual[1];
}

const SAME_FIGURE: readonly (readonly UnitId[])[] = [
  ['bar', 'psi', 'kPa'],
  ['degC', 'degF'],
  ['mm', 'in', 'thou'],
  ['A', 'mA'],
  ['V', 'mV'],
];

/** A point slipped by one or two places, or another unit behind the same figure. */
function likelier(value: number, shownIn: string, kind: Kind): Unlikely['instead'] {
  const figure = figureIn(value, kind.unit, shownIn);
  const slips = [0.1, 10, 0.01].map((by) => ({
    figure: Number((figure * by).toPrecision(6)),
    unit: shownIn,
  }));
  const others = SAME_FIGURE.filter((set) => set.some((unit) => unit === shownIn))
    .flat()
    .filter((unit) => unit !== shownIn)
    .map((unit) => ({ figure: Number(figure.toPrecision(6)), unit: unit as string }));
  return [...slips, ...others].filter((each) => isUsual(inKind(each, kind), kind)).slice(0, 4);
}

function inKind({ figure, unit }: { readonly figure: number; readonly unit: string }, kind: Kind): number {
  return isUnitId(unit) && isUnitId(kind.unit) ? convert(figure, unit, kind.unit) : figure;
}

/** An odometer neither goes back nor leaps. */
function unlikelyCount(
  value: number,
  shownIn: string,
  kind: Kind,
  earlier: readonly Pick<Reading, 'value' | 'takenAtMs'>[],
  atMs: number,
): Unlikely | undefined {
  const last = earlier.findLast(({ takenAtMs }) => takenAtMs <= atMs);
  if (last === undefined) return undefined;
  const [now, before] = [sayValue(value, kind.unit, shownIn, 7), sayValue(last.value, kind.unit, shownIn, 7)];
  const likely = (each: number): boolean => each >= last.value && each - last.value <= most;
  const days = Math.max((atMs - last.takenAtMs) / DAY_MS, LEAST_DAYS);
  const most = (MOST_A_DAY[kind.unit] ?? Number.POSITIVE_INFINITY) * days;
  if (likely(value)) return undefined;
  const figure = figureIn(value, kind.unit, shownIn);
  const since = { figure: figureIn(last.value, kind.unit, shownIn) + figure, unit: shownIn };
  const instead = [
    { figure: Number((figure * 10).toPrecision(9)), unit: shownIn },
    { figure: Number((figure / 10).toPrecision(9)), unit: shownIn },
    ...(value < last.value ? [{ ...since, figure: Number(since.figure.toPrecision(9)) }] : []),
    {
      figure: Number(figure.toPrecision(9)),
      unit: shownIn === 'km' ? 'mi' : shownIn === 'mi' ? 'km' : shownIn,
    },
  ].filter((each) => likely(inKind(each, kind)));
  const why =
    value < last.value
      ? `${now} is less than the ${before} before: the ${kind.name} went back?`
      : `${now} is far more than the ${before} before.`;
  return { why, instead };
}
