import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { convert, fromBase, toBase } from './convert.ts';
import { ATMOSPHERE_KPA } from './definitions.ts';
import { densityTaken, massFlow, TRADE_FUEL_DENSITY, volumeFlow } from './density.ts';
import { type PressureReference, pressureFrom } from './pressure-reference.ts';
import { sayNumber } from './say.ts';
import { type UnitId, units } from './table.ts';

/** What a figure is turned into, and what that takes beside the units. */
export interface Wanted {
  readonly from: UnitId;
  readonly to: UnitId;
  /** What a pressure was measured from; unsaid it stays so. */
  readonly reference?: PressureReference | undefined;
  /** What it is wanted from; a vacuum is wanted as a depth, so with the sign turned. */
  readonly wantedReference?: PressureReference | 'vacuum' | undefined;
  /** Between mass and volume; between flows the trade's 720 kg/m³ unless it is given. */
  readonly densityKgM3?: number | undefined;
  /** The air outside, kPa; the standard atmosphere unless it is given. */
  readonly outsideKPa?: number | undefined;
}

/**
 * A figure in another unit: of its own dimension by the units' definitions, between flow by mass and by volume by the
 * density, between gauge and absolute by the air outside.
 *
 * Source: the units' own (docs/sources.md). Valid: any finite figure.
 * @throws UserError 'bad-input' for two dimensions nothing joins, 'which-one' when a pressure's zero has to be said,
 *   'out-of-range' for a density no liquid has.
 */
export function convertFigure(figure: number, wanted: Wanted): Calculation<{ readonly figure: number }> {
  const { from, to } = wanted;
  const dimension = units[from].dimension;
  const target = units[to].dimension;
  if (dimension === 'pressure' && target === 'pressure') return pressure(figure, wanted);
  if (dimension === target) return plain(convert(figure, from, to), [from, to]);
  const flows = new Set(['mass-flow', 'volume-flow']);
  if (flows.has(dimension) && flows.has(target)) return throughDensity(figure, wanted);
  const amounts = new Set(['mass', 'volume']);
  if (amounts.has(dimension) && amounts.has(target)) return amount(figure, wanted);
  return plain(convert(figure, from, to), [from, to]);
}

function plain(figure: number, used: readonly UnitId[]): Calculation<{ readonly figure: number }> {
  const sources = [...new Set(used.map((unit) => units[unit].source))];
  return { value: { figure }, assumptions: [], sources, caveats: [] };
}

function pressure(figure: number, wanted: Wanted): Calculation<{ readonly figure: number }> {
  const { from, to, reference, wantedReference, outsideKPa } = wanted;
  const target = wantedReference === 'vacuum' ? 'gauge' : wantedReference;
  if (target !== undefined && reference === undefined) {
    throw new UserError(
      'bad-input',
      'What is the pressure measured from? Say gauge, or boost, for above the air outside, or absolute: `1.2 bar gauge`.',
    );
  }
  const shifted = target !== undefined && target !== reference;
  const kPa = pressureFrom(
    toBase(figure, from),
    reference ?? 'gauge',
    target ?? reference ?? 'gauge',
    outsideKPa,
  );
  const found = plain(fromBase(wantedReference === 'vacuum' ? -kPa : kPa, to), [from, to]);
  if (!shifted) return found;
  const outside = `${sayNumber(outsideKPa ?? ATMOSPHERE_KPA, 6)} kPa`;
  const assumed = outsideKPa === undefined ? `${outside}, the standard atmosphere.` : `${outside}.`;
  return { ...found, assumptions: [`The air outside is at ${assumed}`] };
}

function throughDensity(
  figure: number,
  { from, to, densityKgM3 }: Wanted,
): Calculation<{ readonly figure: number }> {
  const densityGramPerCc = densityKgM3 === undefined ? TRADE_FUEL_DENSITY : densityKgM3 / 1000;
  const base = toBase(figure, from);
  const byMass = units[from].dimension === 'mass-flow';
  const through = byMass
    ? volumeFlow({ massFlowGramPerS: base, densityGramPerCc })
    : massFlow({ flowCcPerMin: base, densityGramPerCc });
  const other = 'flowCcPerMin' in through.value ? through.value.flowCcPerMin : through.value.massFlowGramPerS;
  const found = plain(fromBase(other, to), [from, to]);
  return {
    ...found,
    assumptions: through.assumptions,
    sources: [...new Set([...found.sources, ...through.sources])],
  };
}

function amount(figure: number, { from, to, densityKgM3 }: Wanted): Calculation<{ readonly figure: number }> {
  if (densityKgM3 === undefined) {
    throw new UserError(
      'bad-input',
      'Between mass and volume stands the density. Say it: density:"0.745 g/cc", or fuel:petrol.',
    );
  }
  const base = toBase(figure, from);
  const other = units[from].dimension === 'mass' ? (base / densityKgM3) * 1000 : (base * densityKgM3) / 1000;
  return { ...plain(fromBase(other, to), [from, to]), assumptions: [densityTaken(densityKgM3 / 1000)] };
}

export const conversionSheet: SumSheet = {
  title: 'Units',
  formula: 'figure₂ = figure₁ · u₁ / u₂; °F = 1.8·°C + 32; p_abs = p_gauge + p_outside; Q = 60·ṁ / ρ',
  symbols: {
    u: 'size of the unit in the base unit of its dimension',
    p_outside: 'pressure of the air outside, kPa',
    Q: 'volume flow, cc/min',
    ṁ: 'mass flow, g/s',
    ρ: 'density, g/cm³',
  },
  sources: ['SI', 'SP811', 'CGPM3', 'HB44', 'WMA1985', 'B258', 'COMMON'],
  range: 'Units of one dimension; mass and volume of a liquid of 0.4 to 2 g/cm³.',
};
