import { describe, expect, it } from 'vitest';
import { engineAirFlow, volumetricEfficiency } from '../../../../src/calc/air/engine-air.ts';
import { boostedCharge } from '../../../../src/calc/air/intercooler.ts';
import { classResistance } from '../../../../src/calc/electrics/copper.ts';
import {
  curveResistance,
  curveTemperature,
  fitThermistor,
  thermistorTemperature,
} from '../../../../src/calc/electrics/thermistor.ts';
import { areaForDrop } from '../../../../src/calc/electrics/voltage-drop.ts';
import { UserError } from '../../../../src/core/user-error.ts';
import { conductors } from '../../../../src/tables/conductors.ts';

const at = (resistanceOhm: number, temperatureC: number) => ({ resistanceOhm, temperatureC });
const CURVE = fitThermistor([at(32_128, 0), at(9814, 25), at(3542, 50)]).value;

describe('what no cable or sensor can be', () => {
  it.each([
    [
      'a size no standard has',
      () => classResistance({ areaMm2: 3, lengthM: 1 }, conductors),
      'is no standard size',
    ],
    [
      'a cable thicker than all',
      () => areaForDrop({ lengthM: 10, currentA: 1500, dropV: 0.1, ways: 1 }, conductors),
      'It takes 2587 mm² of copper, more than the 240 mm²',
    ],
    [
      'three points one of which is misread',
      () => fitThermistor([at(10_000, 0), at(7118, 50), at(268, 100)]),
      'No thermistor has these three points',
    ],
    [
      'a temperature far off the curve',
      () => curveResistance({ ...CURVE, a: 0.02 }, { temperatureC: 20 }),
      'outside this thermistor',
    ],
    [
      'a resistance beyond the curve altogether',
      () => curveTemperature({ ...CURVE, a: -1 }, at(5000, 0)),
      'The temperature is',
    ],
    [
      'a resistance beyond its B value',
      () => thermistorTemperature({ at: at(2500, 20), betaK: 500, resistanceOhm: 1 }),
      'The temperature is',
    ],
    [
      'a resistance that is no temperature',
      () => curveTemperature(CURVE, { resistanceOhm: 1 }),
      'The temperature is',
    ],
  ])('refuses %s', (_, sum, message) => {
    expect(sum).toThrow(UserError);
    expect(sum).toThrow(message);
  });

  it('reads tinned and plain copper apart', () => {
    const of = (tinned: boolean) =>
      classResistance({ areaMm2: 25, lengthM: 1, tinned }, conductors).value.ohmPerKm;
    expect([of(false), of(true)]).toEqual([0.78, 0.795]);
  });

  it('fits the same curve whatever the order of its points', () => {
    const other = fitThermistor([at(3542, 50), at(32_128, 0), at(9814, 25)]).value;
    expect(other.a).toBeCloseTo(CURVE.a, 12);
    expect(other.c).toBeCloseTo(CURVE.c, 15);
  });
});

describe('what air can hardly be', () => {
  it('warns of a volumetric efficiency that is no breathing', () => {
    const { caveats } = volumetricEfficiency({
      massFlowGs: 200,
      displacementL: 2,
      speedRpm: 6000,
      pressureKpa: 100,
      temperatureC: 25,
    });
    expect(caveats.join(' ')).toContain('check that the pressure is absolute');
  });

  it('warns where boost costs more than it gives', () => {
    const { caveats } = boostedCharge({
      inletKpa: 100,
      inletC: 25,
      pressureRatio: 1.05,
      efficiencyRatio: 0.5,
      effectivenessRatio: 0,
      chargeLossKpa: 10,
    });
    expect(caveats.join(' ')).toContain('thinner than the air outside');
  });

  it('says which number is out of range, and the range', () => {
    const sum = () =>
      engineAirFlow({ displacementL: 2, speedRpm: 6000, veRatio: 3, pressureKpa: 100, temperatureC: 25 });
    expect(sum).toThrow('The volumetric efficiency is 300 %; this sum takes 5 to 160 %.');
  });
});
