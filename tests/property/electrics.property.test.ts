import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeBattery } from '../../src/calc/electrics/battery.ts';
import { classResistance, copperResistance } from '../../src/calc/electrics/copper.ts';
import { crankingCurrent, crankingVoltage } from '../../src/calc/electrics/cranking.ts';
import { dividerResistance, dividerVoltage } from '../../src/calc/electrics/divider.ts';
import { linearReading, linearVoltage } from '../../src/calc/electrics/linear-sensor.ts';
import { platinumResistance, platinumTemperature } from '../../src/calc/electrics/platinum.ts';
import {
  betaOfPoints,
  curveResistance,
  curveTemperature,
  fitThermistor,
  thermistorResistance,
  thermistorTemperature,
} from '../../src/calc/electrics/thermistor.ts';
import { thermocoupleTemperature, thermocoupleVoltage } from '../../src/calc/electrics/thermocouple.ts';
import { areaForDrop, cableDrop } from '../../src/calc/electrics/voltage-drop.ts';
import { gaugeOfArea, wireOfGauge } from '../../src/calc/electrics/wire-gauge.ts';
import { UserError } from '../../src/core/user-error.ts';
import { battery } from '../../src/tables/battery.ts';
import { conductors } from '../../src/tables/conductors.ts';
import { between, check, near } from '../support/laws.ts';

describe('cables', () => {
  it('finds the gauge of the area it has', () => {
    check([between(-3, 40)], (gaugeNumber) => {
      near(
        gaugeOfArea({ areaMm2: wireOfGauge({ gaugeNumber }).value.areaMm2 }).value.gaugeNumber,
        gaugeNumber,
        1e-9,
      );
    });
  });

  it('keeps the drop asked for in the size it names', () => {
    check(
      [between(0.5, 8), between(1, 300), between(0.3, 2), fc.constantFrom(1 as const, 2 as const)],
      (lengthM, currentA, dropV, ways) => {
        const needed = (ways * lengthM * currentA) / 58 / dropV;
        fc.pre(needed < 230 && needed > 0.05);
        const { areaMm2, sizeMm2 } = areaForDrop({ lengthM, currentA, dropV, ways }, conductors).value;
        near(cableDrop({ areaMm2, lengthM, currentA, ways }).value.dropV, dropV, 1e-9);
        expect(cableDrop({ areaMm2: sizeMm2, lengthM, currentA, ways }).value.dropV).toBeLessThanOrEqual(
          dropV + 1e-9,
        );
      },
    );
  });

  it.each(conductors)('$areaMm2 mm² of the standard is 2 to 21 % worse than solid copper', ({ areaMm2 }) => {
    const real = classResistance({ areaMm2, lengthM: 1 }, conductors).value.resistanceOhm;
    const ideal = copperResistance({ areaMm2, lengthM: 1 }).value.resistanceOhm;
    expect(real / ideal).toBeGreaterThan(1.02);
    expect(real / ideal).toBeLessThan(1.21);
  });
});

describe('cranking', () => {
  it('draws the current whose power the starter takes, and more through more resistance', () => {
    check([between(0.4, 2), between(0.002, 0.006), between(0, 0.004)], (powerKw, internalOhm, cableOhm) => {
      const given = { restV: 12.6, internalOhm, cableOhm, powerKw, efficiencyRatio: 0.55 };
      fc.pre(powerKw / 0.55 < (0.98 * 12.6 ** 2) / 4 / (internalOhm + cableOhm) / 1000);
      const { currentA, starterV, batteryV } = crankingCurrent(given).value;
      near((currentA * starterV) / 1000, powerKw / 0.55, 1e-6);
      near(crankingVoltage({ ...given, currentA }).value.starterV, starterV, 1e-9);
      expect(starterV).toBeLessThanOrEqual(batteryV);
    });
  });

  it('refuses a starter that battery and cable cannot turn', () => {
    const sum = () =>
      crankingCurrent({ restV: 12, internalOhm: 0.02, cableOhm: 0.02, powerKw: 2, efficiencyRatio: 0.5 });
    expect(sum).toThrow(UserError);
    expect(sum).toThrow(/at most 0\.45 kW/);
  });
});

describe('sensors', () => {
  it('goes to and fro between reading and voltage on a line', () => {
    check(
      [between(-100, 100), between(1, 900), between(0.501, 4.499), between(4.8, 5.2)],
      (low, span, at, supplyV) => {
        const sensor = { lowReading: low, highReading: low + span, supplyV };
        const voltageV = (at * supplyV) / 5;
        const { reading } = linearReading({ ...sensor, voltageV }).value;
        near(linearVoltage({ ...sensor, reading }).value.voltageV, voltageV, 1e-9);
      },
    );
  });

  it('goes to and fro between resistance and temperature of a thermistor', () => {
    const sensor = fc.record({ r25: between(500, 50_000), betaK: between(2800, 4500) });
    check([sensor, between(-35, 140)], ({ r25, betaK }, temperatureC) => {
      const at = { resistanceOhm: r25, temperatureC: 25 };
      const { resistanceOhm } = thermistorResistance({ at, betaK, temperatureC }).value;
      near(thermistorTemperature({ at, betaK, resistanceOhm }).value.temperatureC, temperatureC, 1e-6);
      fc.pre(Math.abs(temperatureC - 25) > 6);
      near(betaOfPoints(at, { resistanceOhm, temperatureC }).value.betaK, betaK, 1e-5);
    });
  });

  it('passes through the three points it was fitted to, and is undone', () => {
    check([between(500, 50_000), between(2800, 4500), between(-35, 140)], (r25, betaK, temperatureC) => {
      const at = { resistanceOhm: r25, temperatureC: 25 };
      const point = (celsius: number) => ({
        temperatureC: celsius,
        resistanceOhm: thermistorResistance({ at, betaK, temperatureC: celsius }).value.resistanceOhm,
      });
      const points = [point(-10), point(30), point(95)] as const;
      const curve = fitThermistor([points[2], points[0], points[1]]).value;
      for (const each of points)
        near(curveTemperature(curve, each).value.temperatureC, each.temperatureC, 1e-6);
      const { resistanceOhm } = curveResistance(curve, { temperatureC }).value;
      near(curveTemperature(curve, { resistanceOhm }).value.temperatureC, temperatureC, 1e-6);
    });
  });

  it('goes to and fro through a pull-up, platinum and a thermocouple', () => {
    check([between(10, 200_000), between(100, 20_000)], (resistanceOhm, pullUpOhm) => {
      const { voltageV } = dividerVoltage({ supplyV: 5, pullUpOhm, resistanceOhm }).value;
      fc.pre(voltageV < 4.99);
      const back = dividerResistance({ supplyV: 5, pullUpOhm, voltageV }).value.resistanceOhm;
      near(back / resistanceOhm, 1, 1e-9);
    });
    check([between(-190, 840)], (temperatureC) => {
      const { resistanceOhm } = platinumResistance({ temperatureC, zeroOhm: 1000 }).value;
      near(platinumTemperature({ resistanceOhm, zeroOhm: 1000 }).value.temperatureC, temperatureC, 1e-5);
    });
    check([between(-190, 1370), between(-20, 60)], (temperatureC, coldJunctionC) => {
      const { voltageMv } = thermocoupleVoltage({ temperatureC, coldJunctionC }).value;
      near(thermocoupleTemperature({ voltageMv, coldJunctionC }).value.temperatureC, temperatureC, 1e-5);
    });
  });

  it('meets itself at 0 °C, where the two halves of the thermocouple function join', () => {
    const at = (temperatureC: number) =>
      thermocoupleVoltage({ temperatureC, coldJunctionC: 0 }).value.voltageMv;
    near(at(-1e-9), 0, 1e-6);
    near(at(0), 0, 1e-6);
  });
});

describe('a battery', () => {
  it('is never called fuller at a lower voltage', () => {
    check([between(11, 12.9), between(0.001, 0.3)], (restV, less) => {
      const charge = (voltage: number) => judgeBattery({ restV: voltage }, battery).value.chargeRatio ?? -1;
      expect(charge(restV - less)).toBeLessThanOrEqual(charge(restV));
    });
  });
});
