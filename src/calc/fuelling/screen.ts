import type { Drive } from './drive.ts';
import { quantiles } from './quantiles.ts';

/** Why a moment of a drive is not used, in the order in which it is looked for. */
export const dropReasons = [
  'no-reading',
  'not-running',
  'fuel-cut',
  'cold-sensor',
  'sensor-fault',
  'warm-up',
  'transient',
  'outlier',
] as const;

export type DropReason = (typeof dropReasons)[number];

/** What is known of each moment before anything is fitted. Reasons are numbers: 0 is none, else the index above plus 1. */
export interface Screened {
  /** Against what the sensor says at that moment. */
  readonly sensor: Uint8Array;
  /** Against what the engine does at that moment; the sensor hears of it later. */
  readonly engine: Uint8Array;
  /** How fast load, speed and throttle change and have changed, as a share per second. */
  readonly rate: Float32Array;
  readonly notes: readonly string[];
}

/** λ that a sensor of this trade can tell apart; common practice, no source. */
const SENSOR_RANGE = { least: 0.6, most: 1.5 } as const;
const RUNNING_RPM = 400;
/** After fuel comes back its film on the walls must build up again. */
const AFTER_CUT_S = 2;
const BEFORE_CUT_S = 0.6;
/** Heater and start enrichment; common practice, no source. */
const AFTER_START_S = 20;
/** So long a cold engine is taken to warm up where no temperature tells. */
const BLIND_WARM_UP_S = 300;
const WARM_SENSOR_C = 650;
/** A change of load is still heard this long: the film of fuel on the walls. */
const MEMORY_S = 0.5;
/** Changes faster than this are a transient. */
export const TRANSIENT_PER_S = 0.25;

export const codeOf = (reason: DropReason): number => dropReasons.indexOf(reason) + 1;

export function* screen(drive: Drive): Generator<void, Screened> {
  const { count, timeS, at, gapS } = drive;
  const sensor = new Uint8Array(count);
  const engine = new Uint8Array(count);
  const { speedRpm = none, loadKPa = none, lambda = none } = at;
  const notes: string[] = [];
  const warmC = warmEnough(at.coolantC, notes);
  const overrun = overrunTest(drive);
  const stuck = stuckReadings(drive);
  yield;
  let startedS = Number.NEGATIVE_INFINITY;
  let stoodStill = false;
  let cutUntilS = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    if (i % 5_000 === 0) yield;
    const time = timeS[i] ?? 0;
    const [rpm, load, reading] = [
      speedRpm[i] ?? Number.NaN,
      loadKPa[i] ?? Number.NaN,
      lambda[i] ?? Number.NaN,
    ];
    if (rpm < RUNNING_RPM) stoodStill = true;
    else if (stoodStill && rpm >= RUNNING_RPM) {
      stoodStill = false;
      startedS = time;
    }
    if ((at.fuelCut?.[i] ?? 0) > 0.5 || overrun(i)) {
      cutUntilS = time + AFTER_CUT_S;
      for (let back = i - 1; back >= 0 && time - (timeS[back] ?? 0) < BEFORE_CUT_S; back--) {
        if (sensor[back] === 0) sensor[back] = codeOf('fuel-cut');
      }
    }
    const sinceStart = time - startedS;
    engine[i] =
      Number.isNaN(rpm) || Number.isNaN(load)
        ? codeOf('no-reading')
        : rpm < RUNNING_RPM
          ? codeOf('not-running')
          : time < cutUntilS
            ? codeOf('fuel-cut')
            : (at.coolantC?.[i] ?? warmC) < warmC ||
                sinceStart < (at.coolantC === undefined ? BLIND_WARM_UP_S : AFTER_START_S) ||
                enriched(at.enrichmentRatio?.[i])
              ? codeOf('warm-up')
              : 0;
    const cold =
      (at.sensorC?.[i] ?? WARM_SENSOR_C) < WARM_SENSOR_C ||
      (at.sensorC === undefined && sinceStart < AFTER_START_S);
    sensor[i] =
      time < cutUntilS
        ? codeOf('fuel-cut')
        : cold
          ? codeOf('cold-sensor')
          : Number.isNaN(reading)
            ? codeOf(at.lambda === undefined ? 'no-reading' : 'sensor-fault')
            : (at.sensorFault?.[i] ?? 0) > 0.5 ||
                reading < SENSOR_RANGE.least ||
                reading > SENSOR_RANGE.most ||
                stuck[i] === 1
              ? codeOf('sensor-fault')
              : 0;
  }
  const rate = new Float32Array(count);
  const half = Math.max(1, Math.round(0.25 / drive.stepS));
  let held = 1;
  for (let i = 0; i < count; i++) {
    if (i % 5_000 === 0) yield;
    const step = i === 0 ? Number.POSITIVE_INFINITY : (timeS[i] ?? 0) - (timeS[i - 1] ?? 0);
    held = step > gapS || step < 0 ? 1 : held * Math.exp(-step / MEMORY_S);
    if ((at.transientFuel?.[i] ?? 0) > 0.5) held = 1;
    held = Math.max(held, changeAt(drive, i, half));
    rate[i] = held;
  }
  return { sensor, engine, rate, notes };
}

const none = new Float32Array(0);

const enriched = (ratio: number | undefined): boolean => ratio !== undefined && Math.abs(ratio - 1) > 0.005;

/** How fast load, throttle and speed change around a moment, as a share per second. */
function changeAt({ timeS, at, gapS, count }: Drive, index: number, half: number): number {
  let [from, to] = [Math.max(0, index - half), Math.min(count - 1, index + half)];
  const time = timeS[index] ?? 0;
  while (from < index && time - (timeS[from] ?? 0) > half * gapS) from++;
  while (to > index && (timeS[to] ?? 0) - time > half * gapS) to--;
  const span = (timeS[to] ?? 0) - (timeS[from] ?? 0);
  if (!(span > 0)) return 1;
  const relative = (values: Float32Array | undefined): number => {
    const [a, b] = [values?.[from] ?? Number.NaN, values?.[to] ?? Number.NaN];
    return a > 0 && b > 0 ? Math.abs(Math.log(b / a)) / span : 0;
  };
  const throttle = Math.abs((at.throttleRatio?.[to] ?? 0) - (at.throttleRatio?.[from] ?? 0)) / span;
  return relative(at.loadKPa) + 0.3 * relative(at.speedRpm) + (Number.isNaN(throttle) ? 0 : throttle);
}

/** A little under where the thermostat holds this engine, never below 60 °C nor above 80 °C. */
function warmEnough(coolantC: Float32Array | undefined, notes: string[]): number {
  if (coolantC === undefined) {
    notes.push('The log has no coolant temperature: it is taken that the engine was warm throughout.');
    return Number.NEGATIVE_INFINITY;
  }
  const [held = 80] = quantiles(coolantC, [0.9]);
  const warmC = Math.min(80, Math.max(60, held - 6));
  notes.push(`Warm is taken as ${Math.round(warmC)} °C of coolant and more.`);
  return warmC;
}

/** Closed throttle, turning faster than idle, and far too lean to burn: the fuel is cut although no column says so. */
function overrunTest({ at }: Drive): (index: number) => boolean {
  const { lambda, speedRpm, throttleRatio, loadKPa, pulseMs } = at;
  const closed = quantiles(throttleRatio ?? none, [0.02])[0];
  const lowest = quantiles(loadKPa ?? none, [0.02])[0];
  return (index) => {
    const rpm = speedRpm?.[index] ?? 0;
    if (rpm < RUNNING_RPM) return false;
    if ((pulseMs?.[index] ?? 1) < 0.05) return true;
    if (!((lambda?.[index] ?? 0) > 1.3) || rpm < 1200) return false;
    if (closed !== undefined) return (throttleRatio?.[index] ?? 1) < closed + 0.02;
    return lowest !== undefined && (loadKPa?.[index] ?? 1000) < lowest + 6;
  };
}

/** However coarsely it is written, λ of a running engine moves within this time. Common practice, no source. */
const LONGEST_STILL_S = 20;

/** Readings that stay the same to the last digit for much longer than this sensor's usually do, or than any does. */
function stuckReadings({ count, at, timeS, stepS }: Drive): Uint8Array {
  const stuck = new Uint8Array(count);
  const { lambda } = at;
  if (lambda === undefined) return stuck;
  const runs: { readonly from: number; readonly to: number; readonly seconds: number }[] = [];
  let from = 0;
  for (let i = 1; i <= count; i++) {
    if (i < count && lambda[i] === lambda[from]) continue;
    const seconds = (timeS[i - 1] ?? 0) - (timeS[from] ?? 0);
    if (i - from > 3 && seconds > 0.8) runs.push({ from, to: i, seconds });
    from = i;
  }
  const inRuns = runs.reduce((sum, { seconds }) => sum + seconds, 0) / Math.max(stepS, count * stepS);
  const usual = quantiles(
    runs.map(({ seconds }) => seconds),
    [0.5],
  )[0];
  const longest = inRuns < 0.1 ? 1.2 : Math.min(LONGEST_STILL_S, Math.max(3, 6 * (usual ?? 1)));
  for (const run of runs) if (run.seconds > longest) stuck.fill(1, run.from, run.to);
  return stuck;
}
