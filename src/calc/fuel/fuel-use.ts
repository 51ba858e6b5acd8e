import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { gPerKwhFromLbPerHpH, lbPerHpHFromGPerKwh } from './fuel-units.ts';

/** Petrol at full load, lb/(hp·h): round figures of the trade, no source. */
const PETROL_LB_PER_HP_H = { natural: 0.5, boosted: 0.6 } as const;
/** Lower calorific value of the petrol those figures belong to, kJ/kg. */
const PETROL_KJ_PER_KG = 43_440;
/** By how much an engine on alcohol makes more of the fuel's heat, at 100 % alcohol: less fuel spent on cooling. */
const ALCOHOL_GAIN = 0.1;

export type Aspiration = keyof typeof PETROL_LB_PER_HP_H;

/**
 * Fuel per work to expect at full load: b = b_petrol·(CV_petrol/CV)·(1 − 0.1·x), b_petrol 0.50 or, boosted, 0.60 lb/(hp·h).
 *
 * A planning figure, not a fact: a measured one or the maker's outranks it. Source: common practice, no source (key COMMON),
 * scaled by the heat in the fuel. Valid: calorific value 10 to 60 MJ/kg. Not for: part load.
 * @throws UserError 'out-of-range' outside it.
 */
export function expectedFuelUse(engine: {
  readonly aspiration: Aspiration;
  readonly calorificKjPerKg: number;
  readonly alcoholRatio: number;
}): Calculation<{ readonly bsfcGPerKwh: number }> {
  const { aspiration, calorificKjPerKg, alcoholRatio } = engine;
  requireRange(
    { what: 'The calorific value', value: calorificKjPerKg, min: 10_000, max: 130_000, unit: 'kJ/kg' },
    { what: 'The share of alcohol', value: alcoholRatio, min: 0, max: 1, unit: '', shown: 'percent' },
  );
  const bsfcGPerKwh =
    gPerKwhFromLbPerHpH(PETROL_LB_PER_HP_H[aspiration]) *
    (PETROL_KJ_PER_KG / calorificKjPerKg) *
    (1 - ALCOHOL_GAIN * alcoholRatio);
  const words = aspiration === 'boosted' ? 'boosted' : 'naturally aspirated';
  return {
    value: { bsfcGPerKwh },
    assumptions: [
      `fuel per work ${bsfcGPerKwh.toFixed(0)} g/kWh (${lbPerHpHFromGPerKwh(bsfcGPerKwh).toFixed(2)} lb/hp·h), ${words}, common practice`,
    ],
    sources: ['COMMON'],
    caveats: [],
  };
}

export const expectedFuelUseSheet: SumSheet = {
  title: 'Fuel per work to expect at full load',
  formula: 'b = b_petrol·(CV_petrol/CV)·(1 − 0.1·x)',
  symbols: {
    b: 'brake specific fuel consumption (BSFC), g/kWh',
    b_petrol: '0.50 lb/(hp·h) naturally aspirated, 0.60 boosted: 304 and 365 g/kWh',
    CV: 'lower calorific value of the fuel; petrol 43 440 kJ/kg',
    x: 'share of alcohol by volume',
  },
  sources: ['COMMON'],
  range: 'a planning figure for full load; a measured one outranks it',
};
