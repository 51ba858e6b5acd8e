import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airForPower, powerFromAir } from '../../src/calc/air/air-power.ts';
import { compressorEfficiency, compressorOutlet, pressureRatio } from '../../src/calc/air/boost.ts';
import { airDensity } from '../../src/calc/air/density.ts';
import { airFromFuel, engineAirFlow, volumetricEfficiency } from '../../src/calc/air/engine-air.ts';
import {
  boostedCharge,
  intercoolerEffectiveness,
  intercoolerOutlet,
} from '../../src/calc/air/intercooler.ts';
import { standardAtmosphere } from '../../src/calc/air/standard-atmosphere.ts';
import { clearanceForRatio, deckCut, ratioOf } from '../../src/calc/geometry/compression-ratio.ts';
import { boreForDisplacement, displacement } from '../../src/calc/geometry/displacement.ts';
import { effectiveRatio } from '../../src/calc/geometry/effective-ratio.ts';
import { meanPistonSpeed, pistonTravel, speedForPistonSpeed } from '../../src/calc/geometry/piston-motion.ts';
import {
  meanEffectivePressure,
  powerOfTorque,
  torqueForMeanPressure,
  torqueOfPower,
} from '../../src/calc/geometry/torque.ts';
import { UserError } from '../../src/core/user-error.ts';

const SETTINGS = {
  seed: Number(process.env['FC_SEED'] ?? 20_261),
  numRuns: Number(process.env['FC_RUNS'] ?? 300),
};
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const check = <Values extends [unknown, ...unknown[]]>(
  arbitraries: { [Key in keyof Values]: fc.Arbitrary<Values[Key]> },
  law: (...values: Values) => void,
) => fc.assert(fc.property(...arbitraries, law), SETTINGS);
/** Equal to the last digits a chain of floating-point sums leaves right. */
const same = (ours: number, theirs: number) =>
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(theirs)));

describe('air', () => {
  const engine = [between(0.5, 8), between(500, 9000), between(30, 300), between(-20, 120)] as const;
  const of = ([displacementL, speedRpm, pressureKpa, temperatureC]: readonly [
    number,
    number,
    number,
    number,
  ]) => ({
    displacementL,
    speedRpm,
    pressureKpa,
    temperatureC,
  });

  it('gives the volumetric efficiency back from the flow it made', () => {
    check([fc.tuple(...engine), between(0.2, 1.25)], (values, veRatio) => {
      const { massFlowGs } = engineAirFlow({ ...of(values), veRatio }).value;
      same(volumetricEfficiency({ ...of(values), massFlowGs }).value.veRatio, veRatio);
    });
  });

  it('breathes more with more of anything but heat', () => {
    check([fc.tuple(...engine), between(0.2, 1)], (values, veRatio) => {
      const given = { ...of(values), veRatio };
      const flow = (changed: Partial<typeof given>) =>
        engineAirFlow({ ...given, ...changed }).value.massFlowGs;
      const base = flow({});
      expect(flow({ speedRpm: given.speedRpm * 1.1 })).toBeGreaterThan(base);
      expect(flow({ displacementL: given.displacementL * 1.1 })).toBeGreaterThan(base);
      expect(flow({ pressureKpa: given.pressureKpa * 1.1 })).toBeGreaterThan(base);
      expect(flow({ temperatureC: given.temperatureC + 10 })).toBeLessThan(base);
    });
  });

  it('makes the power that its air is for, and finds the air from the fuel', () => {
    const mixture = fc.record({
      lambdaRatio: between(0.6, 1.5),
      stoichiometricAfr: between(6, 17),
      bsfcGPerKwh: between(200, 700),
    });
    check([between(5, 900), mixture], (powerKw, burn) => {
      const { massFlowGs, fuelFlowGs } = airForPower({ powerKw, ...burn }).value;
      same(powerFromAir({ massFlowGs, ...burn }).value.powerKw, powerKw);
      same(airFromFuel({ fuelFlowGs, ...burn }).value.massFlowGs, massFlowGs);
    });
  });

  it('thins with height, and humid air is lighter than dry', () => {
    check([between(-600, 10_900), between(1, 50)], (altitudeM, step) => {
      const [low, high] = [altitudeM, altitudeM + step].map(
        (each) => standardAtmosphere({ altitudeM: each }).value,
      );
      expect(high?.pressureKpa).toBeLessThan(low?.pressureKpa ?? 0);
      expect(high?.densityKgM3).toBeLessThan(low?.densityKgM3 ?? 0);
    });
    check(
      [between(60, 110), between(-10, 50), between(0.05, 1)],
      (pressureKpa, temperatureC, humidityRatio) => {
        const dry = airDensity({ pressureKpa, temperatureC }).value.densityKgM3;
        expect(airDensity({ pressureKpa, temperatureC, humidityRatio }).value.densityKgM3).toBeLessThan(dry);
      },
    );
  });
});

describe('boost', () => {
  it('finds the efficiency that heated the air, and the effectiveness that cooled it', () => {
    check(
      [between(-10, 60), between(1.05, 4), between(0.4, 0.95), between(0.05, 0.98)],
      (inletC, ratio, efficiencyRatio, effectivenessRatio) => {
        const { outletC, isentropicC } = compressorOutlet({
          inletC,
          pressureRatio: ratio,
          efficiencyRatio,
        }).value;
        expect(isentropicC).toBeLessThan(outletC);
        fc.pre(outletC - inletC > 6 && outletC < 400);
        same(
          compressorEfficiency({ inletC, outletC, pressureRatio: ratio }).value.efficiencyRatio,
          efficiencyRatio,
        );
        const cooled = intercoolerOutlet({ inletC: outletC, coolantC: inletC, effectivenessRatio }).value
          .outletC;
        expect(cooled).toBeLessThan(outletC);
        same(
          intercoolerEffectiveness({ inletC: outletC, outletC: cooled, coolantC: inletC }).value
            .effectivenessRatio,
          effectivenessRatio,
        );
      },
    );
  });

  it('asks a higher pressure ratio the thinner the air and the greater the losses', () => {
    check([between(60, 104), between(5, 250), between(0.5, 10)], (atmosphereKpa, boostKpa, lossKpa) => {
      const of = (more: object) => pressureRatio({ atmosphereKpa, boostKpa, ...more }).value.pressureRatio;
      expect(of({ atmosphereKpa: atmosphereKpa - 5 })).toBeGreaterThan(of({}));
      expect(of({ inletLossKpa: lossKpa })).toBeGreaterThan(of({}));
      expect(of({ chargeLossKpa: lossKpa })).toBeGreaterThan(of({}));
    });
  });

  it('never gains density beyond the pressure ratio, and a better cooler never loses any', () => {
    check(
      [between(1.1, 3.5), between(0.5, 0.9), between(0, 0.9)],
      (ratio, efficiencyRatio, effectivenessRatio) => {
        const gain = (more: number) =>
          boostedCharge({
            inletKpa: 100,
            inletC: 25,
            pressureRatio: ratio,
            efficiencyRatio,
            effectivenessRatio: effectivenessRatio + more,
            chargeLossKpa: 0,
          }).value.densityRatio;
        expect(gain(0)).toBeLessThanOrEqual(ratio + 1e-12);
        expect(gain(0.05)).toBeGreaterThan(gain(0));
      },
    );
  });
});

describe('engine geometry', () => {
  it('finds the bore of a displacement', () => {
    check(
      [between(40, 150), between(0.5, 1.6), fc.integer({ min: 1, max: 16 })],
      (boreMm, strokeRatio, cylinders) => {
        const { displacementL } = displacement({ boreMm, strokeMm: boreMm * strokeRatio, cylinders }).value;
        fc.pre(displacementL <= 30);
        same(boreForDisplacement({ displacementL, cylinders, strokeRatio }).value.boreMm, boreMm);
      },
    );
  });

  it('finds the clearance of a ratio, and a cut raises it', () => {
    check([between(100, 900), between(7, 14)], (sweptCm3, ratio) => {
      const { clearanceCm3 } = clearanceForRatio({ sweptCm3, compressionRatio: ratio }).value;
      same(ratioOf({ sweptCm3, clearanceCm3 }).value.compressionRatio, ratio);
    });
    check([between(70, 110), between(60, 110), between(0.05, 1)], (boreMm, strokeMm, cutMm) => {
      const { ratioBefore, ratioAfter } = deckCut({ boreMm, strokeMm, clearanceCm3: 70, cutMm }).value;
      expect(ratioAfter).toBeGreaterThan(ratioBefore);
    });
  });

  it('keeps the static ratio without boost', () => {
    check([between(6, 14), between(60, 105)], (compressionRatio, atmosphereKpa) => {
      same(
        effectiveRatio({ compressionRatio, boostKpa: 0, atmosphereKpa }).value.effectiveRatio,
        compressionRatio,
      );
    });
  });

  it('undoes piston speed, mean pressure and torque', () => {
    check([between(40, 200), between(500, 15_000)], (strokeMm, speedRpm) => {
      const { speedMs } = meanPistonSpeed({ strokeMm, speedRpm }).value;
      fc.pre(speedMs >= 0.5 && speedMs <= 40);
      same(speedForPistonSpeed({ strokeMm, speedMs }).value.speedRpm, speedRpm);
    });
    check([between(10, 1500), between(0.5, 8), between(600, 12_000)], (torqueNm, displacementL, speedRpm) => {
      const { bmepKpa } = meanEffectivePressure({ torqueNm, displacementL }).value;
      fc.pre(bmepKpa >= 10 && bmepKpa <= 8000);
      same(torqueForMeanPressure({ bmepKpa, displacementL }).value.torqueNm, torqueNm);
      const { powerKw } = powerOfTorque({ torqueNm, speedRpm }).value;
      fc.pre(powerKw >= 0.1 && powerKw <= 5000);
      same(torqueOfPower({ powerKw, speedRpm }).value.torqueNm, torqueNm);
    });
  });

  it('moves the piston by its stroke and no further, the same either side of the dead centre', () => {
    check([between(40, 120), between(1.3, 2.5), between(0, 180)], (strokeMm, rodRatio, angleDeg) => {
      const travel = (angle: number) =>
        pistonTravel({ strokeMm, rodMm: strokeMm * rodRatio, angleDeg: angle }).value.travelMm;
      expect(travel(angleDeg)).toBeGreaterThanOrEqual(-1e-9);
      expect(travel(angleDeg)).toBeLessThanOrEqual(strokeMm + 1e-9);
      same(travel(180), strokeMm);
      same(travel(-angleDeg), travel(angleDeg));
    });
  });
});

describe('numbers no engine has', () => {
  it.each([
    ['a height above the troposphere', () => standardAtmosphere({ altitudeM: 12_000 })],
    ['a compressor that cools', () => compressorEfficiency({ inletC: 30, outletC: 20, pressureRatio: 2 })],
    ['a chamber of nothing', () => ratioOf({ sweptCm3: 500, clearanceCm3: 0 })],
    ['not a number', () => displacement({ boreMm: Number.NaN, strokeMm: 80, cylinders: 4 })],
  ])('refuses %s and says the range', (_, sum) => {
    expect(sum).toThrow(UserError);
    expect(sum).toThrow(/this sum takes .* to /);
  });
});
