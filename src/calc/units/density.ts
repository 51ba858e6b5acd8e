import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from './say.ts';

/**
 * The density, in g/cm³, at which one pound an hour is 10.5 cc a minute: what injectors are commonly compared at.
 * Common practice, no source (key COMMON).
 */
export const TRADE_FUEL_DENSITY = 0.72;

interface Flow {
  readonly densityGramPerCc: number;
}

const checked = (densityGramPerCc: number): void =>
  requireRange({ what: 'The density', value: densityGramPerCc, min: 0.4, max: 2, unit: 'g/cm³' });

/**
 * Volume flow of a mass flow: Q = 60·ṁ / ρ, with Q in cc/min, ṁ in g/s and ρ in g/cm³.
 *
 * Source: definition of density (key SI). Valid: liquids from 0.4 to 2 g/cm³.
 * @throws UserError 'out-of-range' outside it.
 */
export function volumeFlow({
  massFlowGramPerS,
  densityGramPerCc,
}: Flow & { readonly massFlowGramPerS: number }): Calculation<{ readonly flowCcPerMin: number }> {
  checked(densityGramPerCc);
  return worked({ flowCcPerMin: (massFlowGramPerS * 60) / densityGramPerCc }, densityGramPerCc);
}

/** Mass flow of a volume flow: the same the other way round. @throws UserError 'out-of-range'. */
export function massFlow({
  flowCcPerMin,
  densityGramPerCc,
}: Flow & { readonly flowCcPerMin: number }): Calculation<{ readonly massFlowGramPerS: number }> {
  checked(densityGramPerCc);
  return worked({ massFlowGramPerS: (flowCcPerMin * densityGramPerCc) / 60 }, densityGramPerCc);
}

function worked<Value>(value: Value, densityGramPerCc: number): Calculation<Value> {
  const usual = densityGramPerCc === TRADE_FUEL_DENSITY;
  return {
    value,
    assumptions: [densityTaken(densityGramPerCc)],
    sources: usual ? ['SI', 'COMMON'] : ['SI'],
    caveats: [],
  };
}

/** The density taken, in a sentence. */
export function densityTaken(densityGramPerCc: number): string {
  const density = `Density ${sayNumber(densityGramPerCc)} g/cm³`;
  return densityGramPerCc === TRADE_FUEL_DENSITY
    ? `${density}: 1 lb/h is 10.5 cc/min, as injectors are commonly compared.`
    : `${density}.`;
}

export const densitySheet: SumSheet = {
  title: 'Flow by mass and by volume',
  formula: 'Q = 60·ṁ / ρ',
  symbols: { Q: 'volume flow, cc/min', ṁ: 'mass flow, g/s', ρ: 'density, g/cm³' },
  sources: ['SI', 'COMMON'],
  range:
    'Liquids of 0.4 to 2 g/cm³. The density is that at the temperature of the fuel: petrol loses about 0.1 % per °C.',
};
