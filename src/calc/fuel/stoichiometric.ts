import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** Standard atomic masses, abridged, g/mol (key IUPAC). */
export const ATOMIC_MASS = { carbon: 12.011, hydrogen: 1.008, oxygen: 15.999, nitrogen: 14.007 } as const;

/**
 * Grams of air that bring one mole of oxygen. The models in print differ by 0.7 %, so every answer says which it took.
 * `dry` is 4 × 34.56 with 3.773 mol of atmospheric nitrogen (key HEYWOOD), `standard` ISO 2533's 20.9476 % oxygen
 * (key ISO2533), `simple` O₂ + 3.76 N₂ (key HEYWOOD names it as the rounder convention).
 */
export const AIR_PER_MOL_O2_G = { dry: 138.24, standard: 138.2707, simple: 137.3306 } as const;

/** Atoms in a molecule, or per atom of carbon: petrol is CH1.87. */
export interface FuelFormula {
  readonly carbon: number;
  readonly hydrogen: number;
  readonly oxygen: number;
  readonly nitrogen: number;
}

/** Shares of the fuel's mass. */
export interface MassComposition {
  readonly carbonRatio: number;
  readonly hydrogenRatio: number;
  readonly oxygenRatio: number;
}

export interface Stoichiometry {
  readonly stoichiometricAfr: number;
  /** Share of the fuel's own mass that is oxygen. */
  readonly oxygenRatio: number;
}

/**
 * Stoichiometric air–fuel ratio of a molecule: AFR_st = (C + H/4 − O/2)·m_air/(12.011·C + 1.008·H + 15.999·O + 14.007·N).
 *
 * Source: balance of complete combustion, Heywood eqs. 3.5 and 3.6 (key HEYWOOD), atomic masses of key IUPAC. Valid: fuels
 * of C, H, O and N that need air. Not for: sulphur, additives, dissociation.
 * @throws UserError 'out-of-range' for negative atoms or a fuel that needs no air.
 */
export function stoichiometryOfFormula(
  fuel: FuelFormula & { readonly airPerMolO2G?: number },
): Calculation<Stoichiometry & { readonly molarMassG: number }> {
  const { carbon, hydrogen, oxygen, nitrogen, airPerMolO2G = AIR_PER_MOL_O2_G.dry } = fuel;
  for (const [what, value] of Object.entries({ carbon, hydrogen, oxygen, nitrogen })) {
    requireRange({ what: `The number of ${what} atoms`, value, min: 0, max: 200, unit: '' });
  }
  const molarMassG =
    carbon * ATOMIC_MASS.carbon +
    hydrogen * ATOMIC_MASS.hydrogen +
    oxygen * ATOMIC_MASS.oxygen +
    nitrogen * ATOMIC_MASS.nitrogen;
  const oxygenNeededMol = carbon + hydrogen / 4 - oxygen / 2;
  const stoichiometricAfr = (oxygenNeededMol * airPerMolO2G) / molarMassG;
  return {
    value: {
      stoichiometricAfr: burnable(stoichiometricAfr, airPerMolO2G),
      oxygenRatio: (oxygen * ATOMIC_MASS.oxygen) / molarMassG,
      molarMassG,
    },
    assumptions: [airModel(airPerMolO2G)],
    sources: ['HEYWOOD', 'IUPAC'],
    caveats: [],
  };
}

/**
 * Stoichiometric air–fuel ratio from shares by mass: AFR_st = (c/12.011 + h/4.032 − o/31.998)·m_air.
 *
 * Source and limits: as stoichiometryOfFormula (keys HEYWOOD, IUPAC). Valid: shares that add up to 0.9 to 1.01, so that an
 * ash or a rounding is allowed and a slip is not.
 * @throws UserError 'out-of-range' outside it.
 */
export function stoichiometryOfMass(
  fuel: MassComposition & { readonly airPerMolO2G?: number },
): Calculation<Stoichiometry> {
  const { carbonRatio, hydrogenRatio, oxygenRatio, airPerMolO2G = AIR_PER_MOL_O2_G.dry } = fuel;
  for (const [what, value] of Object.entries({ carbonRatio, hydrogenRatio, oxygenRatio })) {
    requireRange({ what: `The share of ${what.replace('Ratio', '')}`, value, min: 0, max: 1, unit: '' });
  }
  const sum = carbonRatio + hydrogenRatio + oxygenRatio;
  requireRange({ what: 'The sum of the shares', value: sum, min: 0.9, max: 1.01, unit: '' });
  const oxygenNeededMol =
    carbonRatio / ATOMIC_MASS.carbon +
    hydrogenRatio / (4 * ATOMIC_MASS.hydrogen) -
    oxygenRatio / (2 * ATOMIC_MASS.oxygen);
  return {
    value: { stoichiometricAfr: burnable(oxygenNeededMol * airPerMolO2G, airPerMolO2G), oxygenRatio },
    assumptions: [airModel(airPerMolO2G)],
    sources: ['HEYWOOD', 'IUPAC'],
    caveats: [],
  };
}

export const stoichiometrySheet: SumSheet = {
  title: 'Stoichiometric air–fuel ratio from composition',
  formula: 'AFR_st = (C + H/4 − O/2)·m_air/(12.011·C + 1.008·H + 15.999·O + 14.007·N)',
  symbols: {
    'C, H, O, N': 'atoms of each in the molecule',
    m_air: 'air that brings one mole of oxygen, 138.24 g (dry air) unless said otherwise',
    AFR_st: 'air for complete combustion per fuel, by mass',
  },
  sources: ['HEYWOOD', 'IUPAC'],
  range: 'fuels of carbon, hydrogen, oxygen and nitrogen; not for sulphur or additives',
};

function burnable(stoichiometricAfr: number, airPerMolO2G: number): number {
  requireRange(
    { what: 'The air per mole of oxygen', value: airPerMolO2G, min: 130, max: 145, unit: 'g' },
    { what: 'The stoichiometric air–fuel ratio', value: stoichiometricAfr, min: 0.5, max: 40, unit: '' },
  );
  return stoichiometricAfr;
}

const airModel = (airPerMolO2G: number): string =>
  `air with ${airPerMolO2G} g per mole of oxygen; the models in print differ by 0.7 %`;
