import { type DriveKind, driverOf } from './drives.ts';
import { type Noise, noiseFrom } from './noise.ts';

/** One row of a model log, in the units that the sums use; `NaN` is a reading that is not there. */
export interface Row {
  readonly timeS: number;
  readonly speedRpm: number;
  readonly loadKPa: number;
  readonly throttleRatio: number;
  readonly lambda: number;
  readonly targetLambda: number;
  /** Fuel added by the closed loop, as a ratio: 1.05 is 5 % more. */
  readonly trimRatio: number;
  readonly coolantC: number;
  readonly oilC: number;
  readonly chargeC: number;
  readonly oilKPa: number;
  readonly fuelKPa: number;
  readonly pulseMs: number;
  readonly dutyRatio: number;
  readonly batteryV: number;
  readonly knockCount: number;
  readonly fuelCut: number;
  readonly sensorC: number;
}

/** A model engine whose fuel table is wrong in a known way, and the drive it is given. */
export interface Model {
  readonly seed: number;
  readonly kind: DriveKind;
  readonly seconds: number;
  readonly rowsPerS: number;
  readonly loadAxisKPa: readonly number[];
  readonly speedAxisRpm: readonly number[];
  /** What each cell of the table is to be multiplied by, [load][speed]. */
  readonly errors: readonly (readonly number[])[];
  readonly topRpm: number;
  readonly topKPa: number;
  /** λ asked for, at a load. */
  readonly target: (loadKPa: number) => number;
  readonly delay: { readonly fixedS: number; readonly flowS: number };
  readonly lagS: number;
  readonly whiteNoiseRatio: number;
  readonly slowNoiseRatio: number;
  readonly film: { readonly shareRatio: number; readonly timeS: number };
  readonly closedLoop: boolean;
  readonly coldStart: boolean;
  readonly cutsFuel: boolean;
  readonly faults: boolean;
  readonly sensorStartsCold: boolean;
  /** Air drawn in past the sensor's count, as a share of the air at idle. */
  readonly leakRatio: number;
  /** Share of burns that fail, and below which load. */
  readonly misfire: { readonly ratio: number; readonly belowKPa: number };
  readonly danger: 'none' | 'knock' | 'lean' | 'duty' | 'fuel-pressure' | 'oil-pressure';
  readonly lambdaStep: number;
}

const STEP_S = 0.01;
/** Flow at 1000 rpm and 40 kPa, to which delays and leaks are counted. */
const REFERENCE_FLOW = 1000 * 40;

/** An error map: a smooth field with some rough cells on it. */
export function errorMap(noise: Noise, loads: number, speeds: number, roughRatio: number): number[][] {
  const [a, b, c, d, e] = [
    noise.normal(),
    noise.normal(),
    noise.normal(),
    noise.unit() * 6,
    noise.unit() * 6,
  ];
  return Array.from({ length: loads }, (_, i) =>
    Array.from({ length: speeds }, (_, j) => {
      const [x, y] = [i / Math.max(1, loads - 1), j / Math.max(1, speeds - 1)];
      const smooth =
        0.04 * a * (x - 0.5) + 0.04 * b * (y - 0.5) + 0.04 * c * Math.sin(4 * x + d) * Math.cos(3 * y + e);
      const rough = noise.unit() < 0.3 ? noise.between(-roughRatio, roughRatio) : 0;
      return 1 + Math.max(-0.18, Math.min(0.18, smooth + rough));
    }),
  );
}

export function modelOf(seed: number, given: Partial<Model> = {}): Model {
  const noise = noiseFrom(seed * 7919 + 13);
  const topKPa = noise.pick([105, 150, 180, 210]);
  const topRpm = noise.pick([5500, 6500, 7500]);
  const loadAxisKPa =
    given.loadAxisKPa ??
    noise.pick([
      [20, 30, 40, 50, 60, 80, 100, 120, 150, 180, 210],
      [25, 40, 55, 70, 85, 100, 130, 160, 200],
      [30, 45, 60, 75, 90, 105, 120, 135, 150, 165, 180, 195, 210],
    ]);
  const speedAxisRpm =
    given.speedAxisRpm ??
    noise.pick([
      [600, 900, 1200, 1600, 2000, 2500, 3000, 3500, 4000, 5000, 6000, 7000],
      [500, 1000, 1500, 2000, 2500, 3000, 3500, 4000, 4500, 5000, 5500, 6000, 6500, 7000],
      [800, 1400, 2000, 2800, 3600, 4400, 5200, 6000, 7000],
    ]);
  return {
    seed,
    kind: 'road',
    seconds: 600,
    rowsPerS: noise.pick([10, 20, 25, 40]),
    errors: errorMap(noise, loadAxisKPa.length, speedAxisRpm.length, 0.07),
    topRpm,
    topKPa,
    target: (load) => (load < 70 ? 1 : load > 160 ? 0.82 : 1 - ((load - 70) / 90) * 0.18),
    delay: { fixedS: noise.between(0.03, 0.12), flowS: noise.between(0.1, 0.4) },
    lagS: noise.between(0.04, 0.18),
    whiteNoiseRatio: noise.between(0.002, 0.008),
    slowNoiseRatio: noise.between(0.001, 0.005),
    film: { shareRatio: noise.between(0.05, 0.25), timeS: noise.between(0.2, 0.7) },
    closedLoop: noise.unit() < 0.5,
    coldStart: noise.unit() < 0.5,
    cutsFuel: noise.unit() < 0.7,
    faults: noise.unit() < 0.6,
    sensorStartsCold: noise.unit() < 0.5,
    leakRatio: 0,
    misfire: { ratio: 0, belowKPa: 0 },
    danger: 'none',
    lambdaStep: noise.pick([0.001, 0.002, 0.01]),
    loadAxisKPa,
    speedAxisRpm,
    ...given,
  };
}

/** The table's own reading between its cells; held at its edges. */
export function interpolate(
  { loadAxisKPa, speedAxisRpm, errors }: Pick<Model, 'loadAxisKPa' | 'speedAxisRpm' | 'errors'>,
  loadKPa: number,
  speedRpm: number,
): number {
  const [i, u] = placeOn(loadAxisKPa, loadKPa);
  const [j, v] = placeOn(speedAxisRpm, speedRpm);
  const at = (row: number, column: number) => errors[row]?.[column] ?? Number.NaN;
  return (
    at(i, j) * (1 - u) * (1 - v) +
    at(i + 1, j) * u * (1 - v) +
    at(i, j + 1) * (1 - u) * v +
    at(i + 1, j + 1) * u * v
  );
}

export function placeOn(axis: readonly number[], value: number): readonly [number, number] {
  const last = axis.length - 2;
  let index = axis.findIndex((_, k) => value < (axis[k + 1] ?? Number.POSITIVE_INFINITY));
  index = Math.min(last, Math.max(0, index));
  const [low = 0, high = 1] = [axis[index], axis[index + 1]];
  return [index, Math.min(1, Math.max(0, (value - low) / (high - low)))];
}

/** Runs the model and gives its log row by row. */
export function* runModel(model: Model): Generator<Row> {
  const noise = noiseFrom(model.seed);
  const drive = driverOf(model.kind, noise, model.topRpm);
  const steps = Math.round(model.seconds / STEP_S);
  const delayLine = new Float64Array(4096).fill(1);
  let throttle = 0.03;
  let rpm = model.coldStart || model.sensorStartsCold ? 0 : 900;
  let load = 40;
  let film = -1;
  let trim = 1;
  let sensed = 1;
  let slow = 0;
  let knocks = 0;
  let coolant = model.coldStart ? 25 : 86;
  let stuckUntil = -1;
  let stuckAt = 1;
  let nextRow = 0;
  let burns = 1;
  for (let step = 0; step < steps; step++) {
    const time = step * STEP_S;
    const wish = drive(STEP_S);
    throttle += ((wish.throttleRatio - throttle) * STEP_S) / 0.15;
    rpm += ((wish.speedRpm - rpm) * STEP_S) / wish.followS + noise.normal() * 0.7;
    rpm = Math.max(0, Math.min(model.topRpm, rpm));
    // more speed of turning pulls the manifold down; a blower lifts the top with it
    const top = 100 + (model.topKPa - 100) * Math.min(1, rpm / (0.6 * model.topRpm));
    const wanted = 28 + (top - 28) * Math.min(1, throttle * (3200 / Math.max(900, rpm)) ** 0.6 * 1.6);
    load +=
      ((Math.max(wish.throttleRatio < 0.005 ? 20 : 27, wanted) - load) * STEP_S) / 0.12 +
      noise.normal() * 0.03;
    coolant += ((88 - coolant) * STEP_S) / 110;
    const cut = model.cutsFuel && wish.throttleRatio < 0.005 && rpm > 1600;
    const target = model.target(load);
    const warming = Math.max(0, (72 - coolant) / 47) * 0.18;
    const flow = (rpm * load) / REFERENCE_FLOW;
    const asked = (load / 100) * ((1 + warming) / target) * trim;
    if (film < 0) film = asked * model.film.shareRatio * (model.film.timeS / STEP_S);
    const injected = cut ? 0 : asked;
    const fromFilm = (film * STEP_S) / model.film.timeS;
    film += injected * model.film.shareRatio - fromFilm;
    const burnt = injected * (1 - model.film.shareRatio) + fromFilm;
    const error = interpolate(model, load, rpm) * (1 + model.leakRatio / Math.max(0.7, flow));
    let out = Math.min(3, ((load / 100) * error) / Math.max(0.02, burnt));
    if (step % 8 === 0)
      burns =
        model.misfire.ratio > 0 && load < model.misfire.belowKPa && noise.unit() < model.misfire.ratio
          ? 0.62
          : 1;
    out /= burns;
    delayLine[step % delayLine.length] = out;
    const late = Math.min(
      delayLine.length - 1,
      Math.round((model.delay.fixedS + model.delay.flowS / Math.max(0.5, flow)) / STEP_S),
    );
    const arriving = step < late ? 1 : (delayLine[(step - late) % delayLine.length] ?? 1);
    sensed += ((arriving - sensed) * STEP_S) / model.lagS;
    slow += (-slow * STEP_S) / 0.3 + model.slowNoiseRatio * Math.sqrt((2 * STEP_S) / 0.3) * noise.normal();
    if (model.closedLoop && coolant > 60 && load < 85 && !cut && time > 20) {
      trim = Math.min(1.2, Math.max(0.8, trim + (sensed / target - 1) * STEP_S * 0.8));
    } else {
      trim += ((1 - trim) * STEP_S) / 0.5;
    }
    if (time + 1e-9 < nextRow) continue;
    nextRow += 1 / model.rowsPerS;
    let lambda = sensed * (1 + slow + model.whiteNoiseRatio * noise.normal());
    const cold = model.sensorStartsCold && time < 18;
    if (cold) lambda = 1.6;
    if (model.faults) {
      if (noise.unit() < 0.0004) {
        stuckUntil = time + noise.between(1, 6);
        stuckAt = noise.pick([lambda, 0, 0.5, 1.999, Number.NaN]);
      }
      if (time < stuckUntil) lambda = stuckAt;
      else if (noise.unit() < 0.001) lambda = noise.pick([0.55, 1.45, Number.NaN]);
    }
    const after = time > model.seconds * 0.6;
    if (model.danger === 'lean' && after && load > 120) lambda += 0.14;
    if (model.danger === 'knock' && after && load > 110 && noise.unit() < 0.05) knocks += 1;
    const pulse = cut ? 0 : 0.9 + asked * 6.5;
    const duty = Math.min(1, (pulse * rpm) / 120_000);
    yield {
      timeS: time,
      speedRpm: Math.round(rpm),
      loadKPa: Math.round((load + noise.normal() * 0.25) * 10) / 10,
      throttleRatio: Math.max(0, throttle),
      lambda: Math.round(Math.min(2, lambda) / model.lambdaStep) * model.lambdaStep,
      targetLambda: Math.round(target * 1000) / 1000,
      trimRatio: Math.round(trim * 1000) / 1000,
      coolantC: Math.round(coolant * 10) / 10,
      oilC: Math.round(coolant * 0.95 + 8),
      chargeC: Math.round(25 + load / 10),
      oilKPa: oilPressure(model, rpm, after, noise),
      fuelKPa: fuelPressure(model, load, after),
      pulseMs: pulse,
      dutyRatio:
        model.danger === 'duty' && load > 0.8 * model.topKPa ? Math.min(1, duty * 3) : Math.min(0.8, duty),
      batteryV: 14 + noise.normal() * 0.05,
      knockCount: knocks,
      fuelCut: cut ? 1 : 0,
      sensorC: cold ? 300 + time * 20 : 780,
    };
  }
}

function oilPressure({ danger, seconds }: Model, rpm: number, after: boolean, noise: Noise): number {
  const usual = 90 + Math.min(350, rpm * 0.09) + noise.normal() * 4;
  const falls = danger === 'oil-pressure' && after && rpm > 2000 && noise.unit() < 0.9 && seconds > 0;
  return Math.round(rpm < 200 ? 0 : falls ? usual * 0.4 : usual);
}

function fuelPressure({ danger }: Model, load: number, after: boolean): number {
  const usual = 300 + (load - 100);
  return Math.round(danger === 'fuel-pressure' && after && load > 110 ? usual - 0.6 * (load - 90) : usual);
}
