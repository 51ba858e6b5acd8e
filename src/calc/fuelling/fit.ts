import type { Axes } from './axes.ts';
import {
  addReading,
  emptyEquations,
  factor,
  inverseDiagonal,
  type NormalEquations,
  solve,
} from './normal-equations.ts';
import { robustScale } from './quantiles.ts';
import { LAG_WEIGHTS, type Readings } from './readings.ts';

/** The multipliers of a table's cells that make its readings what they are, and how sure each is. */
export interface Fit {
  /** By cell, [load][speed] one after the other; NaN where no reading speaks of it. */
  readonly multiplier: Float64Array;
  /** One standard deviation of each. */
  readonly deviation: Float64Array;
  /** Seconds of readings each rests on, shared out as the table itself shares a reading among its cells. */
  readonly seconds: Float64Array;
  /** Share of the film of fuel on the walls: how much leaner a rising load reads. */
  readonly film: number;
  /** How much of each multiplier's readings the film has moved, as a share: 0 where load rose as often as it fell. */
  readonly moved: Float64Array;
  /** What is left of each reading, as a share of what was asked for. */
  readonly residual: Float32Array;
  /** 1 where a reading counted fully, 0 where it was an outlier. */
  readonly weight: Float32Array;
  /** Robust standard deviation of a single reading, as a share. */
  readonly noiseRatio: number;
  /** How many readings in a row say the same thing once. */
  readonly together: number;
}

/** A cell with less than this of readings is not spoken of at all, s. */
const LEAST_S = 0.3;
/** How unlike two neighbouring cells are expected to be, and how far off a cell is, as standard deviations. Wide, so that they
 * only carry where readings do not. */
const NEIGHBOUR = 0.09;
const FAR_OFF = 0.2;
const FILM_EXPECTED = 0.3;
const HUBER = 1.5;
const TUKEY = 5;
const ROUNDS = 8;

/**
 * Fits the multipliers of all cells at once: λ_measured(t) = Σ x_c(t)·m_c, where x is the table's own bilinear interpolation
 * where the engine was when the gas left it, times the λ asked for over the closed loop's trim. Robust by reweighting: Huber's
 * weights first, then Tukey's, which let gross outliers go.
 *
 * Not cell by cell: a weighted mean in each cell blurs a rough one into its neighbours.
 * Source: iteratively reweighted least squares (keys HUBER, TUKEY); the prior on neighbours is our own and only fills.
 */
export function* fitMultipliers(readings: Readings, axes: Axes): Generator<void, Fit> {
  const [loads, speeds] = [axes.loadKPa.length, axes.speedRpm.length];
  const cells = loads * speeds;
  const { count } = readings;
  const reading = readerOf(readings, speeds);
  const seconds = new Float64Array(cells);
  for (let r = 0; r < count; r++) {
    if (r % 1_500 === 0) yield;
    const used = reading.read(r);
    for (let k = 0; k < used; k++) {
      const cell = reading.unknowns[k] ?? 0;
      if (cell < cells)
        seconds[cell] = (seconds[cell] ?? 0) + (reading.plain[k] ?? 0) * (readings.seconds[r] ?? 0);
    }
  }
  const place = numbered(seconds);
  const size = place.count + 1;
  const weight = new Float32Array(count).fill(1);
  const residual = new Float32Array(count);
  let noiseRatio = 0.02;
  let together = Math.max(1, 0.6 / Math.max(0.01, readings.seconds[0] ?? 0.05));
  let equations: NormalEquations = emptyEquations(size);
  let lower: Float64Array = new Float64Array(0);
  let found: Float64Array = new Float64Array(0);
  for (let round = 0; round < ROUNDS; round++) {
    equations = emptyEquations(size);
    const precision = 1 / (noiseRatio ** 2 * together);
    for (let r = 0; r < count; r++) {
      if (r % 1_500 === 0) yield;
      const used = reading.readInto(r, place.of, size - 1);
      const scale = reading.scale;
      addReading(
        equations,
        reading.unknowns,
        reading.shares,
        used,
        readings.lambda[r] ?? 0,
        (precision * (weight[r] ?? 0) * (readings.trust[r] ?? 0)) / (scale * scale),
      );
    }
    addPrior(equations, place.of, loads, speeds);
    lower = yield* factor(equations);
    found = solve(lower, size, equations.right);
    for (let r = 0; r < count; r++) {
      if (r % 3_000 === 0) yield;
      const used = reading.readInto(r, place.of, size - 1);
      let said = 0;
      for (let k = 0; k < used; k++)
        said += (reading.shares[k] ?? 0) * (found[reading.unknowns[k] ?? 0] ?? 0);
      // what moves is told less sharply: a residual is measured by what it is expected to be
      residual[r] = ((readings.lambda[r] ?? 0) - said) / reading.scale;
    }
    noiseRatio = Math.max(0.0005, scaleOfTrusted(residual, readings));
    yield;
    for (let r = 0; r < count; r++) {
      const z = (Math.abs(residual[r] ?? 0) * Math.sqrt(readings.trust[r] ?? 1)) / noiseRatio;
      weight[r] = round < 4 ? Math.min(1, HUBER / z) : z < TUKEY ? (1 - (z / TUKEY) ** 2) ** 2 : 0;
    }
    together = alike(residual, weight, readings);
  }
  const moved = movedByFilm(readings, weight, found[size - 1] ?? 0, cells, speeds);
  const variance = yield* inverseDiagonal(lower, size);
  const multiplier = new Float64Array(cells).fill(Number.NaN);
  const deviation = new Float64Array(cells).fill(Number.NaN);
  for (let cell = 0; cell < cells; cell++) {
    const unknown = place.of[cell] ?? -1;
    if (unknown < 0) continue;
    multiplier[cell] = found[unknown] ?? Number.NaN;
    deviation[cell] = Math.sqrt(variance[unknown] ?? Number.NaN);
  }
  return {
    multiplier,
    deviation,
    seconds,
    film: found[size - 1] ?? 0,
    moved,
    residual,
    weight,
    noiseRatio,
    together,
  };
}

/** What the film's share comes to on the average of the readings nearest to each cell. */
function movedByFilm(
  { count, load, speed, film, trust }: Readings,
  weight: Float32Array,
  share: number,
  cells: number,
  speeds: number,
): Float64Array {
  const [sum, all] = [new Float64Array(cells), new Float64Array(cells)];
  for (let r = 0; r < count; r++) {
    const cell = Math.round(load[0][r] ?? 0) * speeds + Math.round(speed[0][r] ?? 0);
    const counted = (weight[r] ?? 0) * (trust[r] ?? 0);
    sum[cell] = (sum[cell] ?? 0) + counted * (film[r] ?? 0);
    all[cell] = (all[cell] ?? 0) + counted;
  }
  return sum.map((each, cell) => ((all[cell] ?? 0) > 0 ? (share * each) / (all[cell] ?? 1) : 0));
}

/** Gives the cells that are spoken of numbers of their own; -1 for the others. */
function numbered(seconds: Float64Array): { readonly of: Int32Array; readonly count: number } {
  const of = new Int32Array(seconds.length).fill(-1);
  let count = 0;
  seconds.forEach((each, cell) => {
    if (each >= LEAST_S) of[cell] = count++;
  });
  return { of, count };
}

/** Reads one reading's cells and shares into buffers of its own, since this is done some millions of times. */
function readerOf({ asked, load, speed, film }: Readings, speeds: number) {
  const unknowns = new Int32Array(9);
  const shares = new Float64Array(9);
  const plain = new Float64Array(9);
  const reader = {
    unknowns,
    shares,
    /** The shares without what was asked for: they come to 1. */
    plain,
    /** λ asked for over the trim. */
    scale: 1,
    read(r: number): number {
      let used = 0;
      let scale = 0;
      for (let node = 0; node < 2; node++) {
        const [asks, loads, rpms] = [asked[node], load[node], speed[node]];
        const part = LAG_WEIGHTS[node] ?? 0;
        const ask = asks?.[r] ?? 1;
        scale += part * ask;
        const [x, y] = [loads?.[r] ?? 0, rpms?.[r] ?? 0];
        const [i, j] = [Math.floor(x), Math.floor(y)];
        const [u, v] = [x - i, y - j];
        for (let corner = 0; corner < 4; corner++) {
          const [di, dj] = [corner >> 1, corner & 1];
          const share = part * (di === 0 ? 1 - u : u) * (dj === 0 ? 1 - v : v);
          if (share < 1e-6) continue;
          unknowns[used] = (i + di) * speeds + j + dj;
          plain[used] = share;
          shares[used] = share * ask;
          used++;
        }
      }
      reader.scale = scale;
      return used;
    },
    /** The same in the numbers of the unknowns; cells nobody speaks of are taken as their neighbours in this reading. */
    readInto(r: number, of: Int32Array, filmUnknown: number): number {
      const all = reader.read(r);
      let used = 0;
      let missing = 0;
      for (let k = 0; k < all; k++) {
        const unknown = of[unknowns[k] ?? 0] ?? -1;
        if (unknown < 0) {
          missing += shares[k] ?? 0;
          continue;
        }
        unknowns[used] = unknown;
        shares[used] = shares[k] ?? 0;
        used++;
      }
      if (missing > 0) {
        const kept = shares.subarray(0, used).reduce((sum, share) => sum + share, 0);
        if (kept > 0) for (let k = 0; k < used; k++) shares[k] = (shares[k] ?? 0) * (1 + missing / kept);
      }
      unknowns[used] = filmUnknown;
      shares[used] = reader.scale * (film[r] ?? 0);
      return used + 1;
    },
  };
  return reader;
}

/** Neighbours are alike and no cell is far off, but only weakly so: it decides where readings do not. */
function addPrior(
  { size, matrix, right }: NormalEquations,
  of: Int32Array,
  loads: number,
  speeds: number,
): void {
  const add = (row: number, column: number, value: number): void => {
    const place = Math.max(row, column) * size + Math.min(row, column);
    matrix[place] = (matrix[place] ?? 0) + value;
  };
  const alikeness = 1 / NEIGHBOUR ** 2;
  const nearness = 1 / FAR_OFF ** 2;
  for (let i = 0; i < loads; i++) {
    for (let j = 0; j < speeds; j++) {
      const own = of[i * speeds + j] ?? -1;
      if (own < 0) continue;
      add(own, own, nearness);
      right[own] = (right[own] ?? 0) + nearness;
      const beside = [
        i + 1 < loads ? of[(i + 1) * speeds + j] : -1,
        j + 1 < speeds ? of[i * speeds + j + 1] : -1,
      ];
      for (const other of beside) {
        if (other === undefined || other < 0) continue;
        add(own, own, alikeness);
        add(other, other, alikeness);
        add(own, other, -alikeness);
      }
    }
  }
  add(size - 1, size - 1, 1 / FILM_EXPECTED ** 2);
}

/** The robust scale of what is left, among the steadier readings. */
function scaleOfTrusted(residual: Float32Array, { trust }: Readings): number {
  const every = Math.max(1, Math.floor(residual.length / 20_000));
  const scaled: number[] = [];
  for (let r = 0; r < residual.length; r += every) scaled.push((residual[r] ?? 0) * Math.sqrt(trust[r] ?? 1));
  return robustScale(scaled);
}

/** Up to how many readings apart they are compared. */
const FAR_S = 4;

/**
 * How many readings in a row say the same thing once: 1 + 2·Σρ_k, the sum of the residuals' autocorrelation up to where it has
 * died away. Key PRIESTLEY.
 */
function alike(residual: Float32Array, weight: Float32Array, { timeS, seconds, count }: Readings): number {
  const step = Math.max(0.01, seconds[Math.min(count - 1, 10)] ?? 0.05);
  const most = Math.max(2, Math.round(FAR_S / step));
  const stride = Math.max(1, Math.floor(count / 15_000));
  let sum = 1;
  let variance = 0;
  let looked = 0;
  for (let r = 0; r < count; r += stride) {
    if ((weight[r] ?? 0) === 0) continue;
    variance += (residual[r] ?? 0) ** 2;
    looked++;
  }
  if (looked < 10) return most;
  variance /= looked;
  for (let lag = 1; lag < most; lag = lag < 10 ? lag + 1 : Math.ceil(lag * 1.25)) {
    let product = 0;
    let pairs = 0;
    for (let r = lag; r < count; r += stride) {
      if ((timeS[r] ?? 0) - (timeS[r - lag] ?? 0) > lag * step * 1.5) continue;
      if ((weight[r] ?? 0) === 0 || (weight[r - lag] ?? 0) === 0) continue;
      product += (residual[r] ?? 0) * (residual[r - lag] ?? 0);
      pairs++;
    }
    if (pairs < 20) break;
    const rho = product / pairs / variance;
    if (rho < 0.03) break;
    // beyond the tenth not every lag is looked at: each stands for those up to the next
    sum += 2 * rho * (lag < 10 ? 1 : Math.ceil(lag * 1.25) - lag);
  }
  return Math.min(most, sum);
}
