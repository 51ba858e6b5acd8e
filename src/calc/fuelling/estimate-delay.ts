import { type Axes, placeOn } from './axes.ts';
import { between, type Delay, delayAt, flowOf, placeInTime, USUAL_DELAY } from './delay.ts';
import type { Drive } from './drive.ts';
import type { Fit } from './fit.ts';
import { filmOf } from './readings.ts';
import { codeOf, type Screened } from './screen.ts';
import type { TargetAt } from './target.ts';

const LAGS_S = [0.03, 0.08, 0.14, 0.22] as const;
const FILMS_S = [0.2, 0.4, 0.7, 1.1] as const;
const MOST_DELAY_S = 0.9;
const DELAY_STEP_S = 0.03;
/** Edges between bands of flow, as multiples of that at 1000 rpm and 40 kPa. */
const BANDS = [0.7, 1.1, 1.7, 2.6, 4, 6.5, 11, 20] as const;
/** Readings in which the mixture has been moving, at most looked at. */
const MOST_LIVELY = 30_000;
/** λ has moved by this share within a second: a step by which a delay can be told. */
const LIVELY_RATIO = 0.025;
const LEAST_LIVELY_S = 6;
/** By how much a wrong delay must be worse before the log is believed to tell it. */
const WORSE_RATIO = 1.02;
/** The exhaust stroke alone takes 33 ms at 900 rpm: where no delay at all suits a log best, its steps tell of something else. */
const LEAST_AT_IDLE_S = 0.03;
const IDLE = { speedRpm: 900, loadKPa: 35 } as const;

/**
 * The delay that brings what the fit expects and what the sensor said closest, over all moments at which the mixture moved.
 * Too few of those, or none that tells delays apart, gives the usual figures.
 */
export function* estimateDelay(
  whole: Drive,
  screened: Screened,
  axes: Axes,
  fit: Fit,
  targetAt: TargetAt,
): Generator<void, Delay> {
  const drive = beginningOf(whole);
  const expected = yield* expectedLambda(drive, screened, axes, fit, targetAt);
  const lively = yield* livelyMoments(drive, screened, expected);
  if (lively.length * drive.stepS < LEAST_LIVELY_S) return USUAL_DELAY;
  let best: { readonly left: number; readonly delay: Delay; readonly worse: number } | undefined;
  for (const lagS of LAGS_S) {
    const heard = lagged(drive, expected, lagS);
    yield;
    for (const filmS of FILMS_S) {
      const film = lagged(drive, filmOf(drive, filmS), lagS);
      yield;
      const sums = yield* misfitByDelay(drive, lively, heard, film);
      const found = bestLine(sums);
      if (best === undefined || found.left < best.left) {
        const { fixedS, flowS, left, worse } = found;
        best = { left, worse, delay: { fixedS, flowS, lagS, filmS, from: 'log' } };
      }
    }
  }
  if (best === undefined || best.worse < WORSE_RATIO) return USUAL_DELAY;
  return delayAt(best.delay, flowOf(IDLE.speedRpm, IDLE.loadKPa)) < LEAST_AT_IDLE_S
    ? USUAL_DELAY
    : best.delay;
}

/** Two hours of twentieths of a second tell a delay as well as ten. */
const MOST_LOOKED = 144_000;

function beginningOf(drive: Drive): Drive {
  if (drive.count <= MOST_LOOKED) return drive;
  const cut = Object.entries(drive.at).map(
    ([channel, values]) => [channel, values.subarray(0, MOST_LOOKED)] as const,
  );
  return {
    ...drive,
    count: MOST_LOOKED,
    timeS: drive.timeS.subarray(0, MOST_LOOKED),
    at: Object.fromEntries(cut),
  };
}

/** λ that leaves the engine at each moment by the fit; NaN where it does not speak. */
function* expectedLambda(
  { count, at }: Drive,
  { engine }: Screened,
  axes: Axes,
  fit: Fit,
  targetAt: TargetAt,
): Generator<void, Float32Array> {
  const expected = new Float32Array(count).fill(Number.NaN);
  const speeds = axes.speedRpm.length;
  const usual = typical(fit.multiplier);
  const cell = (i: number, j: number): number => {
    const known = fit.multiplier[i * speeds + j] ?? Number.NaN;
    return Number.isNaN(known) ? usual : known;
  };
  for (let k = 0; k < count; k++) {
    if (k % 3_000 === 0) yield;
    if (engine[k] !== 0 && engine[k] !== codeOf('transient')) continue;
    const [load, rpm] = [at.loadKPa?.[k] ?? Number.NaN, at.speedRpm?.[k] ?? Number.NaN];
    const [x, y] = [placeOn(axes.loadKPa, load), placeOn(axes.speedRpm, rpm)];
    const [i, j] = [Math.floor(x), Math.floor(y)];
    const [u, v] = [x - i, y - j];
    const top = Math.min(axes.loadKPa.length - 1, i + 1);
    const right = Math.min(speeds - 1, j + 1);
    const factor =
      (cell(i, j) * (1 - v) + cell(i, right) * v) * (1 - u) +
      (cell(top, j) * (1 - v) + cell(top, right) * v) * u;
    const trim = at.trimRatio?.[k] ?? 1;
    expected[k] =
      (factor * targetAt(load, rpm, at.targetLambda?.[k] ?? Number.NaN)) / (Number.isNaN(trim) ? 1 : trim);
  }
  return expected;
}

function typical(values: Float64Array): number {
  const known = [...values].filter((value) => !Number.isNaN(value)).sort((a, b) => a - b);
  return known[known.length >> 1] ?? 1;
}

/** Moments that the sensor can be trusted at, shortly after the expected λ has moved. */
function* livelyMoments(
  drive: Drive,
  { sensor, engine }: Screened,
  expected: Float32Array,
): Generator<void, readonly number[]> {
  const { count, timeS, gapS } = drive;
  const back = Math.max(1, Math.round(1 / drive.stepS));
  const found: number[] = [];
  for (let k = back * 2; k < count; k++) {
    if (k % 3_000 === 0) yield;
    if (sensor[k] !== 0 || engine[k] !== 0) continue;
    if ((timeS[k] ?? 0) - (timeS[k - back * 2] ?? 0) > 2 * gapS + 1) continue;
    let [least, most] = [Number.POSITIVE_INFINITY, 0];
    for (let m = k - back; m <= k; m++) {
      const value = expected[m] ?? Number.NaN;
      if (value < least) least = value;
      if (value > most) most = value;
    }
    if (most / least > 1 + LIVELY_RATIO) found.push(k);
  }
  const every = Math.max(1, Math.ceil(found.length / MOST_LIVELY));
  return found.filter((_, index) => index % every === 0);
}

/** A lag of first order. Starts anew where the values do. */
function lagged({ count, timeS, gapS }: Drive, values: Float32Array, lagS: number): Float32Array {
  const out = new Float32Array(count);
  let [lastStep, share] = [Number.NaN, 0];
  for (let k = 0; k < count; k++) {
    const step = k === 0 ? Number.POSITIVE_INFINITY : (timeS[k] ?? 0) - (timeS[k - 1] ?? 0);
    const [value, before] = [values[k] ?? Number.NaN, out[k - 1] ?? Number.NaN];
    const fresh = step > gapS || !(step > 0) || Number.isNaN(before);
    // steps are nearly always alike, and the exponential is what costs
    if (!(Math.abs(step - lastStep) < 1e-6)) {
      lastStep = step;
      share = 1 - Math.exp(-step / lagS);
    }
    out[k] = fresh ? value : before + (value - before) * share;
  }
  return out;
}

/** Sums of squares of what is left, by band of flow and delay: without the film, with it, and across. */
interface Misfit {
  readonly bands: readonly {
    readonly flow: number;
    readonly sums: readonly (readonly [number, number, number])[];
  }[];
}

function* misfitByDelay(
  { timeS, at }: Drive,
  lively: readonly number[],
  expected: Float32Array,
  film: Float32Array,
): Generator<void, Misfit> {
  const delays = Math.round(MOST_DELAY_S / DELAY_STEP_S);
  const sums = new Float64Array((BANDS.length + 1) * delays * 3);
  const flows = new Float64Array(BANDS.length + 1);
  const counts = new Float64Array(BANDS.length + 1);
  for (const [looked, k] of lively.entries()) {
    if (looked % 500 === 0) yield;
    const flow = flowOf(at.speedRpm?.[k] ?? 0, at.loadKPa?.[k] ?? 0);
    const found = BANDS.findIndex((edge) => flow < edge);
    const band = found < 0 ? BANDS.length : found;
    const said = at.lambda?.[k] ?? Number.NaN;
    flows[band] = (flows[band] ?? 0) + 1 / flow;
    counts[band] = (counts[band] ?? 0) + 1;
    let place = k;
    for (let d = 0; d < delays; d++) {
      place = placeInTime(timeS, Math.floor(place), (timeS[k] ?? 0) - d * DELAY_STEP_S);
      const value = between(expected, place);
      const off = Number.isNaN(value) ? 0.15 : Math.max(-0.15, Math.min(0.15, (said - value) / value));
      const pull = Number.isNaN(value) ? 0 : between(film, place) || 0;
      const at = (band * delays + d) * 3;
      sums[at] = (sums[at] ?? 0) + off * off;
      sums[at + 1] = (sums[at + 1] ?? 0) + off * pull;
      sums[at + 2] = (sums[at + 2] ?? 0) + pull * pull;
    }
  }
  const bands = [...counts].flatMap((count, band) => {
    if (count < 40) return [];
    const own = Array.from({ length: delays }, (_, d) => {
      const at = (band * delays + d) * 3;
      return [sums[at] ?? 0, sums[at + 1] ?? 0, sums[at + 2] ?? 0] as const;
    });
    return [{ flow: count / (flows[band] ?? 1), sums: own }];
  });
  return { bands };
}

/** The fixed and the flow's part of the delay that leave least, with the film's share that suits them. */
function bestLine({ bands }: Misfit): {
  readonly fixedS: number;
  readonly flowS: number;
  readonly left: number;
  readonly worse: number;
} {
  let best = { fixedS: USUAL_DELAY.fixedS, flowS: USUAL_DELAY.flowS, left: Number.POSITIVE_INFINITY };
  const leftAt = (fixedS: number, flowS: number): number => {
    let [plain, across, film] = [0, 0, 1e-9];
    for (const { flow, sums } of bands) {
      const place = delayAt({ fixedS, flowS }, flow) / DELAY_STEP_S;
      const d = Math.min(sums.length - 2, Math.floor(place));
      const part = Math.min(1, place - d);
      const [low = [0, 0, 0], high = [0, 0, 0]] = [sums[d], sums[d + 1]];
      plain += low[0] + part * (high[0] - low[0]);
      across += low[1] + part * (high[1] - low[1]);
      film += low[2] + part * (high[2] - low[2]);
    }
    return plain - across ** 2 / film;
  };
  for (let fixedS = 0; fixedS <= 0.301; fixedS += 0.02) {
    for (let flowS = 0; flowS <= 0.601; flowS += 0.03) {
      const left = leftAt(fixedS, flowS);
      if (left < best.left) best = { fixedS, flowS, left };
    }
  }
  const { fixedS, flowS, left } = best;
  const worse = Math.min(
    leftAt(fixedS + 0.1, flowS),
    fixedS >= 0.1 ? leftAt(fixedS - 0.1, flowS) : Number.POSITIVE_INFINITY,
  );
  return { ...best, worse: bands.length === 0 ? 0 : worse / left };
}
