import { describe, expect, it } from 'vitest';
import { type Danger, DangerWatch } from '../../../../src/calc/fuelling/dangers.ts';
import type { Rows } from '../../../../src/calc/fuelling/drive.ts';
import { driveKinds } from '../../../support/model-engine/drives.ts';
import { type Model, modelOf, type Row, runModel } from '../../../support/model-engine/engine.ts';

const CHANNELS = [
  'timeS',
  'speedRpm',
  'loadKPa',
  'lambda',
  'targetLambda',
  'coolantC',
  'oilKPa',
  'fuelKPa',
  'dutyRatio',
  'fuelCut',
] as const;

function watch(rows: readonly Row[]): readonly Danger[] {
  const watching = new DangerWatch((_, __, logged) => logged);
  // in batches of odd sizes, as a reader hands them out
  for (let from = 0; from < rows.length; from += 777) {
    const part = rows.slice(from, from + 777);
    const columns: Rows['columns'] = {
      ...Object.fromEntries(
        CHANNELS.map((channel) => [channel, Float64Array.from(part, (row) => row[channel])]),
      ),
      knock: Float64Array.from(part, (row) => row.knockCount),
    };
    watching.add({ count: part.length, columns });
  }
  return watching.finish();
}

const boosted = (given: Partial<Model>): Model =>
  modelOf(4, {
    kind: 'pulls',
    seconds: 240,
    topKPa: 180,
    coldStart: false,
    faults: false,
    film: { shareRatio: 0.1, timeS: 0.3 },
    ...given,
  });

describe('what can cost the engine', { timeout: 60_000 }, () => {
  it.each<[Model['danger'], string]>([
    ['knock', 'knock'],
    ['lean', 'lean'],
    ['duty', 'duty'],
    ['fuel-pressure', 'fuel-pressure'],
    ['oil-pressure', 'oil-pressure'],
  ])('is found: %s', (danger, kind) => {
    const [first, ...more] = watch([...runModel(boosted({ danger }))]);
    expect(first?.kind).toBe(kind);
    expect(more.map((each) => each.kind)).toEqual([]);
    expect(first?.place.timeS).toBeGreaterThan(0);
  });

  it('is not found where there is none', () => {
    for (const kind of driveKinds) {
      for (let seed = 1; seed <= 4; seed++) {
        const model = modelOf(seed * 31, { kind, seconds: 200, faults: seed % 2 === 0 });
        expect(
          watch([
            ...runModel({ ...model, errors: model.loadAxisKPa.map(() => model.speedAxisRpm.map(() => 1)) }),
          ]),
        ).toEqual([]);
      }
    }
  });

  it('comes in the order of what costs most', () => {
    const rows = [...runModel(boosted({ danger: 'oil-pressure' }))].map((row) => ({
      ...row,
      knockCount: row.timeS > 100 ? Math.floor(row.timeS / 20) : 0,
    }));
    expect(watch(rows).map(({ kind }) => kind)).toEqual(['knock', 'oil-pressure']);
  });

  it('needs to last: one lean reading under boost is none', () => {
    const rows = [...runModel(boosted({}))].map((row, index) => ({
      ...row,
      lambda: index % 97 === 0 && row.loadKPa > 120 ? 1.1 : row.lambda,
    }));
    expect(watch(rows).filter(({ kind }) => kind === 'lean')).toEqual([]);
  });

  it('tells a regulator that follows the manifold from one that does not', () => {
    const fixed = [...runModel(boosted({}))].map((row) => ({ ...row, fuelKPa: 350 }));
    expect(watch(fixed)).toEqual([]);
  });
});
