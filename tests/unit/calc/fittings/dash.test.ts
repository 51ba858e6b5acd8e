import { describe, expect, it } from 'vitest';
import { smallestHose } from '../../../../src/calc/fittings/dash.ts';
import { dashSizes } from '../../../../src/tables/fitting-sizes.ts';

describe('the smallest hose that is wide enough', () => {
  it.each([
    { boreMm: 5.03, dash: 4, where: 'between -3 and -4' },
    { boreMm: 6.35, dash: 4, where: 'exactly a quarter of an inch' },
    { boreMm: 6.36, dash: 5, where: 'just over a quarter of an inch' },
  ])('is -$dash for a bore of $boreMm mm, $where', ({ boreMm, dash }) => {
    expect(smallestHose(boreMm, dashSizes)?.dash).toBe(dash);
  });

  it('is none past the widest', () => {
    expect(smallestHose(500, dashSizes)).toBeUndefined();
  });
});
