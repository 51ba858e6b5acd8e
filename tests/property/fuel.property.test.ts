import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellCorrection } from '../../src/calc/fuel/cell-correction.ts';
import { deliveredFlow } from '../../src/calc/fuel/dead-time.ts';
import { fuelChange, pulseAfterChange } from '../../src/calc/fuel/fuel-change.ts';
import { boreForVelocity, lineFlow } from '../../src/calc/fuel/fuel-line.ts';
import { gPerKwhFromLbPerHpH, lbPerHpHFromGPerKwh } from '../../src/calc/fuel/fuel-units.ts';
import { idlePulse } from '../../src/calc/fuel/idle.ts';
import { injectorDuty, longestPulse } from '../../src/calc/fuel/injector-duty.ts';
import { flowAtPressure, pressureForFlow } from '../../src/calc/fuel/injector-pressure.ts';
import { injectorForPower, powerFromInjectors } from '../../src/calc/fuel/injector-size.ts';
import { knownFuel, oxygenFuel } from '../../src/calc/fuel/known-fuel.ts';
import { mixtureOf } from '../../src/calc/fuel/lambda.ts';
import { matchInjectors } from '../../src/calc/fuel/match.ts';
import { stoichiometryOfFormula, stoichiometryOfMass } from '../../src/calc/fuel/stoichiometric.ts';
import { mixTank, topUpFor } from '../../src/calc/fuel/tank.ts';
import { onCurve } from '../../src/calc/fuel/typed-curve.ts';
import { fuelRows } from '../../src/tables/fuels.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const share = between(0.001, 0.999);
const blend = (id: string, volumeRatio: number) =>
  knownFuel(fuelRows, [
    { id, volumeRatio },
    { id: 'petrol', volumeRatio: 1 - volumeRatio },
  ]).value;
const set = fc.record({
  injectors: fc.integer({ min: 1, max: 16 }),
  dutyRatio: between(0.3, 1),
  bsfcGPerKwh: between(200, 900),
  densityKgM3: between(680, 850),
  drivelineLossRatio: between(0, 0.3),
});

describe('fuels', () => {
  it('has a ratio between those of its parts, nearer petrol the less alcohol it holds', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        const [first, second] = [blend('ethanol', less), blend('ethanol', more)];
        expect(first.stoichiometricAfr).toBeLessThanOrEqual(14.7);
        expect(second.stoichiometricAfr).toBeGreaterThan(8.99);
        expect(first.stoichiometricAfr).toBeGreaterThanOrEqual(second.stoichiometricAfr);
        expect(first.oxygenRatio).toBeLessThanOrEqual(second.oxygenRatio);
      }),
    );
  });

  it('needs the same air whether its composition is given in atoms or by mass', () => {
    const counts = fc.record({
      carbon: fc.integer({ min: 1, max: 12 }),
      hydrogen: fc.integer({ min: 4, max: 26 }),
      oxygen: fc.integer({ min: 0, max: 2 }),
    });
    fc.assert(
      fc.property(counts, ({ carbon, hydrogen, oxygen }) => {
        const { molarMassG, stoichiometricAfr } = stoichiometryOfFormula({
          carbon,
          hydrogen,
          oxygen,
          nitrogen: 0,
        }).value;
        const byMass = stoichiometryOfMass({
          carbonRatio: (carbon * 12.011) / molarMassG,
          hydrogenRatio: (hydrogen * 1.008) / molarMassG,
          oxygenRatio: (oxygen * 15.999) / molarMassG,
        }).value;
        expect(byMass.stoichiometricAfr).toBeCloseTo(stoichiometricAfr, 9);
      }),
    );
  });

  it('needs the same air within 0.2 % whichever oxygenate brings the oxygen, as the answer says', () => {
    fc.assert(
      fc.property(between(0.001, 0.04), (oxygenRatio) => {
        const stated = oxygenFuel(fuelRows, oxygenRatio).value.stoichiometricAfr;
        for (const id of ['ethanol', 'methanol', 'mtbe', 'etbe']) {
          // The share by volume whose oxygen is the stated one, by halving.
          let [low, high] = [0, 1];
          for (let pass = 0; pass < 60; pass += 1) {
            const middle = (low + high) / 2;
            if (blend(id, middle).oxygenRatio < oxygenRatio) low = middle;
            else high = middle;
          }
          expect(Math.abs(blend(id, low).stoichiometricAfr / stated - 1)).toBeLessThan(0.002);
        }
      }),
    );
  });

  it('comes back from λ to the ratio it started from', () => {
    fc.assert(
      fc.property(between(0.5, 1.6), between(5, 18), (lambdaRatio, stoichiometricAfr) => {
        const { afr, phiRatio } = mixtureOf({ lambdaRatio, stoichiometricAfr }).value;
        expect(mixtureOf({ afr, stoichiometricAfr }).value.lambdaRatio).toBeCloseTo(lambdaRatio, 12);
        expect(mixtureOf({ phiRatio, stoichiometricAfr }).value.lambdaRatio).toBeCloseTo(lambdaRatio, 12);
      }),
    );
  });

  it('reaches the wanted share with the litres it asks for', () => {
    fc.assert(
      fc.property(between(1, 80), share, share, share, (volumeL, a, b, c) => {
        const [from, wanted, to] = [a, b, c].toSorted((x, y) => x - y);
        fc.pre(from !== undefined && wanted !== undefined && to !== undefined);
        fc.pre(wanted - from > 1e-3 && to - wanted > 1e-1);
        const inTank = { volumeL, alcoholRatio: from };
        const { addL } = topUpFor({ inTank, addedAlcoholRatio: to, wantedAlcoholRatio: wanted }).value;
        const mixed = mixTank(inTank, { volumeL: addL, alcoholRatio: to }).value;
        expect(mixed.alcoholRatio).toBeCloseTo(wanted, 9);
      }),
    );
  });
});

describe('the correction of a cell', () => {
  it('never exceeds its limit, points the right way and arrives in the steps it says', () => {
    fc.assert(
      fc.property(
        between(0.6, 1.5),
        between(0.6, 1.5),
        between(0.01, 0.5),
        (measured, wanted, limitRatio) => {
          const correction = cellCorrection({
            measuredLambdaRatio: measured,
            wantedLambdaRatio: wanted,
            limitRatio,
          }).value;
          const { multiplierRatio, steps } = correction;
          expect(Math.abs(multiplierRatio - 1)).toBeLessThanOrEqual(limitRatio + 1e-12);
          expect(Math.sign(multiplierRatio - 1)).toBe(Math.sign(measured - wanted));
          let lambda = measured;
          for (let step = 0; step < steps; step += 1) {
            lambda /= cellCorrection({
              measuredLambdaRatio: lambda,
              wantedLambdaRatio: wanted,
              limitRatio,
            }).value.multiplierRatio;
          }
          expect(lambda).toBeCloseTo(wanted, 9);
        },
      ),
    );
  });
});

describe('injectors', () => {
  it('support the power they were sized for', () => {
    fc.assert(
      fc.property(set, between(20, 900), (engine, powerKw) => {
        const { flowCcMin } = injectorForPower({ ...engine, powerKw }).value;
        fc.pre(flowCcMin >= 10 && flowCcMin <= 10_000);
        expect(powerFromInjectors({ ...engine, flowCcMin }).value.wheelPowerKw).toBeCloseTo(powerKw, 6);
      }),
    );
  });

  it('need the pressure that gives the flow', () => {
    fc.assert(
      fc.property(
        between(100, 2000),
        between(200, 500),
        between(100, 1000),
        (flowCcMin, ratedKpa, acrossKpa) => {
          const wantedCcMin = flowAtPressure({ flowCcMin, ratedKpa, acrossKpa }).value.flowCcMin;
          const back = pressureForFlow({ flowCcMin, ratedKpa, wantedCcMin }).value;
          expect(back.acrossKpa).toBeCloseTo(acrossKpa, 6);
        },
      ),
    );
  });

  it('reach a duty with the pulse that it allows', () => {
    const injection = fc.constantFrom('sequential' as const, 'each-turn' as const);
    fc.assert(
      fc.property(between(0.1, 1), between(600, 12_000), injection, (dutyRatio, speedRpm, how) => {
        const { pulseS } = longestPulse({ dutyRatio, speedRpm, injection: how }).value;
        expect(injectorDuty({ pulseS, speedRpm, injection: how }).value.dutyRatio).toBeCloseTo(dutyRatio, 12);
      }),
    );
  });

  it('deliver the same heat of air before and after a change back and forth', () => {
    const fitted = fc.record({
      flowCcMin: between(150, 2000),
      densityKgM3: between(680, 830),
      stoichiometricAfr: between(6, 15.5),
    });
    fc.assert(
      fc.property(fitted, fitted, between(0.002, 0.02), (one, other, pulseS) => {
        const [there, back] = [fuelChange(one, other).value, fuelChange(other, one).value];
        expect(there.openTimeRatio * back.openTimeRatio).toBeCloseTo(1, 12);
        const dead = { oldDeadTimeS: 0.001, newDeadTimeS: 0.0013 };
        const after = pulseAfterChange({ pulseS, ...dead, openTimeRatio: there.openTimeRatio });
        fc.pre(after < 0.2);
        const home = pulseAfterChange({
          pulseS: after,
          oldDeadTimeS: dead.newDeadTimeS,
          newDeadTimeS: dead.oldDeadTimeS,
          openTimeRatio: back.openTimeRatio,
        });
        expect(home).toBeCloseTo(pulseS, 9);
      }),
    );
  });

  it('idle just at the limit when they are as large as they may be', () => {
    fc.assert(
      fc.property(
        between(0.002, 0.05),
        between(0.0003, 0.002),
        between(0.0002, 0.002),
        (fuelG, dead, above) => {
          const idle = { fuelG, deadTimeS: dead, smallestPulseS: dead + above };
          const { largestFlowGs } = idlePulse({ ...idle, staticFlowGs: 5 }).value;
          fc.pre(largestFlowGs >= 0.1 && largestFlowGs <= 200);
          expect(idlePulse({ ...idle, staticFlowGs: largestFlowGs }).value.marginRatio).toBeCloseTo(1, 9);
          fc.pre(largestFlowGs * 1.01 <= 200);
          expect(idlePulse({ ...idle, staticFlowGs: largestFlowGs * 1.01 }).value.feasible).toBe(false);
        },
      ),
    );
  });

  it('deliver more the longer they are open', () => {
    const shot = { deadTimeS: 0.001, speedRpm: 3000, staticFlowCcMin: 440, injection: 'sequential' } as const;
    fc.assert(
      fc.property(between(0.0011, 0.03), between(0.0011, 0.03), (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        const flow = (pulseS: number) => deliveredFlow({ ...shot, pulseS }).value.meanFlowCcMin;
        expect(flow(less)).toBeLessThanOrEqual(flow(more));
      }),
    );
  });

  it('are matched by their trims', () => {
    fc.assert(
      fc.property(fc.array(between(200, 900), { minLength: 2, maxLength: 12 }), (flows) => {
        const { trimRatios, meanCcMin, leanest, richest, spreadRatio } = matchInjectors(flows, {
          matchedRatio: 0.02,
          usableRatio: 0.05,
        }).value;
        for (const [index, flow] of flows.entries()) {
          expect(flow * (trimRatios[index] ?? 0)).toBeCloseTo(meanCcMin, 6);
        }
        expect(flows[leanest - 1]).toBe(Math.min(...flows));
        expect(flows[richest - 1]).toBe(Math.max(...flows));
        expect(spreadRatio).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('lines, curves and units', () => {
  it('run at the velocity that the bore was chosen for, and lose less the wider they are', () => {
    fc.assert(
      fc.property(between(500, 20_000), between(0.5, 5), (flowCcMin, velocity) => {
        const { boreMm } = boreForVelocity({ flowCcMin, velocityMPerS: velocity }).value;
        const line = { flowCcMin, boreMm, lengthMm: 4000, densityKgM3: 745, viscosityMm2S: 0.55 };
        const flow = lineFlow(line).value;
        expect(flow.velocityMPerS).toBeCloseTo(velocity, 9);
        expect(lineFlow({ ...line, boreMm: boreMm * 1.5 }).value.dropKpa).toBeLessThan(flow.dropKpa);
      }),
    );
  });

  it('pass through the points typed and stay between neighbours', () => {
    const points = [
      { at: 8, value: 0.0021 },
      { at: 12, value: 0.0011 },
      { at: 14, value: 0.0009 },
    ];
    const words = { what: 'The dead times', unit: 'V' };
    for (const { at, value } of points) expect(onCurve(points, at, words)).toBeCloseTo(value, 12);
    fc.assert(
      fc.property(between(8, 14), (at) => {
        const value = onCurve(points.toReversed(), at, words);
        expect(value).toBeLessThanOrEqual(0.0021);
        expect(value).toBeGreaterThanOrEqual(0.0009);
      }),
    );
  });

  it('come back from fuel per work in one system to the other', () => {
    fc.assert(
      fc.property(between(100, 2000), (bsfc) => {
        expect(gPerKwhFromLbPerHpH(lbPerHpHFromGPerKwh(bsfc))).toBeCloseTo(bsfc, 9);
      }),
    );
  });
});
