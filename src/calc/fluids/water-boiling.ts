import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** n1 to n10 of IAPWS-IF97 region 4 (table 34). */
const N1 = 1167.0521452767;
const N2 = -724213.16703206;
const N3 = -17.073846940092;
const N4 = 12020.82470247;
const N5 = -3232555.0322333;
const N6 = 14.91510861353;
const N7 = -4823.2657361591;
const N8 = 405113.40542057;
const N9 = -0.23855557567849;
const N10 = 650.17534844798;

/**
 * Boiling point of water at an absolute pressure: the backward equation T_s(p) of IAPWS-IF97 region 4.
 *
 * Source: IAPWS R7-97(2012), equation 31 (key IF97), coefficients from memory; agree with the printed check values and with a
 * saturated-water table. Valid here: 5 to 1000 kPa.
 * @throws UserError 'out-of-range' outside it.
 */
export function waterBoiling(water: {
  readonly pressureKpa: number;
}): Calculation<{ readonly boilingC: number }> {
  const { pressureKpa } = water;
  requireRange({ what: 'The absolute pressure', value: pressureKpa, min: 5, max: 1000, unit: 'kPa' });
  const beta = (pressureKpa / 1000) ** 0.25;
  const e = beta ** 2 + N3 * beta + N6;
  const f = N1 * beta ** 2 + N4 * beta + N7;
  const g = N2 * beta ** 2 + N5 * beta + N8;
  const d = (2 * g) / (-f - Math.sqrt(f ** 2 - 4 * e * g));
  const kelvin = (N10 + d - Math.sqrt((N10 + d) ** 2 - 4 * (N9 + N10 * d))) / 2;
  return { value: { boilingC: kelvin - 273.15 }, assumptions: [], sources: ['IF97'], caveats: [] };
}

export const waterBoilingSheet: SumSheet = {
  title: 'Boiling point of water under pressure',
  formula: 'T_s(p), IAPWS-IF97 region 4, p = air pressure + cap',
  symbols: { T_s: 'boiling point, °C', p: 'absolute pressure, kPa' },
  sources: ['IF97'],
  range: '5 to 1000 kPa',
};
