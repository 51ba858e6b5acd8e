import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

/**
 * Energy stored in an ignition coil: E = ½·L·I².
 *
 * Source: inductor energy (key DEFINITION). Valid: 0.05 to 100 mH, up to 50 A. Not for: a coil driven into saturation, which
 * stores less, nor the share that reaches the plug, about half.
 * @throws UserError 'out-of-range' outside it.
 */
export function coilEnergy(coil: {
  readonly inductanceMh: number;
  readonly currentA: number;
}): Calculation<{ readonly energyMj: number }> {
  requireCoil(coil);
  return {
    value: { energyMj: 0.5 * coil.inductanceMh * coil.currentA ** 2 },
    assumptions: ['not saturated'],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

/**
 * Dwell to charge a coil to a current: t = −(L/R)·ln(1 − I·R/U).
 *
 * Source: switched-on RL circuit (key DEFINITION). Valid: a current below U/R, 0.05 to 20 Ω, 4 to 32 V. Not for: saturation,
 * where the current runs away: stay at the coil maker's table.
 * @throws UserError 'out-of-range' when the voltage can never drive that current.
 */
export function dwellTime(coil: {
  readonly inductanceMh: number;
  /** Winding, driver and wiring together. */
  readonly resistanceOhm: number;
  readonly currentA: number;
  readonly supplyV: number;
}): Calculation<{ readonly dwellMs: number; readonly energyMj: number }> {
  const { inductanceMh, resistanceOhm, currentA, supplyV } = coil;
  requireRange(
    { what: 'The resistance', value: resistanceOhm, min: 0.05, max: 20, unit: 'Ω' },
    { what: 'The voltage', value: supplyV, min: 4, max: 32, unit: 'V' },
  );
  const { energyMj } = coilEnergy(coil).value;
  const share = (currentA * resistanceOhm) / supplyV;
  if (share >= 1) {
    throw new UserError(
      'out-of-range',
      `${sayNumber(supplyV)} V through ${sayNumber(resistanceOhm)} Ω never reaches ${sayNumber(currentA)} A, only ${(supplyV / resistanceOhm).toFixed(1)} A.`,
    );
  }
  return {
    value: { dwellMs: -(inductanceMh / resistanceOhm) * Math.log(1 - share), energyMj },
    assumptions: ['not saturated'],
    sources: ['DEFINITION'],
    caveats: [
      'The coil maker’s dwell table outranks this: too long a dwell burns coil or driver. The secondary side can injure; never hold a lead of a running engine.',
    ],
  };
}

export const dwellTimeSheet: SumSheet = {
  title: 'Coil dwell and energy',
  formula: 't = −(L/R)·ln(1 − I·R/U); E = ½·L·I²',
  symbols: {
    t: 'dwell, ms',
    L: 'primary inductance, mH',
    R: 'primary resistance, Ω',
    I: 'current at the spark, A',
    U: 'voltage at the coil, V',
    E: 'energy, mJ',
  },
  sources: ['DEFINITION'],
  range: 'unsaturated coils, I below U/R',
};

function requireCoil(coil: { readonly inductanceMh: number; readonly currentA: number }): void {
  requireRange(
    { what: 'The inductance', value: coil.inductanceMh, min: 0.05, max: 100, unit: 'mH' },
    { what: 'The current', value: coil.currentA, min: 0.1, max: 50, unit: 'A' },
  );
}
