import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

const A = 3.9083e-3;
const B = -5.775e-7;
const C = -4.183e-12;

/**
 * Resistance of a platinum sensor: R = R₀·(1 + A·t + B·t² + C·(t − 100)·t³), the last term below 0 °C only.
 *
 * Source: IEC 60751 (key IEC60751), A = 3.9083e-3, B = −5.775e-7, C = −4.183e-12. Valid: −200 to 850 °C, R₀ 100 Ω (Pt100) or
 * 1000 Ω (Pt1000). Not for: the wires, 1 Ω of which is 2.6 K on a Pt100 and 0.26 K on a Pt1000.
 * @throws UserError 'out-of-range' outside it.
 */
export function platinumResistance(sensor: {
  readonly temperatureC: number;
  readonly zeroOhm: number;
}): Calculation<{ readonly resistanceOhm: number }> {
  const { temperatureC: t, zeroOhm } = sensor;
  requireRange(
    { what: 'The temperature', value: t, min: -200, max: 850, unit: '°C' },
    { what: 'The resistance at 0 °C', value: zeroOhm, min: 10, max: 10_000, unit: 'Ω' },
  );
  return {
    value: { resistanceOhm: zeroOhm * (1 + A * t + B * t ** 2 + (t < 0 ? C * (t - 100) * t ** 3 : 0)) },
    assumptions: [`${sayNumber(zeroOhm)} Ω at 0 °C, wires not counted`],
    sources: ['IEC60751'],
    caveats: [],
  };
}

/**
 * Temperature of a platinum sensor from its resistance, by bisection of platinumResistance.
 *
 * Source and range: as there (key IEC60751).
 * @throws UserError 'out-of-range' outside it.
 */
export function platinumTemperature(sensor: {
  readonly resistanceOhm: number;
  readonly zeroOhm: number;
}): Calculation<{ readonly temperatureC: number }> {
  const { resistanceOhm, zeroOhm } = sensor;
  const at = (temperatureC: number) => platinumResistance({ temperatureC, zeroOhm }).value.resistanceOhm;
  let [low, high] = [-200, 850];
  requireRange({
    what: 'The resistance',
    value: resistanceOhm,
    min: Math.ceil(at(low)),
    max: Math.floor(at(high)),
    unit: 'Ω',
  });
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (at(middle) > resistanceOhm) high = middle;
    else low = middle;
  }
  return {
    value: { temperatureC: (low + high) / 2 },
    assumptions: [`${sayNumber(zeroOhm)} Ω at 0 °C, wires not counted`],
    sources: ['IEC60751'],
    caveats: [],
  };
}

export const platinumSheet: SumSheet = {
  title: 'Platinum sensor (Pt100, Pt1000)',
  formula: 'R = R₀·(1 + A·t + B·t² + C·(t − 100)·t³), the last term below 0 °C',
  symbols: { R: 'resistance, Ω', 'R₀': 'resistance at 0 °C, Ω', t: 'temperature, °C' },
  sources: ['IEC60751'],
  range: '−200 to 850 °C; wires not counted',
};
