import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';

/** What the sums need to know of a fuel, pure or blended. */
export interface FuelProperties {
  readonly densityKgM3: number;
  readonly stoichiometricAfr: number;
  /** Share of the mass that is oxygen. */
  readonly oxygenRatio: number;
  /** Lower calorific value. */
  readonly calorificKjPerKg: number;
  /** Share of the volume that is alcohol. */
  readonly alcoholRatio: number;
}

export interface BlendPart<Fuel> {
  readonly volumeRatio: number;
  readonly fuel: Fuel;
}

export interface Blend extends FuelProperties {
  /** Share of the mass of each part, in the order given. */
  readonly massRatios: readonly number[];
}

/**
 * A blend by volume: ρ = Σ v_i·ρ_i, w_i = v_i·ρ_i/ρ, AFR_st = Σ w_i·AFR_i, and the same for oxygen and heat.
 *
 * Source: balance of mass (key HEYWOOD). Valid: shares that add up to 1 within 0.001. Not for: the fraction of a percent by
 * which alcohol and petrol do not keep their volumes.
 * @throws UserError 'out-of-range' for shares that do not add up, or a density outside 50 to 1300 kg/m³.
 */
export function blendByVolume(parts: readonly BlendPart<FuelProperties>[]): Calculation<Blend> {
  const sum = parts.reduce((total, { volumeRatio }) => total + volumeRatio, 0);
  for (const { volumeRatio, fuel } of parts) {
    requireRange(
      { what: 'The share of a part', value: volumeRatio, min: 0, max: 1, unit: '', shown: 'percent' },
      { what: 'The density', value: fuel.densityKgM3, min: 50, max: 1300, unit: 'kg/m³' },
      { what: 'The stoichiometric ratio', value: fuel.stoichiometricAfr, min: 0.5, max: 40, unit: ':1' },
    );
  }
  if (Math.abs(sum - 1) > 0.001) {
    throw new UserError(
      'out-of-range',
      `The shares add up to ${(sum * 100).toFixed(1)} %; they must add up to 100 %.`,
    );
  }
  const densityKgM3 = parts.reduce(
    (total, { volumeRatio, fuel }) => total + volumeRatio * fuel.densityKgM3,
    0,
  );
  const massRatios = parts.map(({ volumeRatio, fuel }) => (volumeRatio * fuel.densityKgM3) / densityKgM3);
  const byMass = (property: (fuel: FuelProperties) => number): number =>
    parts.reduce((total, { fuel }, index) => total + (massRatios[index] ?? 0) * property(fuel), 0);
  return {
    value: {
      densityKgM3,
      massRatios,
      stoichiometricAfr: byMass((fuel) => fuel.stoichiometricAfr),
      oxygenRatio: byMass((fuel) => fuel.oxygenRatio),
      calorificKjPerKg: byMass((fuel) => fuel.calorificKjPerKg),
      alcoholRatio: parts.reduce(
        (total, { volumeRatio, fuel }) => total + volumeRatio * fuel.alcoholRatio,
        0,
      ),
    },
    assumptions: parts.length > 1 ? ['shares by volume, volumes simply add'] : [],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

export const blendSheet: SumSheet = {
  title: 'Blend of fuels by volume',
  formula: 'ρ = Σ v_i·ρ_i; AFR_st = Σ v_i·ρ_i·AFR_i/ρ',
  symbols: {
    v_i: 'share of the volume of each part',
    ρ_i: 'density of each part, kg/m³',
    AFR_i: 'stoichiometric air–fuel ratio of each part, by mass',
  },
  sources: ['HEYWOOD'],
  range: 'shares that add up to 100 %; mixing volumes taken to add',
};

/**
 * Stoichiometric ratio of a petrol of which only the oxygen content is known: w = o·M/15.999, AFR = (1 − w)·AFR_b + w·AFR_o.
 *
 * Which oxygenate carries the oxygen hardly matters: ethanol, methanol, MTBE and ETBE agree within 0.2 % up to 8 % oxygen,
 * since each takes the place of as much petrol as its oxygen saves air. Source: balance of mass (key HEYWOOD). Valid: up to
 * 8 % oxygen by mass. Not for: nitro fuels.
 * @throws UserError 'out-of-range' outside it.
 */
export function oxygenatedPetrol(blend: {
  readonly oxygenRatio: number;
  readonly petrolAfr: number;
  /** Of the oxygenate. */
  readonly oxygenateAfr: number;
  /** Share of the oxygenate's own mass that is oxygen. */
  readonly oxygenateOxygenRatio: number;
}): Calculation<{ readonly stoichiometricAfr: number; readonly oxygenateMassRatio: number }> {
  const { oxygenRatio, petrolAfr, oxygenateAfr, oxygenateOxygenRatio } = blend;
  requireRange(
    { what: 'The oxygen content', value: oxygenRatio * 100, min: 0, max: 8, unit: '% by mass' },
    { what: "The oxygenate's own oxygen", value: oxygenateOxygenRatio * 100, min: 10, max: 60, unit: '%' },
  );
  const oxygenateMassRatio = oxygenRatio / oxygenateOxygenRatio;
  return {
    value: {
      stoichiometricAfr: (1 - oxygenateMassRatio) * petrolAfr + oxygenateMassRatio * oxygenateAfr,
      oxygenateMassRatio,
    },
    assumptions: ['which oxygenate it is hardly matters: ethanol, methanol and ethers agree within 0.2 %'],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

export const oxygenatedPetrolSheet: SumSheet = {
  title: 'Petrol known by its oxygen content',
  formula: 'w = o/o_x; AFR_st = (1 − w)·AFR_b + w·AFR_x',
  symbols: {
    o: "oxygen, share of the blend's mass",
    o_x: "oxygen, share of the oxygenate's mass",
    'AFR_b, AFR_x': 'stoichiometric ratios of petrol and oxygenate',
  },
  sources: ['HEYWOOD'],
  range: 'up to 8 % oxygen by mass; not for nitro fuels',
};
