import { quantiles } from './quantiles.ts';
import type { Suspicion, SuspicionQuestion } from './suspicion.ts';

/** Leaner than usual by this much, and by so many times what it is ever richer, is no noise of a sensor. */
const JUMP_RATIO = 0.06;
const LOPSIDED = 3;
/** A share of readings that jump, and how often they must do so anew. */
const TAIL = 0.03;
const LEAST_JUMPS = 4;
const LEAST_JUMPS_PER_S = 0.1;
const LEAST_S = 3;
/** Readings looked at in one cell. */
const MOST = 3_000;

/**
 * Cells in which λ jumps lean again and again and never as far rich: burns that fail leave their oxygen behind. Common practice,
 * no source; it is a suspicion, since a loose plug of the sensor looks much the same.
 */
export function misfire({ axes, sorted, fit }: SuspicionQuestion): Suspicion | undefined {
  const { readings } = sorted;
  const speeds = axes.speedRpm.length;
  const found = byCell(readings, speeds);
  const bad = new Map<number, number>();
  for (const [cell, members] of found) {
    const seconds = members.reduce((sum, r) => sum + (readings.seconds[r] ?? 0), 0);
    if (seconds < LEAST_S) continue;
    const left = members.map((r) => fit.residual[r] ?? 0);
    const [low = 0, middle = 0, high = 0] = quantiles(left, [TAIL, 0.5, 1 - TAIL]);
    const jump = high - middle;
    if (jump < JUMP_RATIO || jump < LOPSIDED * (middle - low)) continue;
    const jumps = left.filter(
      (each, k) => each - middle > jump / 2 && !((left[k - 1] ?? 0) - middle > jump / 2),
    ).length;
    if (jumps >= Math.max(LEAST_JUMPS, LEAST_JUMPS_PER_S * seconds)) bad.set(cell, jump);
  }
  const [worst] = [...bad].sort((a, b) => b[1] - a[1]);
  if (worst === undefined) return undefined;
  const [cell, leanRatio] = worst;
  return {
    kind: 'misfire',
    cells: touched(bad, found, sorted.readings, axes.loadKPa.length, speeds),
    loadKPa: axes.loadKPa[Math.floor(cell / speeds)] ?? Number.NaN,
    speedRpm: axes.speedRpm[cell % speeds] ?? Number.NaN,
    leanRatio,
  };
}

/** Readings by the cell they lie nearest to; of many in one cell every so many-th stretch is looked at. */
function byCell(
  readings: SuspicionQuestion['sorted']['readings'],
  speeds: number,
): ReadonlyMap<number, readonly number[]> {
  const cells = new Map<number, number[]>();
  for (let r = 0; r < readings.count; r++) {
    if ((readings.trust[r] ?? 0) < 0.3) continue;
    const cell = Math.round(readings.load[0][r] ?? 0) * speeds + Math.round(readings.speed[0][r] ?? 0);
    const members = cells.get(cell);
    if (members === undefined) cells.set(cell, [r]);
    else if (members.length < MOST) members.push(r);
  }
  return cells;
}

/** The bad cells, and those whose readings mostly lie nearest to a bad one. */
function touched(
  bad: ReadonlyMap<number, number>,
  found: ReadonlyMap<number, readonly number[]>,
  readings: SuspicionQuestion['sorted']['readings'],
  loads: number,
  speeds: number,
): readonly number[] {
  const [all, spoilt] = [new Float64Array(loads * speeds), new Float64Array(loads * speeds)];
  for (const [nearest, members] of found) {
    for (const r of members) {
      const [x, y] = [readings.load[0][r] ?? 0, readings.speed[0][r] ?? 0];
      const [i, j] = [Math.floor(x), Math.floor(y)];
      for (const [di, dj] of CORNERS) {
        const share = (di === 0 ? 1 - (x - i) : x - i) * (dj === 0 ? 1 - (y - j) : y - j);
        const cell = (i + di) * speeds + j + dj;
        if (!(share > 0)) continue;
        all[cell] = (all[cell] ?? 0) + share;
        if (bad.has(nearest)) spoilt[cell] = (spoilt[cell] ?? 0) + share;
      }
    }
  }
  return [...all.keys()].filter((cell) => bad.has(cell) || (spoilt[cell] ?? 0) > 0.5 * (all[cell] ?? 0));
}

const CORNERS = [
  [0, 0],
  [0, 1],
  [1, 0],
  [1, 1],
] as const;
