import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

export type CorrectionRule = 'iso1585' | 'j1349' | 'din70020';

interface Rule {
  /** Factor from pressure in kPa and temperature in °C. */
  readonly factor: (pressureKpa: number, temperatureC: number) => number;
  /** Factors the rule itself allows. */
  readonly allowed: readonly [number, number];
  readonly source: string;
  readonly pressure: string;
}

const RULES: Readonly<Record<CorrectionRule, Rule>> = {
  iso1585: {
    factor: (pressure, temperature) => (99 / pressure) ** 1.2 * ((temperature + 273) / 298) ** 0.6,
    allowed: [0.93, 1.07],
    source: 'ISO1585',
    pressure: 'dry pressure (barometer less vapour)',
  },
  j1349: {
    factor: (pressure, temperature) => 1.18 * (99 / pressure) * Math.sqrt((temperature + 273) / 298) - 0.18,
    allowed: [0.93, 1.07],
    source: 'J1349',
    pressure: 'dry pressure (barometer less vapour)',
  },
  din70020: {
    factor: (pressure, temperature) => (101.3 / pressure) * Math.sqrt((temperature + 273) / 293),
    allowed: [0.9, 1.1],
    source: 'DIN70020',
    pressure: 'barometer',
  },
};

/**
 * Factor that carries a power measured on one day to the standard's day.
 *
 * ISO 1585: (99/p_d)^1.2·(T/298)^0.6; SAE J1349:1990: 1.18·(99/p_d)·√(T/298) − 0.18; DIN 70020: (101.3/p)·√(T/293).
 * Sources: keys ISO1585 and DIN70020 (from memory), J1349. Valid: spark-ignition engines; the standards take factors from
 * 0.93 to 1.07 (DIN taken as 0.9 to 1.1), beyond which a caveat is returned. Not for: boosted engines whose boost control
 * makes up for the air, which these factors flatter.
 * @throws UserError 'out-of-range' outside 50 to 110 kPa and −30 to 60 °C.
 */
export function powerCorrection(day: {
  readonly rule: CorrectionRule;
  readonly pressureKpa: number;
  readonly temperatureC: number;
}): Calculation<{ readonly factorRatio: number }> {
  const { rule, pressureKpa, temperatureC } = day;
  requireRange(
    { what: 'The air pressure', value: pressureKpa, min: 50, max: 110, unit: 'kPa' },
    { what: 'The air temperature', value: temperatureC, min: -30, max: 60, unit: '°C' },
  );
  const { factor, allowed, source, pressure } = RULES[rule];
  const factorRatio = factor(pressureKpa, temperatureC);
  const [least, most] = allowed;
  const rounded = Number(factorRatio.toFixed(3));
  return {
    value: { factorRatio },
    assumptions: [`${pressure} ${sayNumber(pressureKpa)} kPa`],
    sources: [source],
    caveats:
      rounded < least || rounded > most
        ? [`A factor outside ${least} to ${most} is outside the rule: the corrected figure is no comparison.`]
        : [],
  };
}

export const powerCorrectionSheet: SumSheet = {
  title: 'Correction of a measured power to a standard day',
  formula:
    'ISO 1585: (99/p_d)^1.2·(T/298)^0.6; J1349: 1.18·(99/p_d)·√(T/298) − 0.18; DIN 70020: (101.3/p)·√(T/293)',
  symbols: { p_d: 'dry air pressure, kPa', p: 'barometer, kPa', T: 'intake air temperature, °C + 273' },
  sources: ['ISO1585', 'J1349', 'DIN70020'],
  range: 'spark ignition; factors 0.93 to 1.07, beyond which it warns',
};
