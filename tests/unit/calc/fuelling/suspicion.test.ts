import { describe, expect, it } from 'vitest';
import { type Model, modelOf } from '../../../support/model-engine/engine.ts';
import { tryModel } from '../../../support/model-engine/simulated.ts';

/** An engine whose table is right, so that all that is lean is the fault's. */
const right = (seed: number, given: Partial<Model>): Model => {
  const model = modelOf(seed, { coldStart: false, faults: false, ...given });
  return { ...model, errors: model.loadAxisKPa.map(() => model.speedAxisRpm.map(() => 1)) };
};
const kinds = (trial: ReturnType<typeof tryModel>) => trial.result.suspicions.map(({ kind }) => kind);

describe('a suspicion', { timeout: 60_000 }, () => {
  it.each([3, 20, 37, 54])('falls on an air leak at idle, which is not fuelled away (seed %i)', (seed) => {
    for (const kind of ['idle', 'road'] as const) {
      const trial = tryModel(right(seed, { kind, seconds: kind === 'idle' ? 150 : 500, leakRatio: 0.25 }));
      expect(kinds(trial)).toEqual(['air-leak']);
      const left = trial.result.cells.flat().filter(({ leftAlone }) => leftAlone === 'air-leak');
      expect(left.length).toBeGreaterThan(0);
      expect(left.every(({ multiplierRatio }) => multiplierRatio === 1)).toBe(true);
    }
  });

  it.each([3, 20, 37, 54])('falls on a misfire, which is not fuelled away (seed %i)', (seed) => {
    const model = right(seed, { kind: 'road', seconds: 400, misfire: { ratio: 0.08, belowKPa: 60 } });
    const trial = tryModel(model);
    expect(kinds(trial)).toContain('misfire');
    const left = trial.result.cells.flat().filter(({ leftAlone }) => leftAlone === 'misfire');
    expect(left.length).toBeGreaterThan(0);
  });

  it('falls on nothing where the table alone is wrong', () => {
    const found = [1, 2, 3, 4, 5, 6].flatMap((seed) =>
      (['road', 'holds', 'idle'] as const).flatMap((kind) => {
        const { result } = tryModel(modelOf(seed * 17, { kind, seconds: kind === 'idle' ? 120 : 300 }));
        return result.suspicions.map((each) => each.kind);
      }),
    );
    expect(found.length).toBeLessThanOrEqual(1);
  });
});
