import { type Axes, placeOn } from './axes.ts';
import { between, type Delay, delayAt, flowOf, placeInTime } from './delay.ts';
import type { Drive } from './drive.ts';
import { codeOf, type DropReason, dropReasons, type Screened, TRANSIENT_PER_S } from './screen.ts';
import type { TargetAt } from './target.ts';

/**
 * Every reading that counts, ready for the fit. A sensor's lag of first order is an average over its past: two moments of it
 * (Gauss and Laguerre's two points) stand for all of it, so a reading is a sum over at most eight cells.
 */
export interface Readings {
  readonly count: number;
  /** λ as measured. */
  readonly lambda: Float32Array;
  /** λ asked for, over the closed loop's trim, at the two moments: what the cells' multipliers are multiplied by. */
  readonly asked: readonly [Float32Array, Float32Array];
  /** Where on the axes the engine was. */
  readonly load: readonly [Float32Array, Float32Array];
  readonly speed: readonly [Float32Array, Float32Array];
  /** How the load has moved of late: what the film of fuel on the walls answers to. */
  readonly film: Float32Array;
  /** 1 for steady running, less the more things move. */
  readonly trust: Float32Array;
  readonly seconds: Float32Array;
  readonly timeS: Float64Array;
}

export interface Sorted {
  readonly readings: Readings;
  /** Seconds dropped, by reason. */
  readonly droppedS: Readonly<Record<DropReason, number>>;
  readonly totalS: number;
}

/** Points and weights of Gauss and Laguerre for two points (key ABRAMOWITZ, table 25.9). */
export const LAG_POINTS = [0.585786, 3.414214] as const;
export const LAG_WEIGHTS = [0.853553, 0.146447] as const;
/** At this rate of change a reading counts half. */
const HALF_TRUST_PER_S = 0.06;

export function* sortReadings(
  drive: Drive,
  screened: Screened,
  axes: Axes,
  delay: Delay,
  targetAt: TargetAt,
): Generator<void, Sorted> {
  const { count, timeS, at, gapS } = drive;
  const { speedRpm, loadKPa, lambda, trimRatio, targetLambda } = at;
  const film = filmOf(drive, delay.filmS);
  const droppedS = Object.fromEntries(dropReasons.map((reason) => [reason, 0])) as Record<DropReason, number>;
  const out = room(count);
  let used = 0;
  let totalS = 0;
  let segment = 0;
  for (let i = 0; i < count; i++) {
    if (i % 1_500 === 0) yield;
    const time = timeS[i] ?? 0;
    const step = i === 0 ? drive.stepS : time - (timeS[i - 1] ?? 0);
    if (step > gapS || step < 0) segment = i;
    const seconds = step > gapS || step < 0 ? drive.stepS : step;
    totalS += seconds;
    const drop = (code: number): void => {
      const reason = dropReasons[code - 1];
      if (reason !== undefined) droppedS[reason] += seconds;
    };
    if (screened.sensor[i] !== 0 || screened.engine[i] === codeOf('no-reading')) {
      drop(screened.sensor[i] || codeOf('no-reading'));
      continue;
    }
    const late = delayAt(delay, flowOf(speedRpm?.[i] ?? 0, loadKPa?.[i] ?? 0));
    const places = LAG_POINTS.map((point) => placeInTime(timeS, i, time - late - point * delay.lagS));
    const [near = 0, far = 0] = places;
    const source = Math.round(near);
    if (far < segment || Math.floor(far) < segment) {
      drop(codeOf('transient'));
      continue;
    }
    const against = screened.engine[source] || screened.engine[Math.floor(far)] || 0;
    const rate = screened.rate[source] ?? 1;
    if (against !== 0) {
      drop(against);
      continue;
    }
    if (rate > TRANSIENT_PER_S) {
      drop(codeOf('transient'));
      continue;
    }
    let missing = false;
    places.forEach((place, node) => {
      const [load, rpm] = [between(loadKPa ?? [], place), between(speedRpm ?? [], place)];
      const trim = trimRatio === undefined ? 1 : between(trimRatio, place);
      const logged = targetLambda === undefined ? Number.NaN : between(targetLambda, place);
      const asked = targetAt(load, rpm, logged) / (Number.isNaN(trim) ? 1 : trim);
      if (!Number.isFinite(asked) || Number.isNaN(load) || Number.isNaN(rpm)) missing = true;
      const [asks, loads, speeds] = [out.asked[node], out.load[node], out.speed[node]];
      if (asks && loads && speeds) {
        asks[used] = asked;
        loads[used] = placeOn(axes.loadKPa, load);
        speeds[used] = placeOn(axes.speedRpm, rpm);
      }
    });
    if (missing) {
      drop(codeOf('no-reading'));
      continue;
    }
    out.lambda[used] = lambda?.[i] ?? Number.NaN;
    out.film[used] = between(film, near);
    out.trust[used] = 1 / (1 + (rate / HALF_TRUST_PER_S) ** 2);
    out.seconds[used] = seconds;
    out.timeS[used] = time;
    used++;
  }
  return { readings: trimmed(out, used), droppedS, totalS };
}

/** How the film of fuel on the walls has been made to change: the change of load, fading over its time. */
export function filmOf({ count, timeS, at, gapS }: Drive, lastsS: number): Float32Array {
  const film = new Float32Array(count);
  const { loadKPa } = at;
  for (let i = 1; i < count; i++) {
    const step = (timeS[i] ?? 0) - (timeS[i - 1] ?? 0);
    const change = Math.log((loadKPa?.[i] ?? Number.NaN) / (loadKPa?.[i - 1] ?? Number.NaN));
    if (step > gapS || !(step > 0) || !Number.isFinite(change)) continue;
    const fade = Math.exp(-step / lastsS);
    film[i] = (film[i - 1] ?? 0) * fade + change * Math.sqrt(fade);
  }
  return film;
}

/** Every so many-th reading, so that no more than `most` are left: enough to find a delay by. */
export function thinned(readings: Readings, most: number): Readings {
  const every = Math.ceil(readings.count / most);
  if (every <= 1) return readings;
  const count = Math.floor(readings.count / every);
  const pick = (values: Float32Array): Float32Array => {
    const picked = new Float32Array(count);
    for (let index = 0; index < count; index++) picked[index] = values[index * every] ?? Number.NaN;
    return picked;
  };
  const both = ([a, b]: readonly [Float32Array, Float32Array]) => [pick(a), pick(b)] as const;
  return {
    count,
    lambda: pick(readings.lambda),
    asked: both(readings.asked),
    load: both(readings.load),
    speed: both(readings.speed),
    film: pick(readings.film),
    trust: pick(readings.trust),
    seconds: pick(readings.seconds).map((each) => each * every),
    timeS: readings.timeS.filter((_, index) => index % every === 0).slice(0, count),
  };
}

type Room = { -readonly [Key in keyof Readings]: Readings[Key] };

function room(count: number): Room {
  const floats = (): Float32Array => new Float32Array(count);
  return {
    count,
    lambda: floats(),
    asked: [floats(), floats()],
    load: [floats(), floats()],
    speed: [floats(), floats()],
    film: floats(),
    trust: floats(),
    seconds: floats(),
    timeS: new Float64Array(count),
  };
}

function trimmed(full: Room, count: number): Readings {
  const cut = (values: Float32Array): Float32Array => values.slice(0, count);
  const both = ([a, b]: readonly [Float32Array, Float32Array]) => [cut(a), cut(b)] as const;
  return {
    count,
    lambda: cut(full.lambda),
    asked: both(full.asked),
    load: both(full.load),
    speed: both(full.speed),
    film: cut(full.film),
    trust: cut(full.trust),
    seconds: cut(full.seconds),
    timeS: full.timeS.slice(0, count),
  };
}
