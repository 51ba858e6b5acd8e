import { describe, expect, it } from 'vitest';
import { readQuick } from '../../../../src/phrases/quick/read-quick.ts';
import type { QuickContext } from '../../../../src/phrases/quick/reading.ts';
import { boltClasses } from '../../../../src/tables/fasteners.ts';
import { fuelNames } from '../../../../src/tables/fuels.ts';

/** No calendar: nobody knows when and where. */
const context: QuickContext = {
  fuels: fuelNames,
  boltClasses: [...new Set(boltClasses.map(({ id }) => id))],
};
const read = (text: string) => readQuick(text, context);

describe('a line of free text', () => {
  it.each([
    ['a dash before a figure with a unit is a minus', '-0.6 bar', { pressureKPa: -60 }],
    ['a dash before a bare figure is a dash size', '-6 hose', { dash: 6 }],
    ['a dash size in mm is no length below nothing', 'what is -8 in mm', { dash: 8, nominalMm: 12.7 }],
    ['an inch fraction needs no unit to become mm', '7/16 in mm', { to: 'mm' }],
    [
      'inch-pounds are no inches wanted in pounds',
      '200 in lbs',
      { torqueNm: expect.closeTo(22.596_965_8, 6) as number },
    ],
    ['the inch can be the unit, and the word before the next', '0.001 in in mm', { value: 0.0254, to: 'mm' }],
    [
      'a stroke between readings makes no fraction',
      'comp 170/168/165/172',
      { readings: [170, 168, 165, 172] },
    ],
    ['figures below ten are a bore in inches', '4.0 x 3.48 v8', { boreMm: 101.6, strokeMm: 88.392 }],
    ['a manifold pressure is absolute', '250kpa map in bar boost', { pressureKPa: 250 }],
    [
      'a greeting in front and thanks behind change nothing',
      'hi, 85lbft please',
      { torqueNm: expect.closeTo(115.244_525_6, 6) as number },
    ],
  ])('%s', (_why, text, numbers) => {
    expect(read(text)).toMatchObject({ verdict: 'answer', numbers });
  });

  it.each([
    ['a score', '3-0'],
    ['a time', '7:30 ok?'],
    ['a clock in words', 'in 5 min'],
    ['a telephone number', 'call me on 07700 900123'],
    ['an address', 'https://example.org/21x15'],
    ['money', '£21.90'],
    ['somebody addressed', 'thanks m8'],
    ['a reading reported', 'oil pressure was 55 psi hot'],
    ['a person mentioned', '<@123456789012345678> 21.9 x 1.5'],
    ['a smile', ':-) 8'],
    ['a count of bolts', '20 x m8 8.8 bolts'],
    ['bolts and their length', 'm10 10.9 x 60'],
    ['a count of plugs', '2 x 1/8 npt'],
    ['a wheel', '17 x 8'],
    ['a bolt circle', '4x100'],
    ['a tyre', '225/45 17'],
    ['two mixtures', '0.7 0.8'],
    ['a torque beside a bolt', 'm10 at 60nm'],
    ['a sensor', 'fit the 3 bar map sensor'],
    ['a price', 'how much for 2 x 440cc?'],
    ['a day without a calendar', 'when is good friday 2027'],
  ])('%s is talk', (_what, text) => {
    expect(read(text)).toEqual({ verdict: 'none' });
  });

  it('ranks the readings of a bare number by its size', () => {
    const kinds = (text: string) => {
      const reading = read(text);
      return reading.verdict === 'ask' ? reading.candidates.map(({ kind }) => kind) : [];
    };
    expect(kinds('12.4')).toEqual(['afr-lambda', 'compression', 'convert']);
    expect(kinds('58')).toEqual(['pressure', 'thread']);
    expect(kinds('10.9')).toEqual(['torque', 'compression', 'afr-lambda']);
    expect(kinds('3/4')).toEqual(['thread', 'hose']);
    expect(kinds('0.86')).toEqual(['afr-lambda', 'convert']);
  });

  it('offers the cylinders that are missing, with all that was said', () => {
    expect(read('injectors for 400hp e85')).toMatchObject({
      verdict: 'ask',
      candidates: [
        { text: 'injectors for 400 hp E85 4 cyl' },
        { text: 'injectors for 400 hp E85 6 cyl' },
        {},
      ],
    });
  });
});
