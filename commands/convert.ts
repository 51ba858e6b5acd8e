import { z } from 'zod';
import { defineCommand } from '../src/bot/command.ts';
import { absolutePressure, quantity } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { typedLiquid } from '../src/calc/fuel/typed-fuel.ts';
import { convertFigure, type Wanted } from '../src/calc/units/conversion.ts';
import { fromBase, toBase } from '../src/calc/units/convert.ts';
import { sayExactly, sayFigure } from '../src/calc/units/say.ts';
import { type UnitId, units } from '../src/calc/units/table.ts';
import { usualUnits } from '../src/calc/units/usual.ts';
import type { Calculation } from '../src/core/calculation.ts';
import type { JsonObject } from '../src/core/json.ts';
import type { Answer } from '../src/core/reply.ts';
import { UserError } from '../src/core/user-error.ts';
import { FUEL_EXAMPLES, readFuelName } from '../src/phrases/fuel-name.ts';
import { type Conversion, readConversion } from '../src/phrases/quantity/read-conversion.ts';
import type { Read, ReadRange } from '../src/phrases/quantity/reading.ts';
import { fuelNames, fuelRows } from '../src/tables/fuels.ts';

const input = z.object({
  value: z.string().min(1).max(80).describe('With its unit: 85 lb ft, 58 psi, 550 cc/min; or 14 psi in bar'),
  to: z.string().min(1).max(40).optional().describe('The unit wanted, e.g. Nm; left out, the usual ones'),
  density: quantity('density', 'density', 'Between mass and volume, e.g. 0.745 g/cc').optional(),
  fuel: z.string().min(1).max(60).optional().describe('Its density is used instead: petrol, E10, E85'),
  outside: absolutePressure('outside', 'Air pressure between gauge and absolute, e.g. 990 mbar').optional(),
});

export type ConvertInput = z.output<typeof input>;

/**
 * A quantity in another unit, or in all the usual ones.
 *
 * @throws UserError when it cannot be read, means several things, or does not become what is wanted.
 */
export function convertReply(asked: ConvertInput): Answer {
  const conversion = readConversion(asked.value, asked.to);
  refuseMixtures(conversion);
  askReference(conversion, asked.to === undefined);
  const means = { densityKgM3: densityOf(asked), outsideKPa: asked.outside };
  const shown = shownUnits(conversion).map((unit) => inUnit(conversion, unit, means));
  return answer(conversion, shown);
}

/** One unit with what the value is in it: both ends of a range, or one figure. */
interface Shown {
  readonly unit: UnitId;
  readonly figures: readonly number[];
  readonly tol?: number;
  readonly suffix: string;
  readonly worked: Pick<Calculation<unknown>, 'assumptions' | 'sources' | 'caveats'>;
}

function densityOf({ density, fuel }: ConvertInput): number | undefined {
  if (density !== undefined || fuel === undefined) return density;
  const known = typedLiquid(readFuelName(fuel, fuelNames), fuelRows, {
    field: 'fuel',
    accepted: FUEL_EXAMPLES,
    petrol: {},
  });
  return known.value.densityKgM3;
}

/** An air-fuel ratio becomes a lambda only by the fuel, which another command asks for. */
function refuseMixtures({ value, target }: Conversion): void {
  const kinds = [value.typedUnit, target?.unit].filter((unit) => unit === 'AFR' || unit === 'lambda');
  const kept = target !== undefined && target.unit === value.typedUnit;
  if (kinds.length > 0 && !kept)
    throw new UserError(
      'bad-input',
      'Between AFR and λ stands the fuel: /lambda turns one into the other, e.g. /lambda read reading:"12.4 afr".',
    );
}

/** @throws UserError 'which-one' when a pressure is wanted from another zero and its own was not said. */
function askReference({ value, target }: Conversion, joined: boolean): void {
  if (target?.said === undefined || value.reference !== undefined || value.verdict === 'range') return;
  const into = joined ? ` to ${units[target.unit].sign} ${target.said}` : '';
  const choices = ['gauge', 'absolute'].map((reference) => {
    const typed = `${sayExactly(value.figure, value.typedUnit)} ${reference}`;
    return { label: typed, value: `${typed}${into}` };
  });
  throw new UserError(
    'which-one',
    'Measured from the air outside (gauge, boost), or from nothing (absolute)?',
    {
      field: 'value',
      choices,
    },
  );
}

/** Flows an injector is sold by are shown both ways. */
const INJECTOR_UNITS: ReadonlySet<UnitId> = new Set<UnitId>(['cc/min', 'lb/h']);

function shownUnits({ value, target }: Conversion): readonly UnitId[] {
  if (target !== undefined) return [target.unit];
  const { typedUnit } = value;
  if (typedUnit === 'tpi') return ['mm', 'in'];
  const base = toBase(ends(value)[0] ?? Number.NaN, typedUnit);
  const usual = usualUnits(units[typedUnit].dimension, base);
  const both = INJECTOR_UNITS.has(typedUnit) ? [...INJECTOR_UNITS, ...usual] : usual;
  const others = [...new Set(both)].filter((unit) => unit !== typedUnit);
  return others.length > 0 ? others : [typedUnit];
}

/** The figures as they were typed. */
function ends(value: Read | ReadRange): readonly number[] {
  if (value.verdict === 'read') return [value.figure];
  const figures = [value.min, value.max].map((each) => fromBase(toBase(each, value.unit), value.typedUnit));
  return figures.toSorted((a, b) => a - b);
}

function inUnit(
  { value, target }: Conversion,
  unit: UnitId,
  means: Pick<Wanted, 'densityKgM3' | 'outsideKPa'>,
): Shown {
  const wanted = {
    from: value.typedUnit,
    to: unit,
    reference: value.reference,
    wantedReference: target?.said,
    ...means,
  };
  const found = ends(value).map((figure) => convertFigure(figure, wanted));
  const [first] = found;
  if (first === undefined) throw new Error('a value has at least one figure');
  const said = target?.said ?? value.reference;
  const tol = value.verdict === 'read' ? value.tol : undefined;
  return {
    unit,
    figures: found.map(({ value: { figure } }) => figure).toSorted((a, b) => a - b),
    ...(tol === undefined ? {} : { tol: toleranceIn(value, tol, unit) }),
    suffix: said === undefined ? '' : ` ${said}`,
    worked: first,
  };
}

/** A difference has no zero: it is what the value grows by. */
function toleranceIn({ unit, ...value }: Read | ReadRange, tol: number, to: UnitId): number {
  const at = value.verdict === 'read' ? value.value : value.min;
  if (units[unit].dimension !== units[to].dimension) return Number.NaN;
  const [low, high] = [at - tol, at + tol].map((each) => fromBase(toBase(each, unit), to));
  return Math.abs((high ?? 0) - (low ?? 0)) / 2;
}

function answer({ value, target }: Conversion, shown: readonly Shown[]): Answer {
  const { dimension } = units[value.typedUnit];
  const typed: Shown = {
    unit: value.typedUnit,
    figures: ends(value),
    suffix: value.reference === undefined ? '' : ` ${value.reference}`,
    ...(value.verdict === 'read' && value.tol !== undefined
      ? { tol: toleranceIn(value, value.tol, value.typedUnit) }
      : {}),
    worked: { assumptions: [], sources: [], caveats: [] },
  };
  const assumptions = unique(shown.flatMap(({ worked }) => worked.assumptions));
  const column = [typed, ...shown].some(({ unit }) => units[unit].standing === 'convention');
  const exactly = column ? 'Exact, the column of liquid by convention;' : 'Exact by definition;';
  const around = value.approx ? 'about ' : '';
  return sumAnswer({
    subject: 'Units',
    result: `${around}${say(typed, 12)} = ${shown.map((each) => say(each)).join(' = ')}`,
    certainty:
      assumptions.length === 0
        ? `${exactly} four figures are shown.`
        : `${assumptions.join(' ')} Four figures are shown.`,
    calculation: {
      assumptions,
      sources: unique(shown.flatMap(({ worked }) => worked.sources)),
      caveats: unique(shown.flatMap(({ worked }) => worked.caveats)),
    },
    data: {
      kind: 'convert',
      dimension,
      ...inBase(value),
      ...(target === undefined ? {} : { to: target.unit }),
      ...(value.reference === undefined ? {} : { reference: value.reference }),
      ...(target?.said === undefined ? {} : { wantedReference: target.said }),
      ...(value.approx ? { approximate: true } : {}),
      typed: dataOf(typed),
      result: dataOf(shown[0] ?? typed),
      results: shown.map(dataOf),
    },
  });
}

function say({ unit, figures, tol, suffix }: Shown, digits = 4): string {
  const [low = Number.NaN, high] = figures;
  const tolerance = tol === undefined || Number.isNaN(tol) ? '' : ` ± ${sayFigure(tol, unit, 3)}`;
  const range = high === undefined ? '' : ` to ${sayFigure(high, unit, digits)}`;
  return `${sayFigure(low, unit, digits)}${range}${tolerance}${suffix}`;
}

/** A figure, or both ends of a range, with the unit beside it as the tables of units call it: `lbf.ft`, `cc/min`. */
function dataOf({ unit, figures, tol }: Shown): JsonObject {
  const [low = Number.NaN, high] = figures;
  return {
    ...(high === undefined ? { value: low } : { min: low, max: high }),
    ...(tol === undefined || Number.isNaN(tol) ? {} : { plusMinus: tol }),
    unit,
  };
}

/** What was typed in the unit that sums of its dimension are done in. */
function inBase(value: Read | ReadRange): JsonObject {
  if (value.verdict === 'range') return { min: value.min, max: value.max, unit: value.unit };
  return { value: value.value, unit: value.unit };
}

const unique = (sentences: readonly string[]): readonly string[] => [...new Set(sentences)];

export default defineCommand({
  description: 'A quantity in another unit, typed however you like',
  example: '/convert value:"85 lb ft" to:Nm',
  input,
  assumes: ['density', 'outside'],
  run: convertReply,
});
