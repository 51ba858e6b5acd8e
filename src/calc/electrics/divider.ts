import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

interface PullUp {
  /** What the pull-up hangs on: usually the controller's 5 V. */
  readonly supplyV: number;
  readonly pullUpOhm: number;
}

/**
 * Voltage of a sensor to ground under a pull-up: U = U_ref·R/(R + R_p).
 *
 * Source: voltage divider (key DEFINITION). Valid: 1 to 30 V, pull-up 1 Ω to 10 MΩ. Not for: a controller whose input loads it.
 * @throws UserError 'out-of-range' outside it.
 */
export function dividerVoltage(
  sensor: PullUp & { readonly resistanceOhm: number },
): Calculation<{ readonly voltageV: number }> {
  const { supplyV, pullUpOhm, resistanceOhm } = sensor;
  requirePullUp(sensor);
  requireRange({ what: 'The resistance', value: resistanceOhm, min: 0, max: 1e8, unit: 'Ω' });
  return {
    value: { voltageV: (supplyV * resistanceOhm) / (resistanceOhm + pullUpOhm) },
    assumptions: [`pull-up ${sayNumber(pullUpOhm)} Ω to ${sayNumber(supplyV)} V`],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

/**
 * Resistance of a sensor from its voltage under a pull-up: R = R_p·U/(U_ref − U).
 *
 * Source and range: dividerVoltage inverted (key DEFINITION). At the supply itself the circuit is open.
 * @throws UserError 'out-of-range' at or above the supply, or below 0 V.
 */
export function dividerResistance(
  sensor: PullUp & { readonly voltageV: number },
): Calculation<{ readonly resistanceOhm: number }> {
  const { supplyV, pullUpOhm, voltageV } = sensor;
  requirePullUp(sensor);
  requireRange({
    what: 'The voltage (at the supply the circuit is open)',
    value: voltageV,
    min: 0,
    max: supplyV * 0.999,
    unit: 'V',
  });
  return {
    value: { resistanceOhm: (pullUpOhm * voltageV) / (supplyV - voltageV) },
    assumptions: [`pull-up ${sayNumber(pullUpOhm)} Ω to ${sayNumber(supplyV)} V`],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

export const dividerSheet: SumSheet = {
  title: 'Sensor under a pull-up resistor',
  formula: 'U = U_ref·R/(R + R_p); R = R_p·U/(U_ref − U)',
  symbols: {
    U: 'voltage at the input, V',
    U_ref: 'supply of the pull-up, V',
    R: 'sensor, Ω',
    R_p: 'pull-up, Ω',
  },
  sources: ['DEFINITION'],
  range: 'an input that draws no current',
};

function requirePullUp({ supplyV, pullUpOhm }: PullUp): void {
  requireRange(
    { what: 'The supply', value: supplyV, min: 1, max: 30, unit: 'V' },
    { what: 'The pull-up', value: pullUpOhm, min: 1, max: 1e7, unit: 'Ω' },
  );
}
