import { isUnitId, type UnitId, units } from '../../calc/units/table.ts';
import type { FieldName } from '../quantity/fields.ts';
import { readQuantity } from '../quantity/read-quantity.ts';
import type { Read } from '../quantity/reading.ts';
import { aboveAir } from './above-air.ts';
import { inKept, inShown, type KindSpec, within } from './kind-spec.ts';
import { doubt, refusal, withAmount } from './outcome.ts';
import type { LineAmount } from './take-apart.ts';

/** A figure as it is meant. */
export interface Figure {
  /** In the unit the kind is kept in. */
  readonly value: number;
  readonly shownIn: string;
  readonly readAs: readonly string[];
}

/** Units a number alone can stand for; a single one is taken, and said. */
const BARE: Partial<Record<FieldName, readonly string[]>> = {
  pressure: ['bar', 'psi', 'kPa'],
  temperature: ['°C', '°F'],
  length: ['mm', 'in', 'thou'],
  distance: ['km', 'mi'],
  current: ['A', 'mA'],
  voltage: ['V'],
  percent: ['%'],
  time: ['h'],
  speed: ['rpm'],
};

/**
 * Every value of a line, in the kind's unit.
 *
 * @throws NotRead where one can mean several things, or cannot be.
 */
export function readValues(given: readonly LineAmount[], kind: KindSpec, text: string): readonly Figure[] {
  const amounts = kind.field === 'distance' ? given.map(thousandsTogether) : given;
  const last = amounts.findLast(({ unit }) => unit !== '');
  if (last !== undefined) {
    return amounts.map((amount) => readOne(amount, amount.unit === '' ? last.unit : amount.unit, kind, text));
  }
  const clock = amounts.some(({ figures }) => /h/iu.test(figures)); // 3h30 has its units inside
  if (kind.field === null || kind.field === 'ratio' || clock)
    return amounts.map((amount) => readOne(amount, '', kind, text));
  return readBare(amounts, kind, text);
}

/** "84,210": no odometer counts thousandths. */
function thousandsTogether(amount: LineAmount): LineAmount {
  return { ...amount, figures: amount.figures.replace(/(?<=\d),(?=\d{3}(?:\D|$))/gu, '') };
}

function readBare(amounts: readonly LineAmount[], kind: KindSpec, text: string): readonly Figure[] {
  const own = isUnitId(kind.unit) ? units[kind.unit].sign : kind.unit;
  const offered = kind.usual === undefined ? [own] : offeredFor(kind, own);
  const fitting = offered.filter((unit) => allWithin(amounts, unit, kind, kind.usual));
  const [only, another] =
    fitting.length > 0 ? fitting : offered.filter((unit) => allWithin(amounts, unit, kind, kind.possible));
  if (only === undefined) {
    const figures = amounts.map(({ figures: each }) => each).join(', ');
    throw refusal(`${figures} is no ${kind.name} in ${offered.join(', ')}.`);
  }
  const lastAmount = amounts.at(-1);
  if ((another !== undefined || fitting.length === 0) && lastAmount !== undefined) {
    const all = fitting.length > 0 ? fitting : offered;
    throw doubt(
      `${amounts.map(({ figures }) => figures).join(' ')} of what?`,
      all.map((unit) => withAmount(text, lastAmount, `${lastAmount.figures} ${unit}`)),
    );
  }
  const taken = offered.length > 1 ? [`Taken as ${only}: nothing else is likely.`] : [];
  return amounts.map((amount) => ({ ...readOne(amount, only, kind, text), readAs: taken }));
}

/** The units a figure alone may stand for; a vacuum is read in inches of mercury as often as in anything. */
function offeredFor({ field, shown }: KindSpec, own: string): readonly string[] {
  const usual = (field && BARE[field]) ?? [own];
  return shown === 'inHg' ? ['inHg', ...usual] : usual;
}

function allWithin(
  amounts: readonly LineAmount[],
  unit: string,
  kind: KindSpec,
  bounds: KindSpec['usual'],
): boolean {
  return amounts.every((amount) => {
    const read = kind.field === null ? undefined : readQuantity(`${amount.figures} ${unit}`, kind.field);
    return read?.verdict === 'read' && within(kept(read, kind), bounds, kind);
  });
}

function readOne(amount: LineAmount, unit: string, kind: KindSpec, text: string): Figure {
  const { figures } = amount;
  if (kind.field === null) {
    const read = readQuantity(figures, 'ratio');
    if (read.verdict === 'read') return { value: read.value, shownIn: kind.unit, readAs: [] };
    throw read.verdict === 'ask'
      ? doubt(
          read.question,
          read.options.map(({ typed }) => withAmount(text, amount, `${typed} ${kind.unit}`)),
        )
      : refusal(`"${figures}" is not read here.`);
  }
  const read = readQuantity(`${figures} ${unit}`.trim(), kind.field);
  switch (read.verdict) {
    case 'read':
      if (read.reference === 'absolute') throw aboveAir(read, (figure) => withAmount(text, amount, figure));
      return possibleOnly(read, amount, kind, unit);
    case 'range':
      throw refusal(`"${figures} ${unit}" is a range, and one value is needed.`);
    case 'ask':
      throw doubt(
        read.question,
        read.options.map(({ typed }) => withAmount(text, amount, typed)),
      );
    case 'refuse':
      throw refusal(read.problem);
  }
}

/** A value of the field as one of the kind: seconds become hours where hours are kept. */
function kept(read: Read, kind: KindSpec): number {
  if (kind.field === 'ratio') return read.typedUnit === 'AFR' ? read.value / PETROL_AFR : read.value;
  return inKept(read.value, read.unit, kind);
}

/** What the gauges are lettered for (docs/sources.md, AFDC). */
export const PETROL_AFR = 14.7;

function possibleOnly(read: Read, { figures }: LineAmount, kind: KindSpec, unit: string): Figure {
  // 4.1 bar is 410 kPa, and not what is left of it in the sixteenth place
  const value = Number(kept(read, kind).toPrecision(12));
  if (!within(value, kind.possible, kind)) {
    const [min, max] = kind.possible ?? [0, 0];
    const sign = isUnitId(kind.shown) ? units[kind.shown].sign : kind.shown;
    const own = inShown(value, kind);
    throw refusal(
      `${/^[aeio]/i.test(kind.name) ? 'An' : 'A'} ${kind.name} of ${figures} ${unit} cannot be${Number.isFinite(own) ? '' : ' a number'}: it lies between ${min} and ${max}${sign === '' ? '' : ` ${sign}`}.`,
    );
  }
  const readAs = [
    ...(read.slip ? [`“${unit}” read as ${units[read.typedUnit].sign}.`] : []),
    ...(read.typedUnit === 'AFR'
      ? [`${read.figure} on petrol's scale of ${PETROL_AFR} is this λ, whatever is in the tank.`]
      : []),
  ];
  return { value, shownIn: shownIn(read.typedUnit, kind), readAs };
}

const shownIn = (typed: UnitId, kind: KindSpec): string =>
  typed === '1' || typed === 'AFR' ? kind.shown : typed;
