import { describe, expect, it } from 'vitest';
import type { Axes } from '../../../../src/calc/fuelling/axes.ts';
import { usualAxes } from '../../../../src/calc/fuelling/axes.ts';
import type { Cell } from '../../../../src/calc/fuelling/cells.ts';
import { compareDrives } from '../../../../src/calc/fuelling/compare.ts';
import { DriveRecorder } from '../../../../src/calc/fuelling/drive.ts';
import { fuelling } from '../../../../src/calc/fuelling/fuelling.ts';
import { LAG_POINTS, LAG_WEIGHTS } from '../../../../src/calc/fuelling/readings.ts';
import { regionsOf } from '../../../../src/calc/fuelling/regions.ts';
import { SAFE_TARGET, targetTable } from '../../../../src/calc/fuelling/target.ts';
import { runToEnd } from '../../../support/model-engine/simulated.ts';

const cell = (full?: number, uncertaintyRatio = 0.008, seconds = 20): Cell => ({
  multiplierRatio: full ?? 1,
  ...(full === undefined ? {} : { fullMultiplierRatio: full, uncertaintyRatio }),
  seconds,
  capped: false,
});

/** Abramowitz and Stegun, 25.4.45: the rule of two points is exact up to the third power, whose integrals are 0!, 1!, 2!, 3!. */
describe('Laguerre’s two points', () => {
  it.each([
    [0, 1],
    [1, 1],
    [2, 2],
    [3, 6],
  ])('integrate x^%i·e^-x to %i', (power, integral) => {
    const sum = LAG_POINTS.reduce((all, point, k) => all + (LAG_WEIGHTS[k] ?? 0) * point ** power, 0);
    expect(sum).toBeCloseTo(integral, 4);
  });
});

describe('usual breakpoints', () => {
  it('are round and hold all of the drive', () => {
    expect(usualAxes({ loadKPa: [27, 98], speedRpm: [812, 3960] })).toEqual({
      loadKPa: [20, 30, 40, 50, 60, 70, 80, 90, 100],
      speedRpm: [500, 1000, 1500, 2000, 2500, 3000, 3500, 4000],
    });
    expect(usualAxes({ loadKPa: [27, 212], speedRpm: [812, 3960] }).loadKPa).toEqual([
      20, 40, 60, 80, 100, 120, 140, 160, 180, 200, 220,
    ]);
  });
});

describe('safe targets', () => {
  it('are stoichiometric when cruising and never leaner under more load', () => {
    const at = targetTable(SAFE_TARGET);
    expect(at(50, 2500)).toBe(1);
    for (let load = 20; load < 260; load += 5) expect(at(load + 5, 3000)).toBeLessThanOrEqual(at(load, 3000));
    expect(at(180, 5000)).toBeLessThan(0.82);
  });

  it('may depend on speed as well', () => {
    const at = targetTable([
      { loadKPa: 100, speedRpm: 2000, lambda: 0.9 },
      { loadKPa: 100, speedRpm: 6000, lambda: 0.86 },
    ]);
    expect(at(100, 4000)).toBeCloseTo(0.88, 9);
  });
});

describe('the drive kept', () => {
  it('is averaged to twentieths of a second, and what holds for a part holds for all of it', () => {
    const recorder = new DriveRecorder();
    const timeS = Float64Array.from({ length: 100 }, (_, row) => row / 100);
    recorder.add({
      count: 100,
      columns: {
        timeS,
        speedRpm: timeS.map((_, row) => 1000 + row),
        lambda: timeS.map((_, row) => (row % 2 === 0 ? 0.9 : Number.NaN)),
        fuelCut: timeS.map((_, row) => (row === 7 ? 1 : 0)),
      },
    });
    const { count, at, stepS } = recorder.finish();
    expect(count).toBe(20);
    expect(stepS).toBeCloseTo(0.05, 6);
    expect(at.speedRpm?.[0]).toBeCloseTo(1002, 3);
    expect(at.lambda?.[3]).toBeCloseTo(0.9, 6);
    expect(
      [...(at.fuelCut ?? [])].map((each, index) => (each > 0 ? index : -1)).filter((index) => index >= 0),
    ).toEqual([1]);
  });
});

describe('a sensor that never moves', () => {
  it('is no reading, however much the engine does', () => {
    const recorder = new DriveRecorder();
    const timeS = Float64Array.from({ length: 6000 }, (_, row) => row / 20);
    recorder.add({
      count: timeS.length,
      columns: {
        timeS,
        speedRpm: timeS.map((t) => 2000 + 400 * Math.floor((t / 8) % 5)),
        loadKPa: timeS.map((t) => 60 + 20 * Math.floor((t / 8) % 4)),
        lambda: timeS.map(() => 1),
        coolantC: timeS.map(() => 90),
      },
    });
    const result = runToEnd(
      fuelling({
        drive: recorder.finish(),
        axes: { loadKPa: [60, 80, 100, 120], speedRpm: [2000, 2800, 3600] },
        targetAt: targetTable(SAFE_TARGET),
        capRatio: 0.1,
      }),
    );
    expect(result.usable).toBe(false);
    expect(result.droppedS['sensor-fault']).toBeGreaterThan(290);
    expect(result.cells.flat().every(({ multiplierRatio }) => multiplierRatio === 1)).toBe(true);
  });
});

describe('regions', () => {
  const axes: Axes = { loadKPa: [40, 60, 120], speedRpm: [1000, 2000, 3000] };

  it('gather neighbours that need the same, lean under load first', () => {
    const regions = regionsOf(
      [
        [cell(0.93), cell(0.95), cell()],
        [cell(1.001), cell(0.94), cell()],
        [cell(), cell(), cell(1.04)],
      ],
      axes,
    );
    expect(regions).toMatchObject([
      { direction: 'leaner', cells: 3, loadKPa: [40, 60], speedRpm: [1000, 2000] },
      { direction: 'richer', cells: 1, loadKPa: [120, 120], speedRpm: [3000, 3000] },
    ]);
    const less = regionsOf(
      [
        [cell(0.98), cell(), cell()],
        [cell(), cell(), cell()],
        [cell(), cell(), cell(1.05)],
      ],
      axes,
    );
    expect(less[0]?.direction).toBe('richer');
  });

  it('leave out what is no further off than it is known', () => {
    expect(regionsOf([[cell(1.02, 0.025), cell(0.99), cell()]], axes)).toEqual([]);
  });
});

describe('two drives', () => {
  it('are compared over the cells both speak of', () => {
    const comparison = compareDrives(
      [[cell(1.08), cell(0.95), cell(1.01), cell()]],
      [[cell(1.01), cell(0.9), cell(1.005), cell(1.1)]],
    );
    expect(comparison).toMatchObject({ cells: 3, nearer: 1, further: 1, alike: 1 });
    expect(comparison?.beforeRatio).toBeCloseTo(Math.sqrt((0.08 ** 2 + 0.05 ** 2 + 0.01 ** 2) / 3), 9);
  });

  it('without a cell in common are not', () => {
    expect(compareDrives([[cell(1.1), cell()]], [[cell(), cell(1.1)]])).toBeUndefined();
  });
});
