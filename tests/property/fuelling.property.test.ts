import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeOn } from '../../src/calc/fuelling/axes.ts';
import {
  addReading,
  emptyEquations,
  factor,
  inverseDiagonal,
  solve,
} from '../../src/calc/fuelling/normal-equations.ts';
import { targetTable } from '../../src/calc/fuelling/target.ts';
import { readAxis } from '../../src/logs/typed-table.ts';
import { between, check, near } from '../support/laws.ts';
import { driveKinds } from '../support/model-engine/drives.ts';
import { errorMap, type Model, modelOf } from '../support/model-engine/engine.ts';
import { noiseFrom } from '../support/model-engine/noise.ts';
import {
  FULL,
  rootMeanSquare,
  runToEnd,
  share,
  type Trial,
  tryModel,
} from '../support/model-engine/simulated.ts';

/** Model engines and drives of every kind; FC_SEED makes others of them, FC_RUNS more. */
const SEED = Number(process.env['FC_SEED'] ?? 20_261) % 10_000;
const EACH = Math.max(1, Math.round(Number(process.env['FC_RUNS'] ?? 300) / 150));

const variants: Readonly<Record<string, (seed: number) => Partial<Model>>> = {
  'as they come': () => ({}),
  'with rough cells': (seed) => {
    const { loadAxisKPa, speedAxisRpm } = modelOf(seed);
    return { errors: errorMap(noiseFrom(seed), loadAxisKPa.length, speedAxisRpm.length, 0.12) };
  },
  'logged five times a second': () => ({ rowsPerS: 5 }),
  'logged a hundred times a second': () => ({ rowsPerS: 100 }),
  'with much film on the walls': () => ({ film: { shareRatio: 0.32, timeS: 0.8 } }),
  'with a slow sensor far down the pipe': () => ({ lagS: 0.28, delay: { fixedS: 0.2, flowS: 0.5 } }),
  'with neither delay nor lag': () => ({ lagS: 0.02, delay: { fixedS: 0, flowS: 0 } }),
};

function trials(of: (seed: number) => Partial<Model>): readonly Trial[] {
  return driveKinds.flatMap((kind, k) =>
    Array.from({ length: EACH }, (_, n) => {
      const seed = SEED + 97 * n + 13 * k;
      return tryModel(modelOf(seed, { ...of(seed), kind, seconds: kind === 'idle' ? 180 : 450 }));
    }),
  );
}

describe.each(Object.keys(variants))('drives of model engines, %s', (name) => {
  const of = variants[name] ?? (() => ({}));

  it('give back the known errors of the table, as surely as they say', { timeout: 120_000 }, () => {
    const all = trials(of);
    const claims = all.flatMap((trial) => trial.claims);
    const driven = claims.filter((claim) => claim.driven).map(({ offRatio }) => offRatio);
    expect(claims.length).toBeGreaterThan(80);
    expect(driven.length).toBeGreaterThan(15);
    expect(rootMeanSquare(driven)).toBeLessThanOrEqual(0.008);
    expect(share(driven.map((off) => Math.abs(off) <= 0.01))).toBeGreaterThanOrEqual(0.9);
    expect(
      share(claims.map((claim) => Math.abs(claim.offRatio) <= claim.uncertaintyRatio)),
    ).toBeGreaterThanOrEqual(0.95);
    expect(all.reduce((sum, { invented }) => sum + invented, 0)).toBe(0);
    expect(all.reduce((sum, { missed }) => sum + missed, 0)).toBeLessThanOrEqual(0.05 * driven.length);
  });
});

describe('a log without throttle, sensor temperature or fuel-cut column', () => {
  it('gives the errors back as well', { timeout: 60_000 }, () => {
    const claims = driveKinds.flatMap((kind, k) => {
      const model = modelOf(SEED + 7 * k, { kind, seconds: 400 });
      return tryModel(model, { channels: ['coolantC', 'targetLambda', 'trimRatio'] }).claims;
    });
    expect(
      rootMeanSquare(claims.filter(({ driven }) => driven).map(({ offRatio }) => offRatio)),
    ).toBeLessThanOrEqual(0.008);
    expect(
      share(claims.map((claim) => Math.abs(claim.offRatio) <= claim.uncertaintyRatio)),
    ).toBeGreaterThanOrEqual(0.95);
  });
});

describe('a drive with nothing to go by', () => {
  it.each<[string, Partial<Model>]>([
    ['an engine that never gets warm', { seconds: 60, coldStart: true, kind: 'road' }],
    ['three seconds of driving', { seconds: 3, kind: 'road', coldStart: false }],
  ])('%s: nothing is claimed and nothing changed', (_, given) => {
    for (let seed = SEED; seed < SEED + 5; seed++) {
      const { result, claims } = tryModel(modelOf(seed, given));
      expect(result.usable).toBe(false);
      expect(claims).toEqual([]);
      expect(result.cells.flat().every((cell) => cell.multiplierRatio === 1)).toBe(true);
    }
  });

  it('a sensor that is dead: every second is dropped and counted', () => {
    const model = modelOf(SEED, { kind: 'road', seconds: 120, coldStart: false });
    const dead = tryModel({ ...model, lambdaStep: 10 }, FULL);
    expect(dead.result.usable).toBe(false);
    const dropped = Object.values(dead.result.droppedS).reduce((sum, each) => sum + each, 0);
    near(dropped + dead.result.usedS, dead.result.totalS, 0.5);
  });
});

describe('the seconds', () => {
  it('used and dropped come to the whole of every drive', () => {
    for (const kind of driveKinds) {
      const { result } = tryModel(modelOf(SEED + kind.length, { kind, seconds: 200 }));
      const dropped = Object.values(result.droppedS).reduce((sum, each) => sum + each, 0);
      near(dropped + result.usedS, result.totalS, 0.5);
      near(result.totalS, 200, 1);
    }
  });
});

describe('the cap', () => {
  it('holds every cell, whatever it is', () => {
    const { result } = tryModel(modelOf(SEED, { kind: 'holds', seconds: 300 }));
    for (const { multiplierRatio } of result.cells.flat())
      expect(Math.abs(multiplierRatio - 1)).toBeLessThanOrEqual(0.5);
  });
});

const rising = fc
  .uniqueArray(fc.integer({ min: 1, max: 9000 }), { minLength: 2, maxLength: 32 })
  .map((points) => points.toSorted((a, b) => a - b));

describe('an axis', () => {
  it('places its own points on themselves, and what lies between in order', () => {
    check([rising, between(0, 1)], (axis, part) => {
      axis.forEach((point, index) => void expect(placeOn(axis, point)).toBeCloseTo(index, 9));
      const [low, high] = [axis[0] ?? 0, axis[1] ?? 1];
      near(placeOn(axis, low + part * (high - low)), part, 1e-9);
    });
  });

  it('is read back as it is written', () => {
    check([rising], (axis) => {
      expect(readAxis(axis.join(' '), 'speed')).toEqual(axis);
      expect(readAxis(`${axis.join(',')} rpm`, 'speed')).toEqual(axis);
      expect(readAxis(`${axis.join('; ')} kPa`, 'load')).toEqual(axis);
    });
  });
});

describe('a table of targets', () => {
  it('holds at its points and never leaves their range', () => {
    check(
      [
        fc.array(fc.record({ loadKPa: between(20, 250), lambda: between(0.7, 1.1) }), {
          minLength: 1,
          maxLength: 8,
        }),
        between(0, 300),
      ],
      (points, load) => {
        const at = targetTable(points)(load, 3000);
        const values = points.map(({ lambda }) => lambda);
        expect(at).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
        expect(at).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
      },
    );
  });
});

describe('the equations', () => {
  it('are solved, and their inverse has the diagonal that each unit vector gives', () => {
    const rows = fc.array(fc.tuple(between(-2, 2), between(-2, 2), between(-2, 2), between(-5, 5)), {
      minLength: 6,
      maxLength: 20,
    });
    check([rows], (readings) => {
      const equations = emptyEquations(3);
      for (const [a, b, c, y] of readings) {
        addReading(equations, Int32Array.of(0, 1, 2), Float64Array.of(a, b, c), 3, y, 1);
      }
      for (let k = 0; k < 3; k++) equations.matrix[k * 4] = (equations.matrix[k * 4] ?? 0) + 1;
      const lower = runToEnd(factor(equations));
      const x = solve(lower, 3, equations.right);
      for (let i = 0; i < 3; i++) {
        let left = 0;
        for (let j = 0; j < 3; j++)
          left += (equations.matrix[Math.max(i, j) * 3 + Math.min(i, j)] ?? 0) * (x[j] ?? 0);
        near(left, equations.right[i] ?? 0, 1e-6);
      }
      const diagonal = runToEnd(inverseDiagonal(lower, 3));
      for (let k = 0; k < 3; k++) {
        const unit = new Float64Array(3);
        unit[k] = 1;
        near(diagonal[k] ?? 0, solve(lower, 3, unit)[k] ?? 0, 1e-9);
      }
    });
  });
});
