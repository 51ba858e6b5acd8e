import type { JsonObject } from '../core/json.ts';
import type { LogView } from './log-view.ts';

/** A log's result for scripts: rows of loads, columns of speeds; null where nothing is claimed. */
export function logData({ analysed, capRatio, comparison }: LogView): JsonObject {
  const { result, axes, tally, columns, dangers, targetFrom, axesFrom } = analysed;
  const { cells, delay } = result;
  return {
    kind: 'fuelling-from-log',
    usable: result.usable,
    rows: tally.rows,
    totalS: result.totalS,
    usedS: result.usedS,
    droppedS: { ...result.droppedS },
    loadAxisKPa: [...axes.loadKPa],
    speedAxisRpm: [...axes.speedRpm],
    axesFrom,
    targetFrom,
    capRatio,
    multiplierRatio: cells.map((row) => row.map((cell) => cell.multiplierRatio)),
    fullMultiplierRatio: cells.map((row) => row.map((cell) => cell.fullMultiplierRatio ?? null)),
    uncertaintyRatio: cells.map((row) => row.map((cell) => cell.uncertaintyRatio ?? null)),
    cellSeconds: cells.map((row) => row.map((cell) => cell.seconds)),
    leftAlone: cells.map((row) => row.map((cell) => cell.leftAlone ?? null)),
    delay: { fixedS: delay.fixedS, flowS: delay.flowS, lagS: delay.lagS, from: delay.from },
    warnings: dangers.map(({ kind, value, expected, times, place }) => ({
      kind,
      value,
      expected: Number.isNaN(expected) ? null : expected,
      times,
      timeS: place.timeS,
      speedRpm: place.speedRpm,
      loadKPa: Number.isNaN(place.loadKPa) ? null : place.loadKPa,
    })),
    suspicions: result.suspicions.map(({ kind, loadKPa, speedRpm, leanRatio, cells: touched }) => ({
      kind,
      loadKPa,
      speedRpm,
      leanRatio,
      cells: touched.length,
    })),
    columns: Object.fromEntries(columns.map(({ role, name }) => [role, name])),
    ...(comparison === undefined ? {} : { comparison: { ...comparison } }),
  };
}
