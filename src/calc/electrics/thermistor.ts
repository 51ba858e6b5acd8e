import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

const KELVIN = 273.15;

/** One measured point of a thermistor. */
export interface ThermistorPoint {
  readonly resistanceOhm: number;
  readonly temperatureC: number;
}

/** Coefficients of 1/T = A + B·ln R + C·(ln R)³, R in Ω and T in K. */
export interface ThermistorCurve {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/**
 * Resistance at a temperature by the B value: R = R₁·e^(B·(1/T − 1/T₁)).
 *
 * Source: IEC 60539-1 (key IEC60539). Valid: B 500 to 8000 K, −55 to 300 °C. Not for: accuracy far from the two points B was
 * taken between, where it can be out by several K: take three points (fitThermistor).
 * @throws UserError 'out-of-range' outside it.
 */
export function thermistorResistance(sensor: {
  readonly at: ThermistorPoint;
  readonly betaK: number;
  readonly temperatureC: number;
}): Calculation<{ readonly resistanceOhm: number }> {
  const { at, betaK, temperatureC } = sensor;
  requireBeta(at, betaK);
  requireTemperature(temperatureC);
  const exponent = betaK * (1 / (temperatureC + KELVIN) - 1 / (at.temperatureC + KELVIN));
  return {
    value: { resistanceOhm: at.resistanceOhm * Math.exp(exponent) },
    assumptions: [`one B value, ${sayNumber(betaK)} K, over the whole range`],
    sources: ['IEC60539'],
    caveats: [],
  };
}

/**
 * Temperature of a resistance by the B value: 1/T = 1/T₁ + ln(R/R₁)/B.
 *
 * Source and range: as thermistorResistance (key IEC60539).
 * @throws UserError 'out-of-range' outside it.
 */
export function thermistorTemperature(sensor: {
  readonly at: ThermistorPoint;
  readonly betaK: number;
  readonly resistanceOhm: number;
}): Calculation<{ readonly temperatureC: number }> {
  const { at, betaK, resistanceOhm } = sensor;
  requireBeta(at, betaK);
  requireResistance(resistanceOhm);
  const perKelvin = 1 / (at.temperatureC + KELVIN) + Math.log(resistanceOhm / at.resistanceOhm) / betaK;
  const temperatureC = perKelvin > 0 ? 1 / perKelvin - KELVIN : Number.POSITIVE_INFINITY;
  requireTemperature(temperatureC);
  return {
    value: { temperatureC },
    assumptions: [`one B value, ${sayNumber(betaK)} K, over the whole range`],
    sources: ['IEC60539'],
    caveats: [],
  };
}

/**
 * B value from two points: B = ln(R₁/R₂)/(1/T₁ − 1/T₂).
 *
 * Source: IEC 60539-1 (key IEC60539). Valid: points at least 5 K apart, falling resistance.
 * @throws UserError 'out-of-range' for points too near, or of a sensor that is no thermistor of falling resistance.
 */
export function betaOfPoints(
  one: ThermistorPoint,
  other: ThermistorPoint,
): Calculation<{ readonly betaK: number }> {
  requirePoint(one);
  requirePoint(other);
  const apartK = Math.abs(one.temperatureC - other.temperatureC);
  requireRange({ what: 'The distance between the points', value: apartK, min: 5, max: 355, unit: 'K' });
  const betaK =
    Math.log(one.resistanceOhm / other.resistanceOhm) /
    (1 / (one.temperatureC + KELVIN) - 1 / (other.temperatureC + KELVIN));
  requireRange({ what: 'The B value of these points', value: betaK, min: 500, max: 8000, unit: 'K' });
  return { value: { betaK }, assumptions: [], sources: ['IEC60539'], caveats: [] };
}

/**
 * Steinhart–Hart coefficients through three points: 1/T = A + B·ln R + C·(ln R)³.
 *
 * Source: Steinhart & Hart 1968 (key SH68). Valid: three points at least 5 K apart of a thermistor whose resistance falls.
 * @throws UserError 'out-of-range' when they are too near, or lie on no such curve.
 */
export function fitThermistor(
  points: readonly [ThermistorPoint, ThermistorPoint, ThermistorPoint],
): Calculation<ThermistorCurve> {
  const [one, two, three] = points;
  // three falling pairs lie on one falling curve, in whatever order they were given
  betaOfPoints(one, two);
  betaOfPoints(two, three);
  betaOfPoints(one, three);
  const [p, q, r] = [inverted(one), inverted(two), inverted(three)];
  const slope2 = (q.perKelvin - p.perKelvin) / (q.log - p.log);
  const slope3 = (r.perKelvin - p.perKelvin) / (r.log - p.log);
  const c = (slope3 - slope2) / (r.log - q.log) / (p.log + q.log + r.log);
  const b = slope2 - c * (p.log ** 2 + p.log * q.log + q.log ** 2);
  const a = p.perKelvin - (b + p.log ** 2 * c) * p.log;
  if ([p, q, r].some(({ log }) => b + 3 * c * log ** 2 <= 0)) {
    throw new UserError(
      'out-of-range',
      'No thermistor has these three points: one of them is misread. Measure again, or give two points.',
    );
  }
  return { value: { a, b, c }, assumptions: [], sources: ['SH68'], caveats: [] };
}

/**
 * Temperature of a resistance by Steinhart–Hart coefficients: 1/T = A + B·ln R + C·(ln R)³.
 *
 * Source: Steinhart & Hart 1968 (key SH68). Valid: 1 Ω to 10 MΩ, −55 to 300 °C; outside the points it was fitted to it drifts.
 * @throws UserError 'out-of-range' outside it.
 */
export function curveTemperature(
  curve: ThermistorCurve,
  sensor: { readonly resistanceOhm: number },
): Calculation<{ readonly temperatureC: number }> {
  requireResistance(sensor.resistanceOhm);
  const log = Math.log(sensor.resistanceOhm);
  const perKelvin = curve.a + curve.b * log + curve.c * log ** 3;
  const temperatureC = perKelvin > 0 ? 1 / perKelvin - KELVIN : Number.POSITIVE_INFINITY;
  requireTemperature(temperatureC);
  return { value: { temperatureC }, assumptions: [], sources: ['SH68'], caveats: [] };
}

/**
 * Resistance at a temperature by Steinhart–Hart coefficients: the cubic A + B·x + C·x³ = 1/T solved for x = ln R.
 *
 * Source: Steinhart & Hart 1968 (key SH68), by bisection to 1e-12. Valid: as curveTemperature.
 * @throws UserError 'out-of-range' when the temperature is outside the curve.
 */
export function curveResistance(
  curve: ThermistorCurve,
  sensor: { readonly temperatureC: number },
): Calculation<{ readonly resistanceOhm: number }> {
  requireTemperature(sensor.temperatureC);
  const target = 1 / (sensor.temperatureC + KELVIN);
  const excess = (log: number): number => curve.a + curve.b * log + curve.c * log ** 3 - target;
  let [low, high] = [0, Math.log(1e7)];
  if (excess(low) > 0 || excess(high) < 0) {
    throw new UserError(
      'out-of-range',
      `${sayNumber(sensor.temperatureC)} °C is outside this thermistor's curve (1 Ω to 10 MΩ).`,
    );
  }
  while (high - low > 1e-12) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) high = middle;
    else low = middle;
  }
  return {
    value: { resistanceOhm: Math.exp((low + high) / 2) },
    assumptions: [],
    sources: ['SH68'],
    caveats: [],
  };
}

export const thermistorBetaSheet: SumSheet = {
  title: 'Thermistor by its B value',
  formula: 'R = R₁·e^(B·(1/T − 1/T₁)); B = ln(R₁/R₂)/(1/T₁ − 1/T₂)',
  symbols: { R: 'resistance, Ω', T: 'temperature, K', B: 'B value, K', 'R₁, T₁': 'a measured point' },
  sources: ['IEC60539'],
  range: 'B 500 to 8000 K, −55 to 300 °C; best between the points of B',
};

export const thermistorCurveSheet: SumSheet = {
  title: 'Thermistor by three points (Steinhart–Hart)',
  formula: '1/T = A + B·ln R + C·(ln R)³',
  symbols: { T: 'temperature, K', R: 'resistance, Ω', 'A, B, C': 'coefficients through three points' },
  sources: ['SH68'],
  range: '1 Ω to 10 MΩ, −55 to 300 °C; best between the outer points',
};

/** A point in the two terms in which the curve is a polynomial. */
const inverted = ({ resistanceOhm, temperatureC }: ThermistorPoint) => ({
  log: Math.log(resistanceOhm),
  perKelvin: 1 / (temperatureC + KELVIN),
});

function requirePoint({ resistanceOhm, temperatureC }: ThermistorPoint): void {
  requireResistance(resistanceOhm);
  requireTemperature(temperatureC);
}

function requireBeta(at: ThermistorPoint, betaK: number): void {
  requirePoint(at);
  requireRange({ what: 'The B value', value: betaK, min: 500, max: 8000, unit: 'K' });
}

const requireResistance = (value: number): void =>
  requireRange({ what: 'The resistance', value, min: 1, max: 1e7, unit: 'Ω' });

const requireTemperature = (value: number): void =>
  requireRange({ what: 'The temperature', value, min: -55, max: 300, unit: '°C' });
