import { describe, expect, it } from 'vitest';
import { readQuantityList } from '../../../src/phrases/quantity/read-list.ts';

const valuesOf = (typed: string, field: Parameters<typeof readQuantityList>[1] = 'pressure') => {
  const read = readQuantityList(typed, field);
  return read.verdict === 'read' ? read.values.map((each) => Number(each.toFixed(4))) : read.verdict;
};

describe('a row of quantities', () => {
  it.each([
    ['12.1 12 11.8 bar', [1210, 1200, 1180]],
    ['12,1 12,0 11,8 bar', [1210, 1200, 1180]],
    ['12,1; 12,0; 11,8 bar', [1210, 1200, 1180]],
    ['12.1, 12, 11.8 bar', [1210, 1200, 1180]],
    ['12.1,12,11.8 bar', [1210, 1200, 1180]],
    ['12.1 bar 12 bar 11.8 bar', [1210, 1200, 1180]],
    ['1: 12.1, 2: 12, 3: 11.8 bar', [1210, 1200, 1180]],
    ['cyl 1 = 12.1 cyl 2 = 12 bar', [1210, 1200]],
    ['12.1 and 12 bar', [1210, 1200]],
    ['12.1/12/11.8 bar', [1210, 1200, 1180]],
    ['12.1\n12\n11.8 bar', [1210, 1200, 1180]],
    ['12.1 bar, 1200 kPa', [1210, 1200]],
    ['12 kg/cm2 11 kg/cm2', [1176.798, 1078.7315]],
    ['165,170,168 kPa', [165, 170, 168]],
    ['165,170 kPa', [165, 170]],
  ])('%j', (typed, values) => expect(valuesOf(typed)).toEqual(values));

  it('keeps a fraction of an inch for a length', () => {
    expect(valuesOf('54.98 54.97 mm', 'length')).toEqual([54.98, 54.97]);
    expect(valuesOf('0.018 0.02 in', 'length')).toEqual([0.4572, 0.508]);
  });

  it('asks which unit is meant when nothing tells it, each reading ready to be taken', () => {
    const read = readQuantityList('40 41 42', 'pressure');
    expect(read).toMatchObject({ verdict: 'ask', choices: ['40 41 42 psi', '40 41 42 kPa', '40 41 42 bar'] });
  });

  it('says when the unit was told by size', () => {
    const read = readQuantityList('165 170', 'pressure', () => 'psi');
    expect(read).toMatchObject({ verdict: 'read', typedUnit: 'psi', unitAssumed: true });
    expect(readQuantityList('165 170 psi', 'pressure', () => 'bar')).toMatchObject({ unitAssumed: false });
  });

  it.each(['', 'bar', '12 pigs', '12 ~ 11 bar', '12 to 13 bar to go', 'x'.repeat(201)])(
    'refuses %j',
    (typed) => expect(valuesOf(typed)).toBe('refuse'),
  );
});
