import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** From here on oil is hot enough for the rule to mean anything. */
const HOT_FROM_C = 80;

/**
 * Oil pressure against engine speed: wanted p = r·N/1000, r 10 psi (69 kPa) for each 1000 rpm.
 *
 * Source: common practice (key COMMON). Valid: hot oil, from 80 °C; 300 to 20 000 rpm. The relief valve tops it at speed.
 * @throws UserError 'out-of-range' outside 0 to 1500 kPa and these speeds.
 */
export function judgeOilPressure(reading: {
  readonly readKpa: number;
  readonly speedRpm: number;
  readonly temperatureC: number;
  readonly perThousandKpa: number;
}): Calculation<{ readonly wantedKpa: number; readonly enough: boolean }> {
  const { readKpa, speedRpm, temperatureC, perThousandKpa } = reading;
  requireRange(
    { what: 'The oil pressure', value: readKpa, min: 0, max: 1500, unit: 'kPa' },
    { what: 'The speed', value: speedRpm, min: 300, max: 20_000, unit: 'rpm' },
    { what: 'The oil temperature', value: temperatureC, min: -40, max: 200, unit: '°C' },
    { what: 'The pressure for each 1000 rpm', value: perThousandKpa, min: 10, max: 200, unit: 'kPa' },
  );
  const wantedKpa = (perThousandKpa * speedRpm) / 1000;
  const enough = readKpa >= wantedKpa;
  return {
    value: { wantedKpa, enough },
    assumptions: [
      `${Math.round(perThousandKpa)} kPa wanted for each 1000 rpm (common practice)`,
      `oil at ${Math.round(temperatureC)} °C`,
    ],
    sources: ['COMMON'],
    caveats: [
      "The engine maker's figure outranks this rule.",
      ...(temperatureC < HOT_FROM_C ? ['Cold oil reads high: read it again hot.'] : []),
      ...(enough
        ? []
        : [
            'Do not load the engine: check the level, then the reading with a second gauge, before it runs again.',
          ]),
    ],
  };
}

export const oilPressureSheet: SumSheet = {
  title: 'Oil pressure against speed',
  formula: 'p = r·N/1000',
  symbols: { p: 'pressure wanted, kPa', r: 'for each 1000 rpm: 69 kPa (10 psi)', N: 'speed, rpm' },
  sources: ['COMMON'],
  range: 'hot oil, below the relief pressure; a rule of thumb',
};
