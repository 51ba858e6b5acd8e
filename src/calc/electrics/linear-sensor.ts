import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

/** A sensor with a straight line: its reading at two voltages, said at a supply. Readings in whatever unit they are given. */
export interface LinearSensor {
  readonly lowReading: number;
  readonly highReading: number;
  /** 0.5 V when left out. */
  readonly lowV?: number;
  /** 4.5 V when left out. */
  readonly highV?: number;
  /** Supply at which those voltages are right; 5 V when left out. */
  readonly nominalSupplyV?: number;
  /** Supply now: a ratiometric sensor follows it. The nominal one when left out. */
  readonly supplyV?: number;
}

interface Line {
  readonly lowV: number;
  readonly highV: number;
}

/**
 * Reading of a linear sensor: x = x_lo + (U·U_nom/U_s − U_lo)/(U_hi − U_lo)·(x_hi − x_lo).
 *
 * Source: two-point line (key DEFINITION); 0.5 to 4.5 V of 5 V is common practice (key COMMON). Valid: 0 V to the supply;
 * beyond the two voltages it is returned with a caveat, since a fault looks so too.
 * @throws UserError 'out-of-range' outside it, or when the two points are no line.
 */
export function linearReading(
  sensor: LinearSensor & { readonly voltageV: number },
): Calculation<{ readonly reading: number }> {
  const { lowReading, highReading, voltageV } = sensor;
  const { lowV, highV, supplyV, assumptions } = lineOf(sensor);
  requireRange({ what: 'The voltage', value: voltageV, min: 0, max: supplyV, unit: 'V' });
  const outside = voltageV < lowV - 1e-9 || voltageV > highV + 1e-9;
  return {
    value: { reading: lowReading + ((voltageV - lowV) / (highV - lowV)) * (highReading - lowReading) },
    assumptions,
    sources: ['DEFINITION', 'COMMON'],
    caveats: outside
      ? [
          `${sayNumber(voltageV)} V lies outside ${lowV.toFixed(2)} to ${highV.toFixed(2)} V: a broken wire, a short or a sensor past its end looks like this.`,
        ]
      : [],
  };
}

/**
 * Voltage of a linear sensor at a reading, the inverse of linearReading.
 *
 * Source and range: as linearReading (keys DEFINITION, COMMON); readings between the two given.
 * @throws UserError 'out-of-range' outside it.
 */
export function linearVoltage(
  sensor: LinearSensor & { readonly reading: number },
): Calculation<{ readonly voltageV: number }> {
  const { lowReading, highReading, reading } = sensor;
  const { lowV, highV, assumptions } = lineOf(sensor);
  const [min, max] = [Math.min(lowReading, highReading), Math.max(lowReading, highReading)];
  requireRange({ what: 'The reading', value: reading, min, max, unit: '' });
  return {
    value: { voltageV: lowV + ((reading - lowReading) / (highReading - lowReading)) * (highV - lowV) },
    assumptions,
    sources: ['DEFINITION', 'COMMON'],
    caveats: [],
  };
}

export const linearSensorSheet: SumSheet = {
  title: 'Linear sensor, 0.5 to 4.5 V',
  formula: 'x = x_lo + (U·U_nom/U_s − U_lo)/(U_hi − U_lo)·(x_hi − x_lo)',
  symbols: {
    x: 'reading, in the unit of the two ends',
    'x_lo, x_hi': 'readings at the two voltages',
    U: 'voltage measured, V',
    'U_lo, U_hi': '0.5 and 4.5 V unless said',
    'U_nom, U_s': 'supply the voltages were said at, and supply now, V',
  },
  sources: ['DEFINITION', 'COMMON'],
  range: 'between the two voltages; outside it warns of a fault',
};

/** The two voltages at the supply there is now. */
function lineOf(sensor: LinearSensor): Line & { readonly supplyV: number; readonly assumptions: string[] } {
  const { lowReading, highReading, lowV = 0.5, highV = 4.5, nominalSupplyV = 5 } = sensor;
  const { supplyV = nominalSupplyV } = sensor;
  requireRange(
    { what: 'The supply the sensor is rated at', value: nominalSupplyV, min: 1, max: 30, unit: 'V' },
    { what: 'The supply', value: supplyV, min: nominalSupplyV * 0.8, max: nominalSupplyV * 1.2, unit: 'V' },
    { what: 'The lower voltage', value: lowV, min: 0, max: nominalSupplyV, unit: 'V' },
    { what: 'The upper voltage', value: highV, min: 0, max: nominalSupplyV, unit: 'V' },
  );
  if (highV - lowV < 0.1 || highReading === lowReading) {
    throw new UserError(
      'out-of-range',
      'A line takes two different readings and an upper voltage at least 0.1 V above the lower.',
    );
  }
  const scale = supplyV / nominalSupplyV;
  return {
    lowV: lowV * scale,
    highV: highV * scale,
    supplyV,
    assumptions: [
      `${sayNumber(lowV)} to ${sayNumber(highV)} V at ${sayNumber(nominalSupplyV)} V supply`,
      supplyV === nominalSupplyV
        ? `supply ${sayNumber(supplyV)} V now`
        : `ratiometric: it follows the ${sayNumber(supplyV)} V there are now`,
    ],
  };
}
