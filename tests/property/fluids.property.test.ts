import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  drainAndFill,
  drainNeeded,
  glycolForMassShare,
  mixTwo,
  oldLeft,
  systemVolume,
} from '../../src/calc/fluids/coolant-change.ts';
import {
  capForBoiling,
  glycolBoiling,
  glycolFreezing,
  massShare,
  volumeShare,
} from '../../src/calc/fluids/glycol.ts';
import { coolerDrop, coolerFlow } from '../../src/calc/fluids/oil-cooler.ts';
import { hotGrade } from '../../src/calc/fluids/oil-grade.ts';
import { laminarFlow, restrictorFlow } from '../../src/calc/fluids/oil-line.ts';
import { temperatureAt, viscosityAt } from '../../src/calc/fluids/oil-viscosity.ts';
import { viscosityIndex } from '../../src/calc/fluids/viscosity-index.ts';
import { waterBoiling } from '../../src/calc/fluids/water-boiling.ts';
import { lineFlow } from '../../src/calc/fuel/fuel-line.ts';
import { glycols, indexRows, oilGrades } from '../../src/tables/fluids.ts';
import { between, check, near } from '../support/laws.ts';

const anyGlycol = fc.constantFrom(...glycols);

describe('water', () => {
  it.each([
    [0.1, 372.755_919],
    [1, 453.035_632],
  ])('boils under %d MPa at the printed check value (IAPWS-IF97 table 36)', (mpa, kelvin) => {
    near(waterBoiling({ pressureKpa: mpa * 1000 }).value.boilingC + 273.15, kelvin, 5e-7);
  });

  it('boils later under more pressure', () => {
    check([between(5, 990), between(0.01, 10)], (pressureKpa, more) => {
      const at = (kpa: number) => waterBoiling({ pressureKpa: kpa }).value.boilingC;
      expect(at(pressureKpa + more)).toBeGreaterThan(at(pressureKpa));
    });
  });
});

describe('coolant', () => {
  it('goes to and fro between shares by mass and by volume', () => {
    check([anyGlycol, between(0, 1)], ({ densityKgM3 }, volumeRatio) => {
      const { massRatio } = massShare({ volumeRatio, densityKgM3 }).value;
      expect(massRatio).toBeGreaterThanOrEqual(volumeRatio - 1e-12);
      near(volumeShare({ massRatio, densityKgM3 }).value.volumeRatio, volumeRatio, 1e-12);
    });
  });

  it('freezes sooner and boils later the more glycol is in it', () => {
    check([anyGlycol, between(0, 0.5), between(0.001, 0.07)], (glycol, volumeRatio, more) => {
      const freezes = (share: number) => glycolFreezing({ volumeRatio: share, glycol }).value.freezingC;
      const boils = (share: number) =>
        glycolBoiling({ volumeRatio: share, glycol, pressureKpa: 200 }).value.boilingC;
      expect(freezes(volumeRatio + more)).toBeLessThan(freezes(volumeRatio));
      expect(boils(volumeRatio + more)).toBeGreaterThanOrEqual(boils(volumeRatio));
    });
  });

  it('reaches the share that the drained amount was for', () => {
    check([between(2, 20), between(0, 1), between(0, 1), between(0, 1)], (systemL, from, fresh, part) => {
      const to = from + (fresh - from) * part;
      fc.pre(Math.abs(fresh - from) > 1e-3);
      const given = { systemL, fromRatio: from, freshRatio: fresh };
      const { drainL } = drainNeeded({ ...given, toRatio: to }).value;
      near(drainAndFill({ ...given, drainedL: Math.min(drainL, systemL) }).value.shareRatio, to, 1e-9);
    });
  });

  it('keeps less of the old with each change', () => {
    check(
      [between(2, 20), between(0.05, 0.95), fc.integer({ min: 1, max: 19 })],
      (systemL, part, changes) => {
        const left = (times: number) =>
          oldLeft({ systemL, drainedL: systemL * part, changes: times }).value.oldRatio;
        expect(left(changes + 1)).toBeLessThan(left(changes));
        near(left(changes + 1) / left(changes), 1 - part, 1e-9);
      },
    );
  });

  it('mixed lies between the two it is mixed from', () => {
    const part = fc.record({ volumeL: between(0.1, 20), shareRatio: between(0, 1) });
    check([part, part], (one, other) => {
      const { shareRatio } = mixTwo(one, other).value;
      expect(shareRatio).toBeGreaterThanOrEqual(Math.min(one.shareRatio, other.shareRatio) - 1e-12);
      expect(shareRatio).toBeLessThanOrEqual(Math.max(one.shareRatio, other.shareRatio) + 1e-12);
    });
  });

  it('has the share by mass that its glycol was measured for', () => {
    check([between(1, 30), between(0.05, 0.95)], (systemL, massRatio) => {
      const { glycolL } = glycolForMassShare({ systemL, massRatio, relativeDensity: 1113 / 998.2 }).value;
      near(massShare({ volumeRatio: glycolL / systemL, densityKgM3: 1113 }).value.massRatio, massRatio, 1e-9);
    });
  });
});

describe('oil', () => {
  const oil = fc
    .record({ at100Mm2S: between(4, 20), ratio: between(5, 12) })
    .map(({ at100Mm2S, ratio }) => ({ at100Mm2S, at40Mm2S: at100Mm2S * ratio }));

  it('has the viscosities of its data sheet, and gets thinner as it warms', () => {
    check([oil, between(-20, 140)], (given, temperatureC) => {
      const at = (celsius: number) => viscosityAt({ ...given, temperatureC: celsius }).value.viscosityMm2S;
      near(at(40) / given.at40Mm2S, 1, 1e-5);
      near(at(100) / given.at100Mm2S, 1, 1e-5);
      expect(at(temperatureC + 1)).toBeLessThan(at(temperatureC));
    });
  });

  it('has a viscosity at the temperature found for it', () => {
    check([oil, between(-20, 140)], (given, temperatureC) => {
      const { viscosityMm2S } = viscosityAt({ ...given, temperatureC }).value;
      fc.pre(viscosityMm2S >= 2);
      near(temperatureAt({ ...given, viscosityMm2S }).value.temperatureC, temperatureC, 0.01);
    });
  });

  it('has the higher index the less it thickens in the cold, without a step at 100', () => {
    check([between(4, 60), between(0.3, 1.2), between(0.001, 0.2)], (at100Mm2S, part, less) => {
      const { h } = viscosityIndex({ at100Mm2S, at40Mm2S: at100Mm2S * 6 }, indexRows).value;
      fc.pre(h * (part - less) > at100Mm2S);
      const at = (at40Mm2S: number) => viscosityIndex({ at100Mm2S, at40Mm2S }, indexRows).value.index;
      expect(at(h * (part - less))).toBeGreaterThan(at(h * part));
      near(at(h * (1 - 1e-9)), 100, 1e-4);
      near(at(h * (1 + 1e-9)), 100, 1e-4);
    });
  });

  it('goes on from the table of L and H without a step', () => {
    const { l, h } = indexRows.at(-1) ?? { l: Number.NaN, h: Number.NaN };
    const limitsAt = (at100Mm2S: number) =>
      viscosityIndex({ at100Mm2S, at40Mm2S: at100Mm2S * 10 }, indexRows).value;
    // ASTM D2270 table 1 at 21 mm²/s, then where one parabola takes over from another
    expect(limitsAt(21.000001).l / l).toBeCloseTo(1, 2);
    expect(limitsAt(21.000001).h / h).toBeCloseTo(1, 2);
    for (const join of [22, 28, 40, 55]) {
      expect(limitsAt(join + 1e-9).l / limitsAt(join).l).toBeCloseTo(1, 2);
      expect(limitsAt(join + 1e-9).h / limitsAt(join).h).toBeCloseTo(1, 2);
    }
  });

  it('is never of a thinner grade for being thicker', () => {
    check([between(4, 26), between(0.001, 3)], (at100Mm2S, more) => {
      fc.pre(at100Mm2S + more < 26.1);
      const at = (v: number) => hotGrade({ at100Mm2S: v }, oilGrades.hot).value.grade.grade;
      expect(at(at100Mm2S + more)).toBeGreaterThanOrEqual(at(at100Mm2S));
    });
  });

  it('flows by the law of the line either way, where it is laminar', () => {
    check(
      [between(2, 20), between(100, 5000), between(50, 500), between(1, 100)],
      (boreMm, lengthMm, nu, dropKpa) => {
        const fluid = { boreMm, lengthMm, densityKgM3: 850 };
        const { flowLMin, reynolds } = laminarFlow({ ...fluid, dropKpa, viscosityMpaS: nu * 0.85 }).value;
        fc.pre(reynolds < 2300 && flowLMin >= 0.001 && flowLMin < 900);
        const back = lineFlow({ ...fluid, flowCcMin: flowLMin * 1000, viscosityMm2S: nu }).value;
        near(back.dropKpa / dropKpa, 1, 1e-9);
        near(back.reynolds / reynolds, 1, 1e-9);
      },
    );
  });

  it('drives through a cooler what costs the same pressure, in either regime', () => {
    check(
      [between(2, 5), between(100, 1000), between(5, 60), between(20, 300)],
      (boreMm, lengthMm, viscosityMm2S, dropKpa) => {
        const cooler = { tubes: 7, boreMm, lengthMm, viscosityMm2S, densityKgM3: 850 };
        const { flowCcMin, reynolds } = coolerFlow({ ...cooler, dropKpa }).value;
        // at the change of regime the drop leaps, and the flow below the leap is given
        fc.pre(reynolds < 2290 || reynolds > 2310);
        near(coolerDrop({ ...cooler, flowCcMin }).value.dropKpa / dropKpa, 1, 1e-6);
      },
    );
  });

  it('finds the volume of a system from the change that it makes', () => {
    check([between(2, 30), between(0.1, 0.9), between(0, 0.4)], (systemL, part, fromRatio) => {
      const drainedL = systemL * part;
      const afterRatio = drainAndFill({ systemL, fromRatio, drainedL, freshRatio: 1 }).value.shareRatio;
      near(systemVolume({ drainedL, fromRatio, afterRatio, freshRatio: 1 }).value.systemL, systemL, 1e-9);
    });
  });

  it('boils under the cap it asks for at the point that was wanted', () => {
    check(
      [between(0, 0.5), between(1, 250), between(70, 103), anyGlycol],
      (volumeRatio, capKpa, atmosphereKpa, glycol) => {
        const { boilingC } = glycolBoiling({
          volumeRatio,
          glycol,
          pressureKpa: atmosphereKpa + capKpa,
        }).value;
        near(capForBoiling({ volumeRatio, glycol, boilingC, atmosphereKpa }).value.capKpa, capKpa, 1e-6);
      },
    );
  });

  it('passes a restrictor by the square of the hole and the root of the pressure', () => {
    check([between(0.5, 4), between(50, 400)], (boreMm, dropKpa) => {
      const flow = (bore: number, kpa: number) =>
        restrictorFlow({ boreMm: bore, dropKpa: kpa, densityKgM3: 840, viscosityMm2S: 12 }).value.flowLMin;
      near(flow(2 * boreMm, dropKpa) / flow(boreMm, dropKpa), 4, 1e-9);
      near(flow(boreMm, 4 * dropKpa) / flow(boreMm, dropKpa), 2, 1e-9);
    });
  });
});
