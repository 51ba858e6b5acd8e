import { describe, expect, it } from 'vitest';
import { readFuelName } from '../../../src/phrases/fuel-name.ts';
import { readFuelUse } from '../../../src/phrases/fuel-use.ts';
import { readMixture } from '../../../src/phrases/mixture.ts';
import { readFigures, readPairs } from '../../../src/phrases/pairs.ts';
import { fuelNames } from '../../../src/tables/fuels.ts';

describe('a fuel as typed', () => {
  const shares = (typed: string) => {
    const read = readFuelName(typed, fuelNames);
    if (read.verdict !== 'blend') return read.verdict;
    return Object.fromEntries(read.parts.map(({ id, volumeRatio }) => [id, Number(volumeRatio.toFixed(6))]));
  };

  it.each([
    ['Petrol', { petrol: 1 }],
    ['98', { petrol: 1 }],
    ['e85', { ethanol: 0.85, petrol: 0.15 }],
    ['E 85', { ethanol: 0.85, petrol: 0.15 }],
    ['E85 fuel', 'refuse'],
    ['E100', { ethanol: 1 }],
    ['M15', { methanol: 0.15, petrol: 0.85 }],
    ['70 % ethanol', { ethanol: 0.7, petrol: 0.3 }],
    ['12,5% methanol', { methanol: 0.125, petrol: 0.875 }],
    ['90% e85 + 10% toluene', { ethanol: 0.765, petrol: 0.135, toluene: 0.1 }],
    ['10% toluene + petrol', { toluene: 0.1, petrol: 0.9 }],
    ['20 L petrol and 5 l ethanol', { petrol: 0.8, ethanol: 0.2 }],
    ['3 parts e85 + 1 part petrol', { ethanol: 0.6375, petrol: 0.3625 }],
    ['autogas', { propane: 0.5, butane: 0.5 }],
    ['gas', 'ask'],
    ['petrol 2.7% oxygen', 'oxygen'],
    ['oxygen 3.7', 'oxygen'],
    ['E120', 'refuse'],
    ['', 'refuse'],
    ['60% ethanol + 60% petrol', 'refuse'],
    ['60% ethanol + 30% petrol', 'refuse'],
    ['5 l ethanol + 10% petrol', 'refuse'],
    ['0% ethanol', 'refuse'],
    ['unobtainium', 'refuse'],
    ['x'.repeat(90), 'refuse'],
  ])('%s is %o', (typed, expected) => {
    expect(shares(typed)).toEqual(expected);
  });
});

describe('a mixture as typed', () => {
  it.each([
    ['12.4 afr', 'afr', 12.4],
    ['afr 12,5', 'afr', 12.5],
    ['12.3:1', 'afr', 12.3],
    ['12.3 : 1 afr', 'afr', 12.3],
    ['13 to 1', 'afr', 13],
    ['a/f 14.2', 'afr', 14.2],
    ['λ=0,88', 'lambda', 0.88],
    ['.92 lambda', 'lambda', 0.92],
    ['lamda 0.9', 'lambda', 0.9],
    ['0.86', 'lambda', 0.86],
    ['14.7', 'afr', 14.7],
  ])('%s is %s %f', (typed, as, value) => {
    expect(readMixture(typed)).toEqual({ verdict: 'read', as, value });
  });

  it.each(['afr 0.85', 'lambda 12.4', 'lambda 92', '124 afr', '86'])('asks about %s', (typed) => {
    expect(readMixture(typed).verdict).toBe('ask');
  });

  it.each(['', 'rich', '2.5', '900', 'lambda 12.4 afr', 'λ -1', 'afr 1000', '12 V'])(
    'refuses %s',
    (typed) => {
      expect(readMixture(typed).verdict).toBe('refuse');
    },
  );
});

describe('fuel per work as typed', () => {
  it.each([
    ['0.55', 0.55, 'lb/hp·h'],
    ['0,55 lb/hp h', 0.55, 'lb/hp·h'],
    ['.5 lb/(hp·h)', 0.5, 'lb/hp·h'],
    ['0.6 lbs/hp/hr', 0.6, 'lb/hp·h'],
    ['335', 335, 'g/kWh'],
    ['335 g/kWh', 335, 'g/kWh'],
  ])('%s is %f %s', (typed, value, unit) => {
    expect(readFuelUse(typed)).toEqual({ verdict: 'read', value, unit });
  });

  it.each(['20', 'plenty', '0.5 kg', '-0.5', ''])('refuses %s, and says what it reads', (typed) => {
    const read = readFuelUse(typed);
    expect(read.verdict === 'refuse' ? read.why : '').toContain('335 g/kWh');
  });
});

describe('pairs as typed', () => {
  const volts = { v: 1 };
  const times = { ms: 0.001, s: 1 };

  it.each([
    '8V 2.1ms, 12V 1.1ms',
    '8 2.1, 12 1.1',
    '8:2.1 12:1.1',
    '8 V: 2.1 ms; 12 V: 1.1 ms',
    '8=2,1; 12=1,1',
    '8 2.1\n12 1.1',
  ])('%s is two points', (typed) => {
    const read = readPairs(typed, volts, times);
    const microseconds =
      read.verdict === 'read' ? read.pairs.map(({ at, value }) => [at, Math.round(value * 1e6)]) : [];
    expect(microseconds).toEqual([
      [8, 2100],
      [12, 1100],
    ]);
  });

  it.each(['', '8', '8 2.1 12', '8 psi 2.1', '8V 2.1 lb', 'about 8 and 2'])('refuses %s', (typed) => {
    expect(readPairs(typed, volts, times).verdict).toBe('refuse');
  });

  it('lets a unit said once hold for those that follow', () => {
    const read = readPairs('3 bar 255, 4 225', { kpa: 1, bar: 100 }, { 'l/h': 1 });
    expect(read).toMatchObject({ pairs: [{ at: 300 }, { at: 400, value: 225 }] });
  });
});

describe('figures as typed', () => {
  it.each([
    '440 438 451',
    '440, 438, 451',
    '440;438;451',
    '440/438/451',
    '440cc 438cc 451cc',
    '440 cc/min, 438 cc/min, 451 cc/min',
    '440,438,451',
  ])('%s is three', (typed) => {
    expect(readFigures(typed)).toEqual({ verdict: 'read', figures: [440, 438, 451] });
  });

  it('keeps a decimal comma', () => {
    expect(readFigures('438,5; 440')).toEqual({ verdict: 'read', figures: [438.5, 440] });
  });

  it.each(['', 'a b', '440 x'])('refuses "%s"', (typed) => expect(readFigures(typed).verdict).toBe('refuse'));
});
