import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import cases from '../../data/reference/engine/stoich.json' with { type: 'json' };
import { blendByVolume, type FuelProperties } from '../../src/calc/fuel/blend.ts';
import { knownFuel } from '../../src/calc/fuel/known-fuel.ts';
import { mixtureOf, readGauge } from '../../src/calc/fuel/lambda.ts';
import { stoichiometryOfFormula, stoichiometryOfMass } from '../../src/calc/fuel/stoichiometric.ts';
import { mixTank } from '../../src/calc/fuel/tank.ts';
import { readFuelName } from '../../src/phrases/fuel-name.ts';
import { fuelNames, fuelRows } from '../../src/tables/fuels.ts';
import { checkEngineCases, type Given } from '../support/engine-cases.ts';

const part = (
  densityKgM3: number,
  stoichiometricAfr: number,
  alcohol: boolean,
  oxygenRatio = 0,
): FuelProperties => ({
  densityKgM3,
  stoichiometricAfr,
  oxygenRatio,
  calorificKjPerKg: 40_000,
  alcoholRatio: alcohol ? 1 : 0,
});

/** Petrol with so much alcohol by volume, each as the case states it. */
function blended(given: Given, volumeRatio: number, alcoholOxygenRatio = 0) {
  const { rhoGasoline = 0, rhoAlcohol = 0 } = given;
  return blendByVolume([
    { volumeRatio, fuel: part(rhoAlcohol, given['afrAlcohol'] ?? 0, true, alcoholOxygenRatio) },
    { volumeRatio: 1 - volumeRatio, fuel: part(rhoGasoline, given['afrGasoline'] ?? 0, false) },
  ]).value;
}

const printed = new Set(['published-values', 'blend-published']);
const computed = cases.filter(({ group }) => !printed.has(group));

checkEngineCases('stoichiometry and λ', computed, 64, {
  'stoich.formula': ({
    C: carbon = 0,
    H: hydrogen = 0,
    O: oxygen = 0,
    N: nitrogen = 0,
    airMassPerMolO2 = 0,
  }) => ({
    afr: stoichiometryOfFormula({ carbon, hydrogen, oxygen, nitrogen, airPerMolO2G: airMassPerMolO2 }).value
      .stoichiometricAfr,
  }),
  'stoich.mass': ({ c: carbonRatio = 0, h: hydrogenRatio = 0, o: oxygenRatio = 0, airMassPerMolO2 = 0 }) => ({
    afr: stoichiometryOfMass({ carbonRatio, hydrogenRatio, oxygenRatio, airPerMolO2G: airMassPerMolO2 }).value
      .stoichiometricAfr,
  }),
  'stoich.lambda': ({ afr = 0, afrStoich = 0 }) => {
    const { lambdaRatio, phiRatio, excessAirRatio } = mixtureOf({ afr, stoichiometricAfr: afrStoich }).value;
    return { lambda: lambdaRatio, phi: phiRatio, excessAir: excessAirRatio * 100, far: 1 / afr };
  },
  'stoich.afrFromLambda': ({ lambda = 0, afrStoich = 0 }) => ({
    afr: mixtureOf({ lambdaRatio: lambda, stoichiometricAfr: afrStoich }).value.afr,
  }),
  'stoich.afrFromPhi': ({ phi = 0, afrStoich = 0 }) => ({
    afr: mixtureOf({ phiRatio: phi, stoichiometricAfr: afrStoich }).value.afr,
  }),
  'stoich.gauge': ({ display = 0, gaugeStoich = 0, fuelStoich = 0 }) => {
    const { lambdaRatio, afr } = readGauge({
      displayedAfr: display,
      gaugeAfr: gaugeStoich,
      stoichiometricAfr: fuelStoich,
    }).value;
    return { lambda: lambdaRatio, afrTrue: afr };
  },
  'stoich.blend': (given) => {
    const { stoichiometricAfr, densityKgM3, massRatios } = blended(given, given['volFractionAlcohol'] ?? 0);
    return { afr: stoichiometricAfr, density: densityKgM3, massFractionAlcohol: massRatios[0] ?? Number.NaN };
  },
  'stoich.oxygen': ({ volFractionAlcohol = 0, rhoGasoline = 0, rhoAlcohol = 0, molarMassAlcohol = 0 }) => {
    const given = { rhoGasoline, rhoAlcohol, afrGasoline: 14.7, afrAlcohol: 9 };
    return { oxygen: 100 * blended(given, volFractionAlcohol, 15.999 / molarMassAlcohol).oxygenRatio };
  },
  'stoich.tank': (given) => {
    const { V1: first = 0, x1 = 0, V2: second = 0, x2 = 0 } = given;
    const { alcoholRatio } = mixTank(
      { volumeL: first, alcoholRatio: x1 },
      { volumeL: second, alcoholRatio: x2 },
    ).value;
    return { ethanolShare: alcoholRatio, afr: blended(given, alcoholRatio).stoichiometricAfr };
  },
});

/** What a book calls a fuel that is typed by another name here. */
const TYPED: Readonly<Record<string, string>> = { 'No. 2 diesel': 'diesel', 'premium gasoline': 'super' };
const Printed = z.object({
  id: z.string(),
  inputs: z.looseObject({ fuel: z.string() }),
  expected: z.object({ afr: z.object({ value: z.number() }) }),
  tolerance: z.object({ type: z.literal('abs'), value: z.number() }),
  source: z.string(),
});
const table = z.array(Printed).parse(cases.filter(({ group }) => printed.has(group)));

describe('the stoichiometric ratio of a fuel by name', () => {
  it('is compared with 15 printed values', () => expect(table).toHaveLength(15));

  it.each(table)('$id: $inputs.fuel as in $source', ({ inputs, expected, tolerance }) => {
    const read = readFuelName(TYPED[inputs.fuel] ?? inputs.fuel, fuelNames);
    if (read.verdict !== 'blend') throw new Error(`${inputs.fuel} was not read`);
    const { stoichiometricAfr } = knownFuel(fuelRows, read.parts).value;
    expect(Math.abs(stoichiometricAfr - expected.afr.value)).toBeLessThanOrEqual(tolerance.value);
  });
});
