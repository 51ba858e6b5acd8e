import { type Channel, type Drive, DriveRecorder } from '../../../src/calc/fuelling/drive.ts';
import { type FuellingResult, fuelling } from '../../../src/calc/fuelling/fuelling.ts';
import { type Model, placeOn, type Row, runModel } from './engine.ts';

/** What a model's log has in it beside time, speed, load and λ. */
export interface Logged {
  readonly channels: readonly (keyof Row & Channel)[];
}

const ALWAYS = ['timeS', 'speedRpm', 'loadKPa', 'lambda'] as const;
export const FULL: Logged = {
  channels: ['throttleRatio', 'targetLambda', 'trimRatio', 'coolantC', 'fuelCut', 'sensorC'],
};

export function driveOf(rows: readonly Row[], { channels }: Logged = FULL): Drive {
  const recorder = new DriveRecorder();
  const columns = Object.fromEntries(
    [...ALWAYS, ...channels].map((channel) => [channel, Float64Array.from(rows, (row) => row[channel])]),
  );
  recorder.add({ count: rows.length, columns });
  return recorder.finish();
}

/** Runs a sum that yields, to its end. */
export function runToEnd<Value>(work: Generator<void, Value>): Value {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** One cell that something is claimed of, beside what is true. */
export interface Claim {
  readonly offRatio: number;
  readonly uncertaintyRatio: number;
  /** It was driven: at least 5 s steadily, 3 s of them near the cell's own point. */
  readonly driven: boolean;
}

export interface Trial {
  readonly model: Model;
  readonly result: FuellingResult;
  readonly claims: readonly Claim[];
  /** Cells that were driven, and of which nothing is claimed all the same. */
  readonly missed: number;
  /** Cells the drive never came near, and of which something is claimed all the same. */
  readonly invented: number;
}

/** Runs a model engine, fits its log, and holds what is claimed against what is true. */
export function tryModel(model: Model, logged: Logged = FULL): Trial {
  const rows = [...runModel(model)];
  const axes = { loadKPa: model.loadAxisKPa, speedRpm: model.speedAxisRpm };
  const targetAt = (load: number, _: number, wanted: number): number =>
    Number.isNaN(wanted) ? model.target(load) : wanted;
  const result = runToEnd(fuelling({ drive: driveOf(rows, logged), axes, targetAt, capRatio: 0.5 }));
  const { steadyS, nearS, touched } = truth(model, rows);
  const speeds = model.speedAxisRpm.length;
  const claims: Claim[] = [];
  let [missed, invented] = [0, 0];
  result.cells.forEach((row, i) => {
    row.forEach((cell, j) => {
      const place = i * speeds + j;
      const driven = (steadyS[place] ?? 0) >= 5 && (nearS[place] ?? 0) >= 3;
      const { fullMultiplierRatio, uncertaintyRatio } = cell;
      if (fullMultiplierRatio === undefined || uncertaintyRatio === undefined) {
        if (driven) missed++;
        return;
      }
      if (touched[place] === 0) invented++;
      const offRatio = fullMultiplierRatio / (model.errors[i]?.[j] ?? Number.NaN) - 1;
      claims.push({ offRatio, uncertaintyRatio, driven });
    });
  });
  return { model, result, claims, missed, invented };
}

/** How long each cell was driven, by the model's own knowledge. */
function truth(model: Model, rows: readonly Row[]) {
  const [loads, speeds] = [model.loadAxisKPa.length, model.speedAxisRpm.length];
  const [steadyS, nearS] = [new Float64Array(loads * speeds), new Float64Array(loads * speeds)];
  const touched = new Uint8Array(loads * speeds);
  const step = 1 / model.rowsPerS;
  const back = Math.max(1, Math.round(1 / step));
  rows.forEach((row, k) => {
    const [i, u] = placeOn(model.loadAxisKPa, row.loadKPa);
    const [j, v] = placeOn(model.speedAxisRpm, row.speedRpm);
    for (const [di, dj] of [
      [0, 0],
      [0, 1],
      [1, 0],
      [1, 1],
    ] as const)
      touched[(i + di) * speeds + j + dj] = 1;
    const before = rows[k - back];
    if (before === undefined || row.coolantC < 81 || row.fuelCut > 0 || row.timeS < 25) return;
    const moved = (now: number, then: number): boolean => Math.abs(now - then) > 0.05 * now;
    if (moved(row.loadKPa, before.loadKPa) || moved(row.speedRpm, before.speedRpm)) return;
    const place = (i + Math.round(u)) * speeds + j + Math.round(v);
    steadyS[place] = (steadyS[place] ?? 0) + step;
    if (Math.min(u, 1 - u) < 0.25 && Math.min(v, 1 - v) < 0.25) nearS[place] = (nearS[place] ?? 0) + step;
  });
  return { steadyS, nearS, touched };
}

export const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / Math.max(1, values.length));

export const share = (values: readonly boolean[]): number =>
  values.filter(Boolean).length / Math.max(1, values.length);
