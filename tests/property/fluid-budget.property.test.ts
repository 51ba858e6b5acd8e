import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bottlesToBuy, fluidBudget } from '../../src/records/fluids/budget.ts';
import { type Bottle, type FluidCase, lackingL, plainGrade } from '../../src/records/fluids/fluid.ts';
import { check } from '../support/laws.ts';

/** Ways to write four grades; those of one line are the same grade. */
const GRADES = [
  ['10W-40', '10w40', 'SAE 10W 40', '10W40'],
  ['75W-90 GL-5', '75w90 gl5'],
  ['DOT 4', 'dot4'],
  ['5W-40'],
];
const grade = fc.constantFrom(...GRADES.flat());
const litres = fc.integer({ min: 1, max: 12_000 }).map((tenths) => tenths / 1000);

const cases = fc
  .array(fc.record({ grade, capacityL: litres, share: fc.double({ min: 0, max: 1.1, noNaN: true }) }), {
    maxLength: 8,
  })
  .map((all) =>
    all.map(
      ({ grade: takes, capacityL, share }, at): FluidCase => ({
        id: at + 1,
        buildId: 1,
        name: `case ${at + 1}`,
        grade: takes,
        capacityL,
        inL: capacityL * share,
        filledOn: null,
        note: null,
      }),
    ),
  );

const bottles = fc
  .array(fc.record({ grade, sizeL: litres, share: fc.double({ min: 0, max: 1, noNaN: true }) }), {
    maxLength: 8,
  })
  .map((all) =>
    all.map(
      ({ grade: holds, sizeL, share }, at): Bottle => ({
        id: at + 1,
        buildId: 1,
        grade: holds,
        sizeL,
        leftL: sizeL * share,
        boughtOn: '2026-11-23',
        openedOn: null,
      }),
    ),
  );

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

describe('the budget of fluids', () => {
  it('counts every case and every bottle once, however their grades are written', () => {
    check([cases, bottles], (some, shelf) => {
      const budget = fluidBudget(some, shelf);
      expect(budget.flatMap(({ shares }) => shares.map(({ fluidCase }) => fluidCase.id)).toSorted()).toEqual(
        some.map(({ id }) => id).toSorted(),
      );
      expect(budget.flatMap((one) => one.bottles.map(({ id }) => id)).toSorted()).toEqual(
        shelf.map(({ id }) => id).toSorted(),
      );
      const keys = budget.map((one) => plainGrade(one.grade));
      expect(new Set(keys).size).toBe(keys.length);
    });
  });

  it('never promises one litre to two cases', () => {
    check([cases, bottles], (some, shelf) => {
      for (const { shares, neededL, shelfL, shortL } of fluidBudget(some, shelf)) {
        const promised = sum(shares.map(({ fromShelfL }) => fromShelfL));
        expect(promised).toBeCloseTo(Math.min(neededL, shelfL), 9);
        expect(shortL).toBeCloseTo(neededL - promised, 5);
        for (const share of shares) expect(share.fromShelfL).toBeLessThanOrEqual(lackingL(share.fluidCase));
      }
    });
  });

  it('holds enough once what it says is bought, and never does with one bottle less', () => {
    let short = 0;
    check([cases, bottles], (some, shelf) => {
      for (const one of fluidBudget(some, shelf).filter(({ shortL }) => shortL > 0)) {
        const { count, sizeL } = bottlesToBuy(one);
        const bought = (many: number): readonly Bottle[] => [
          ...shelf,
          ...Array.from(
            { length: many },
            (_, at): Bottle => ({
              id: 100 + at,
              buildId: 1,
              grade: one.grade,
              sizeL,
              leftL: sizeL,
              boughtOn: '2026-11-23',
              openedOn: null,
            }),
          ),
        ];
        const shortWith = (many: number): number =>
          fluidBudget(some, bought(many)).find(({ grade: is }) => plainGrade(is) === plainGrade(one.grade))
            ?.shortL ?? 0;
        expect(shortWith(count)).toBeLessThan(1e-5);
        expect(shortWith(count - 1)).toBeGreaterThan(0);
        short += 1;
      }
    });
    expect(short).toBeGreaterThan(0);
  });
});
