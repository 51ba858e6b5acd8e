import { describe, expect, it } from 'vitest';
import { blendByVolume } from '../../../../src/calc/fuel/blend.ts';
import { changeAnswer } from '../../../../src/calc/fuel/change-answer.ts';
import { deadTimeAt } from '../../../../src/calc/fuel/dead-time.ts';
import { deadTimeAnswer } from '../../../../src/calc/fuel/dead-time-answer.ts';
import { fuelChange } from '../../../../src/calc/fuel/fuel-change.ts';
import { lineFlow } from '../../../../src/calc/fuel/fuel-line.ts';
import { expectedFuelUse } from '../../../../src/calc/fuel/fuel-use.ts';
import { idlePulse } from '../../../../src/calc/fuel/idle.ts';
import { injectorDuty, longestPulse } from '../../../../src/calc/fuel/injector-duty.ts';
import { flowAtPressure, pressureAcrossInjector } from '../../../../src/calc/fuel/injector-pressure.ts';
import { injectorForPower } from '../../../../src/calc/fuel/injector-size.ts';
import { knownFuel, oxygenFuel } from '../../../../src/calc/fuel/known-fuel.ts';
import { mixtureOf } from '../../../../src/calc/fuel/lambda.ts';
import { matchAnswer } from '../../../../src/calc/fuel/match-answer.ts';
import { stoichiometryOfFormula, stoichiometryOfMass } from '../../../../src/calc/fuel/stoichiometric.ts';
import { mixTank } from '../../../../src/calc/fuel/tank.ts';
import { onCurve } from '../../../../src/calc/fuel/typed-curve.ts';
import { sayerFor } from '../../../../src/calc/units/sayer.ts';
import { UserError } from '../../../../src/core/user-error.ts';
import { fuelRows } from '../../../../src/tables/fuels.ts';

const fuel = (id: string) => knownFuel(fuelRows, [{ id, volumeRatio: 1 }]).value;
const petrol = fuel('petrol');
const set = { powerKw: 200, injectors: 4, bsfcGPerKwh: 365, densityKgM3: 745 };
const words = { what: 'The flows', unit: 'kPa' };
const point = (at: number, value: number) => ({ at, value });

function refusal(work: () => unknown): UserError {
  try {
    work();
  } catch (error) {
    if (error instanceof UserError) return error;
    throw error;
  }
  throw new Error('it was answered');
}

describe('what the sums of fuel refuse', () => {
  it.each([
    {
      of: 'shares that do not add up',
      work: () => blendByVolume([{ volumeRatio: 0.9, fuel: petrol }]),
      says: '90.0 %',
    },
    {
      of: 'a gas in a blend',
      work: () =>
        knownFuel(fuelRows, [
          { id: 'petrol', volumeRatio: 0.5 },
          { id: 'methane', volumeRatio: 0.5 },
        ]),
      says: 'is a gas',
    },
    {
      of: 'an unknown fuel',
      work: () => knownFuel(fuelRows, [{ id: 'coal', volumeRatio: 1 }]),
      says: 'no fuel called coal',
    },
    { of: 'a petrol full of oxygen', work: () => oxygenFuel(fuelRows, 0.12), says: '0 to 8 %' },
    {
      of: 'a fuel that needs no air',
      work: () => stoichiometryOfFormula({ carbon: 1, hydrogen: 0, oxygen: 2, nitrogen: 0 }),
      says: 'stoichiometric',
    },
    {
      of: 'a composition with a slip in it',
      work: () => stoichiometryOfMass({ carbonRatio: 0.5, hydrogenRatio: 0.1, oxygenRatio: 0 }),
      says: 'sum of the shares',
    },
    {
      of: 'a λ nobody reads',
      work: () => mixtureOf({ lambdaRatio: 12, stoichiometricAfr: 14.7 }),
      says: '0.3 to 10',
    },
    {
      of: 'an empty tank',
      work: () => mixTank({ volumeL: 0, alcoholRatio: 0 }, { volumeL: 0, alcoholRatio: 1 }),
      says: 'The whole',
    },
    {
      of: 'a manifold above the rail',
      work: () => pressureAcrossInjector({ baseKpa: 300, manifoldKpa: 320, referenced: false }),
      says: 'across the injector',
    },
    {
      of: 'a curve of one point',
      work: () => onCurve([point(300, 250)], 300, words),
      says: 'at least two points',
    },
    {
      of: 'a curve with a place twice',
      work: () => onCurve([point(3, 1), point(3, 2)], 3, words),
      says: 'stands twice',
    },
    {
      of: 'a voltage beyond the table',
      work: () => deadTimeAt([point(8, 0.002), point(14, 0.001)], 7),
      says: '8 to 14 V',
    },
    {
      of: 'a pulse shorter than the dead time',
      work: () => idlePulse({ fuelG: 0.01, staticFlowGs: 5, deadTimeS: 0.001, smallestPulseS: 0.0009 }),
      says: 'smallest stable pulse',
    },
  ])('$of, with the range', ({ work, says }) => {
    const { code, message } = refusal(work);
    expect(message).toContain(says);
    expect(['out-of-range', 'bad-input', 'not-found']).toContain(code);
  });
});

describe('what the sums of fuel warn of', () => {
  it('a duty at which an injector cannot close', () => {
    expect(injectorForPower({ ...set, dutyRatio: 0.95 }).caveats.join(' ')).toContain('90 %');
    const duty = (pulseS: number) =>
      injectorDuty({ pulseS, speedRpm: 6000, injection: 'sequential' }).caveats.join(' ');
    expect(duty(0.019)).toContain('Above 90 %');
    expect(duty(0.021)).toContain('never closes');
    expect(duty(0.01)).toBe('');
    expect(longestPulse({ dutyRatio: 0.8, speedRpm: 6000, injection: 'each-turn' }).assumptions).toEqual([
      'four-stroke, one shot each turn',
    ]);
  });

  it('a pressure at which an injector may not open', () => {
    expect(flowAtPressure({ flowCcMin: 550, ratedKpa: 300, acrossKpa: 700 }).caveats.join(' ')).toContain(
      '6 bar',
    );
  });

  it('a flow between laminar and turbulent', () => {
    const line = { boreMm: 8, lengthMm: 1000, densityKgM3: 800, viscosityMm2S: 4 };
    expect(lineFlow({ ...line, flowCcMin: 4500 }).caveats.join(' ')).toContain('Between laminar');
    // Hagen–Poiseuille: 32·μ·L·v/d².
    const { dropKpa, velocityMPerS } = lineFlow({ ...line, flowCcMin: 1000 }).value;
    expect(dropKpa).toBeCloseTo((32 * 0.0032 * 1 * velocityMPerS) / 0.008 ** 2 / 1000, 9);
  });

  it('alcohol in a fuel system', () => {
    const to = (after: typeof petrol) =>
      fuelChange({ ...petrol, flowCcMin: 440 }, { ...after, flowCcMin: 440 }).caveats;
    expect(to(fuel('methanol')).join(' ')).toContain('seals');
    expect(to(petrol)).toEqual([]);
  });
});

describe('what the answers say', () => {
  it('less fuel per work without boost', () => {
    const use = (aspiration: 'natural' | 'boosted') =>
      expectedFuelUse({ aspiration, calorificKjPerKg: 43_440, alcoholRatio: 0 }).value.bsfcGPerKwh;
    expect(use('natural')).toBeCloseTo(304.139, 2);
    expect(use('boosted')).toBeCloseTo(364.966, 2);
  });

  it('rich, lean or right after a change, and when the new ones are too small', () => {
    const change = { oldFuel: petrol, newFuel: petrol, voltageV: 14, oldCcMin: 440 };
    expect(changeAnswer({ ...change, newCcMin: 550 }, sayerFor()).certainty).toContain('rich');
    expect(changeAnswer({ ...change, newCcMin: 330 }, sayerFor()).certainty).toContain('lean');
    expect(changeAnswer({ ...change, newCcMin: 440 }, sayerFor()).certainty).toContain('become 1.00.');
    const small = changeAnswer({ ...change, newCcMin: 330, dutyRatio: 0.8 }, sayerFor());
    expect(small.calculation.caveats.join(' ')).toContain('too small');
  });

  it('rich, lean or right for a dead time', () => {
    const at = (deadTimeS: number) => ({ value: { deadTimeS }, assumptions: [], sources: [], caveats: [] });
    const asked = { voltageV: 12, pulseS: 0.0025, injection: 'sequential' } as const;
    expect(deadTimeAnswer({ ...asked, dead: at(0.0009), set: at(0.0013) }).result).toContain('rich');
    expect(deadTimeAnswer({ ...asked, dead: at(0.0009), set: at(0.0009) }).result).toContain('Right');
  });

  it('that a set of equals is matched', () => {
    expect(matchAnswer([440, 440, 440], { matchedRatio: 0.02, usableRatio: 0.05 }).result).toBe(
      'No spread at all: matched',
    );
  });
});
