import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** The scale that gauges are lettered for, petrol's conventional ratio (keys AFDC, BOSCH). */
export const GAUGE_AFR = 14.7;

export interface Mixture {
  readonly lambdaRatio: number;
  /** Fuel–air equivalence ratio, 1/λ. */
  readonly phiRatio: number;
  readonly afr: number;
  /** Above 0 lean, below 0 rich. */
  readonly excessAirRatio: number;
}

/**
 * One mixture in all its names, from any of them: λ = AFR/AFR_st, φ = 1/λ, excess air = λ − 1.
 *
 * Source: definitions, Heywood section 3.4 (key HEYWOOD). Valid: λ 0.3 to 10; beyond it a figure is a slip of the pen.
 * @throws UserError 'out-of-range' outside it.
 */
export function mixtureOf(
  given: { readonly stoichiometricAfr: number } & (
    | { readonly afr: number }
    | { readonly lambdaRatio: number }
    | { readonly phiRatio: number }
  ),
): Calculation<Mixture> {
  const { stoichiometricAfr } = given;
  requireRange({ what: 'The stoichiometric ratio', value: stoichiometricAfr, min: 0.5, max: 40, unit: ':1' });
  const lambdaRatio =
    'afr' in given
      ? given.afr / stoichiometricAfr
      : 'phiRatio' in given
        ? 1 / given.phiRatio
        : given.lambdaRatio;
  requireRange({ what: 'λ', value: lambdaRatio, min: 0.3, max: 10, unit: '' });
  return {
    value: {
      lambdaRatio,
      phiRatio: 1 / lambdaRatio,
      afr: lambdaRatio * stoichiometricAfr,
      excessAirRatio: lambdaRatio - 1,
    },
    assumptions: [`stoichiometric at ${Number(stoichiometricAfr.toFixed(2))} : 1 by mass`],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

export const mixtureSheet: SumSheet = {
  title: 'λ, air–fuel ratio and equivalence ratio',
  formula: 'λ = AFR/AFR_st; φ = 1/λ; excess air = λ − 1',
  symbols: {
    AFR: 'air per fuel by mass',
    AFR_st: 'the same for complete combustion',
    λ: 'relative air–fuel ratio',
  },
  sources: ['HEYWOOD'],
  range: 'λ 0.3 to 10',
};

/**
 * What a gauge lettered in AFR really says: λ = display/AFR_gauge, AFR = λ·AFR_st.
 *
 * The sensor answers to oxygen, so it knows λ and nothing of the fuel; the letters are λ times the ratio that the gauge was
 * made for, mostly petrol's 14.7. Source: definition of λ (key HEYWOOD). Valid: as mixtureOf.
 * @throws UserError 'out-of-range' outside it.
 */
export function readGauge(gauge: {
  readonly displayedAfr: number;
  /** The ratio that the gauge was lettered for. */
  readonly gaugeAfr?: number;
  /** Of what is in the tank. */
  readonly stoichiometricAfr: number;
}): Calculation<Mixture> {
  const { displayedAfr, gaugeAfr = GAUGE_AFR, stoichiometricAfr } = gauge;
  const { lambdaRatio } = mixtureOf({ afr: displayedAfr, stoichiometricAfr: gaugeAfr }).value;
  const { value, sources } = mixtureOf({ lambdaRatio, stoichiometricAfr });
  return { value, assumptions: [`gauge lettered for ${gaugeAfr} : 1`], sources, caveats: [] };
}

export const gaugeSheet: SumSheet = {
  title: 'What a gauge lettered in AFR says',
  formula: 'λ = display/AFR_gauge; AFR = λ·AFR_st',
  symbols: {
    display: 'what the gauge shows',
    AFR_gauge: 'the ratio that it was lettered for, 14.7 unless said otherwise',
    AFR_st: 'stoichiometric ratio of the fuel in the tank',
  },
  sources: ['HEYWOOD'],
  range: 'λ 0.3 to 10',
};
