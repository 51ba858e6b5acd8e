import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

/** Coefficients of the ITS-90 reference function in mV and °C (key ITS90K). */
const ABOVE_ZERO = [
  -1.7600413686e-2, 3.8921204975e-2, 1.8558770032e-5, -9.9457592874e-8, 3.1840945719e-10, -5.6072844889e-13,
  5.6075059059e-16, -3.2020720003e-19, 9.7151147152e-23, -1.2104721275e-26,
] as const;
const BELOW_ZERO = [
  0, 3.9450128025e-2, 2.3622373598e-5, -3.2858906784e-7, -4.9904828777e-9, -6.7509059173e-11,
  -5.7410327428e-13, -3.1088872894e-15, -1.0451609365e-17, -1.9889266878e-20, -1.6322697486e-23,
] as const;
const LEAST_C = -200;
const MOST_C = 1372;

/** Voltage against a junction at 0 °C. */
function emfMv(temperatureC: number): number {
  const coefficients: readonly number[] = temperatureC < 0 ? BELOW_ZERO : ABOVE_ZERO;
  const polynomial = coefficients.reduceRight((sum, each) => sum * temperatureC + each, 0);
  return temperatureC < 0
    ? polynomial
    : polynomial + 0.1185976 * Math.exp(-1.183432e-4 * (temperatureC - 126.9686) ** 2);
}

/**
 * Voltage of a type K thermocouple: E = Σ cᵢ·tⁱ + a₀·e^(a₁·(t − a₂)²) above 0 °C, less that of the cold junction.
 *
 * Source: ITS-90 reference function, IEC 60584-1 (key ITS90K). Valid: −200 to 1372 °C, cold junction −40 to 125 °C. Not for: the
 * tolerance of the wire (class 1: ±1.5 K or 0.4 %), nor a probe in gas, which reads below it by radiation and stem loss.
 * @throws UserError 'out-of-range' outside it.
 */
export function thermocoupleVoltage(probe: {
  readonly temperatureC: number;
  readonly coldJunctionC: number;
}): Calculation<{ readonly voltageMv: number }> {
  const { temperatureC, coldJunctionC } = probe;
  requireRange(
    { what: 'The temperature', value: temperatureC, min: LEAST_C, max: MOST_C, unit: '°C' },
    { what: 'The cold junction', value: coldJunctionC, min: -40, max: 125, unit: '°C' },
  );
  return {
    value: { voltageMv: emfMv(temperatureC) - emfMv(coldJunctionC) },
    assumptions: [`cold junction at ${sayNumber(coldJunctionC)} °C`],
    sources: ['ITS90K'],
    caveats: [],
  };
}

/**
 * Temperature of a type K thermocouple from its voltage, by bisection of thermocoupleVoltage.
 *
 * Source and range: as there (key ITS90K).
 * @throws UserError 'out-of-range' outside it.
 */
export function thermocoupleTemperature(probe: {
  readonly voltageMv: number;
  readonly coldJunctionC: number;
}): Calculation<{ readonly temperatureC: number }> {
  const { voltageMv, coldJunctionC } = probe;
  requireRange({ what: 'The cold junction', value: coldJunctionC, min: -40, max: 125, unit: '°C' });
  const cold = emfMv(coldJunctionC);
  requireRange({
    what: 'The voltage',
    value: voltageMv,
    min: Math.ceil((emfMv(LEAST_C) - cold) * 1000) / 1000,
    max: Math.floor((emfMv(MOST_C) - cold) * 1000) / 1000,
    unit: 'mV',
  });
  let [low, high] = [LEAST_C, MOST_C];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (emfMv(middle) - cold > voltageMv) high = middle;
    else low = middle;
  }
  return {
    value: { temperatureC: (low + high) / 2 },
    assumptions: [`cold junction at ${sayNumber(coldJunctionC)} °C`],
    sources: ['ITS90K'],
    caveats: [],
  };
}

export const thermocoupleSheet: SumSheet = {
  title: 'Type K thermocouple',
  formula: 'E = Σ cᵢ·tⁱ + a₀·e^(a₁·(t − a₂)²) − E(cold junction)',
  symbols: {
    E: 'voltage, mV',
    t: 'temperature, °C',
    'cᵢ, aᵢ': 'coefficients of the ITS-90 reference function',
  },
  sources: ['ITS90K'],
  range: '−200 to 1372 °C, cold junction −40 to 125 °C',
};
