import { describe, expect, it } from 'vitest';
import { readFluidText } from '../../../src/phrases/fluid-text.ts';

/** Lines as crews type them, put together for this test; nothing of it is published. */
describe('a line about a fluid', () => {
  it.each([
    ['2 x 5 L 10W-40 ', { count: 2, volume: '5 L', grade: '10W-40' }],
    ['2x5L 10W-40', { count: 2, volume: '5L', grade: '10W-40' }],
    ['10W-40 2 x 5 L', { count: 2, volume: '5 L', grade: '10W-40' }],
    ['3 bottles of 1 L DOT 4', { count: 3, volume: '1 L', grade: 'DOT 4' }],
    ['DOT 4 500ml', { count: 1, volume: '500ml', grade: 'DOT 4' }],
    ['500 ml DOT 5.1 into brakes', { count: 1, volume: '500 ml', grade: 'DOT 5.1', into: 'brakes' }],
    ['DOT 4 into brakes', { count: 1, grade: 'DOT 4', into: 'brakes' }],
    ['5.6 L into the sump', { count: 1, volume: '5.6 L', into: 'sump' }],
    ['5,6l 10w40 in the sump', { count: 1, volume: '5,6l', grade: '10w40', into: 'sump' }],
    ['5 US qt 10W-40', { count: 1, volume: '5 US qt', grade: '10W-40' }],
    ['1/2 gal 20W-50', { count: 1, volume: '1/2 gal', grade: '20W-50' }],
    [
      '2.5 litres 75W-90 GL-5 into gearbox',
      { count: 1, volume: '2.5 litres', grade: '75W-90 GL-5', into: 'gearbox' },
    ],
    ['5 L 50/50 coolant', { count: 1, volume: '5 L', grade: '50/50 coolant' }],
    ['2.3 L from the cooling system', { count: 1, volume: '2.3 L', into: 'cooling system' }],
    ['sump 5.6', { count: 1, volume: '5.6', grade: 'sump' }],
    ['10W-40', { count: 1, grade: '10W-40' }],
    ['', { count: 1 }],
  ])('%s', (line, wanted) => expect(readFluidText(line)).toEqual(wanted));
});
