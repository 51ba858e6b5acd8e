import { describe, expect, it } from 'vitest';
import { evenThenNormal, normalBelow, normalDensity } from '../../../../src/calc/threads/normal.ts';

describe('the normal distribution', () => {
  // Abramowitz & Stegun, Handbook of Mathematical Functions, table 26.1.
  it.each([
    { z: 0, below: 0.5 },
    { z: 1, below: 0.841344746 },
    { z: 1.96, below: 0.975002105 },
    { z: 2.5, below: 0.993790335 },
    { z: -1, below: 0.158655254 },
    { z: -3, below: 0.001349898 },
  ])('lies below $z with probability $below', ({ z, below }) => {
    expect(Math.abs(normalBelow(z) - below)).toBeLessThan(1.5e-7);
  });

  it('is nothing or all beyond eight sigma', () => {
    expect(normalBelow(-9)).toBe(0);
    expect(normalBelow(9)).toBe(1);
  });

  it('has its table height at the mean and one sigma off', () => {
    expect(normalDensity(3, 3, 2)).toBeCloseTo(0.39894228 / 2, 7);
    expect(normalDensity(5, 3, 2)).toBeCloseTo(0.24197072 / 2, 7);
  });
});

describe('an even band read with a normal error', () => {
  it('is flat inside a band much wider than the error', () => {
    expect(evenThenNormal(0.5, 0, 1, 0.01)).toBeCloseTo(1, 6);
  });
  it('is half as high at the edge', () => {
    expect(evenThenNormal(0, 0, 1, 0.01)).toBeCloseTo(0.5, 6);
  });
  it('is a plain normal for a band of no width', () => {
    expect(evenThenNormal(2.1, 2, 2, 0.1)).toBeCloseTo(normalDensity(2.1, 2, 0.1), 12);
  });
});
