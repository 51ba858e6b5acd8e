import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** What an injector sprays and how fast, before or after a change. */
export interface Fitted {
  readonly flowCcMin: number;
  readonly densityKgM3: number;
  readonly stoichiometricAfr: number;
}

export interface FuelChange {
  /** Fuel by volume for the same air and λ, new over old. */
  readonly volumeRatio: number;
  /** Fuel by mass, new over old. */
  readonly massRatio: number;
  /** Open time for the same air and λ, new over old: what a table of open times is multiplied by. */
  readonly openTimeRatio: number;
}

/**
 * What changes when injectors, fuel or both do: k_V = ρ₁·AFR₁/(ρ₂·AFR₂), k_m = AFR₁/AFR₂, k_t = k_V·q₁/q₂.
 *
 * The same air and λ before and after. Source: balance of mass (key HEYWOOD). Valid: flows at the same pressure across the
 * injector. Not for: what another fuel's density does to the flow (under 3 %), more or less cooling of the charge.
 * @throws UserError 'out-of-range' for flows outside 10 to 10 000 cc/min.
 */
export function fuelChange(before: Fitted, after: Fitted): Calculation<FuelChange> {
  for (const { flowCcMin, densityKgM3, stoichiometricAfr } of [before, after]) {
    requireRange(
      { what: 'The injector', value: flowCcMin, min: 10, max: 10_000, unit: 'cc/min' },
      { what: 'The density', value: densityKgM3, min: 400, max: 1300, unit: 'kg/m³' },
      { what: 'The stoichiometric ratio', value: stoichiometricAfr, min: 0.5, max: 40, unit: ':1' },
    );
  }
  const massRatio = before.stoichiometricAfr / after.stoichiometricAfr;
  const volumeRatio = (massRatio * before.densityKgM3) / after.densityKgM3;
  return {
    value: { volumeRatio, massRatio, openTimeRatio: (volumeRatio * before.flowCcMin) / after.flowCcMin },
    assumptions: ['both flows at the same pressure across the injector; same air, same λ'],
    sources: ['HEYWOOD'],
    caveats:
      massRatio > 1.1
        ? [
            'Alcohol and other fuels with oxygen in them attack hoses, seals and pumps that are not made for them: check each before it is filled.',
          ]
        : [],
  };
}

/**
 * λ when nothing in the controller is changed: λ₂ = λ₁·k_t, since the injector opens for as long as before.
 *
 * @throws UserError 'out-of-range' for a λ outside 0.5 to 1.6.
 */
export function lambdaIfUnchanged(
  lambdaRatio: number,
  { openTimeRatio }: Pick<FuelChange, 'openTimeRatio'>,
): number {
  requireRange({ what: 'λ', value: lambdaRatio, min: 0.5, max: 1.6, unit: '' });
  return lambdaRatio * openTimeRatio;
}

/**
 * Pulse for the same air and λ after the change: t₂ = (t₁ − t_d1)·k_t + t_d2. With both dead times 0 it scales a duty.
 *
 * @throws UserError 'out-of-range' when the old pulse does not outlast its dead time.
 */
export function pulseAfterChange(pulse: {
  readonly pulseS: number;
  readonly oldDeadTimeS: number;
  readonly newDeadTimeS: number;
  readonly openTimeRatio: number;
}): number {
  const { pulseS, oldDeadTimeS, newDeadTimeS, openTimeRatio } = pulse;
  requireRange(
    { what: 'The old dead time', value: oldDeadTimeS * 1000, min: 0, max: 10, unit: 'ms' },
    { what: 'The new dead time', value: newDeadTimeS * 1000, min: 0, max: 10, unit: 'ms' },
    { what: 'The pulse', value: pulseS * 1000, min: oldDeadTimeS * 1000, max: 200, unit: 'ms' },
  );
  return (pulseS - oldDeadTimeS) * openTimeRatio + newDeadTimeS;
}

export const fuelChangeSheet: SumSheet = {
  title: 'Rescaling after a change of injectors or fuel',
  formula: 'k_V = ρ₁·AFR₁/(ρ₂·AFR₂); k_t = k_V·q₁/q₂; t₂ = (t₁ − t_d1)·k_t + t_d2; unchanged λ₂ = λ₁·k_t',
  symbols: {
    k_V: 'fuel by volume, new over old',
    k_t: 'open time, new over old',
    ρ: 'density of the fuel, kg/m³',
    AFR: 'stoichiometric ratio of the fuel',
    q: 'static flow, cc/min',
    t_d: 'dead time, s',
  },
  sources: ['HEYWOOD'],
  range: 'same pressure across the injector; the flow in cc/min taken as equal for both fuels',
};
