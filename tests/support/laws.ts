import fc from 'fast-check';
import { expect } from 'vitest';

const SETTINGS = {
  seed: Number(process.env['FC_SEED'] ?? 20_261),
  numRuns: Number(process.env['FC_RUNS'] ?? 300),
};

/** Any number from `min` to `max`. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

/** Tries a law on many values of each arbitrary, the same ones every time unless FC_SEED says otherwise. */
export function check<Values extends [unknown, ...unknown[]]>(
  arbitraries: { [Key in keyof Values]: fc.Arbitrary<Values[Key]> },
  law: (...values: Values) => void,
): void {
  fc.assert(fc.property(...arbitraries, law), SETTINGS);
}

export function near(ours: number, theirs: number, within: number): void {
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(within);
}
