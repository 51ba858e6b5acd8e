import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

interface Source {
  readonly restV: number;
  /** Inside the battery. */
  readonly internalOhm: number;
  /** Cable, joints and the way back to the battery. */
  readonly cableOhm: number;
}

export interface Cranking {
  readonly currentA: number;
  readonly batteryV: number;
  readonly starterV: number;
  readonly cableDropV: number;
}

/**
 * Voltages while cranking: U_battery = U₀ − I·R_i, U_starter = U_battery − I·R_cable.
 *
 * Source: linear source model (key DEFINITION). Valid: 4 to 32 V at rest, up to 3000 A. Not for: a cold or tired battery,
 * whose inner resistance grows several times over.
 * @throws UserError 'out-of-range' outside it, or when nothing would be left for the starter.
 */
export function crankingVoltage(cranking: Source & { readonly currentA: number }): Calculation<Cranking> {
  const { restV, internalOhm, cableOhm, currentA } = cranking;
  requireSource(cranking);
  requireRange({ what: 'The cranking current', value: currentA, min: 0, max: 3000, unit: 'A' });
  const batteryV = restV - currentA * internalOhm;
  const cableDropV = currentA * cableOhm;
  if (batteryV - cableDropV <= 0) {
    throw new UserError(
      'out-of-range',
      `${sayNumber(currentA)} A would leave nothing for the starter: battery and cable let at most ${Math.floor(restV / (internalOhm + cableOhm))} A through.`,
    );
  }
  return {
    value: { currentA, batteryV, starterV: batteryV - cableDropV, cableDropV },
    assumptions: [`battery ${(internalOhm * 1000).toFixed(1)} mΩ inside`],
    sources: ['DEFINITION'],
    caveats: [],
  };
}

/**
 * Cranking current that a starter of known power draws behind a battery and cable: P/η = U_starter·I with
 * U_starter = U₀ − I·(R_i + R_cable), of the two solutions the one with the lesser current.
 *
 * Source: linear source model (key DEFINITION); η 0.5 to 0.6 of a starter is common practice (key COMMON). Valid: 0.1 to
 * 10 kW. Not for: the first instant, when the motor stands still and draws two to three times as much.
 * @throws UserError 'out-of-range' when battery and cable cannot give that power.
 */
export function crankingCurrent(
  starter: Source & { readonly powerKw: number; readonly efficiencyRatio: number },
): Calculation<Cranking> {
  const { restV, internalOhm, cableOhm, powerKw, efficiencyRatio } = starter;
  requireSource(starter);
  requireRange(
    { what: 'The power of the starter', value: powerKw, min: 0.1, max: 10, unit: 'kW' },
    {
      what: 'The efficiency of the starter',
      value: efficiencyRatio,
      min: 0.2,
      max: 1,
      unit: '',
      shown: 'percent',
    },
  );
  const ohm = internalOhm + cableOhm;
  const drawnW = (powerKw * 1000) / efficiencyRatio;
  const mostW = restV ** 2 / (4 * ohm);
  if (drawnW > mostW) {
    throw new UserError(
      'out-of-range',
      `Battery and cable (${(ohm * 1000).toFixed(1)} mΩ) can give a starter at most ${((mostW * efficiencyRatio) / 1000).toFixed(2)} kW. Take a thicker cable, a better battery or a smaller starter.`,
    );
  }
  const currentA = (restV - Math.sqrt(restV ** 2 - 4 * ohm * drawnW)) / (2 * ohm);
  const { value, assumptions } = crankingVoltage({ restV, internalOhm, cableOhm, currentA });
  return {
    value,
    assumptions: [
      `the starter turns ${Math.round(efficiencyRatio * 100)} % of what it draws into work (common practice)`,
      ...assumptions,
    ],
    sources: ['DEFINITION', 'COMMON'],
    caveats: [],
  };
}

/**
 * Inner resistance of a charged 12 V battery from its cold-cranking current: R_i = (12.6 − 7.5)/CCA.
 *
 * Source: the test of EN 50342-1, 7.5 V after 10 s at −18 °C (key EN50342). Valid: 50 to 2000 A, a 12 V lead-acid battery in
 * good order, cold; at 20 °C it is roughly half (common practice), so the cold figure is the safe one.
 * @throws UserError 'out-of-range' outside it.
 */
export function batteryResistance(battery: {
  readonly coldCrankingA: number;
}): Calculation<{ readonly internalOhm: number }> {
  requireRange({
    what: 'The cold-cranking current',
    value: battery.coldCrankingA,
    min: 50,
    max: 2000,
    unit: 'A',
  });
  return {
    value: { internalOhm: (12.6 - 7.5) / battery.coldCrankingA },
    assumptions: ['inner resistance as at −18 °C, the battery charged and in good order'],
    sources: ['EN50342'],
    caveats: [],
  };
}

export const crankingSheet: SumSheet = {
  title: 'Cranking current and what the starter sees',
  formula: 'U_starter = U₀ − I·(R_i + R_cable); P/η = U_starter·I; R_i = (12.6 − 7.5)/CCA',
  symbols: {
    'U₀': 'battery at rest, V',
    I: 'cranking current, A',
    R_i: 'resistance inside the battery, Ω',
    R_cable: 'cable, joints and return, Ω',
    P: 'rated power of the starter, W',
    η: 'its efficiency, 0.5 to 0.6 by common practice',
    CCA: 'cold-cranking current by EN 50342-1, A',
  },
  sources: ['DEFINITION', 'COMMON', 'EN50342'],
  range: '4 to 32 V; turning, not the first instant',
};

function requireSource({ restV, internalOhm, cableOhm }: Source): void {
  requireRange(
    { what: 'The battery at rest', value: restV, min: 4, max: 32, unit: 'V' },
    { what: 'The resistance of the battery', value: internalOhm, min: 0.0005, max: 0.5, unit: 'Ω' },
    { what: 'The resistance of the cable', value: cableOhm, min: 0, max: 1, unit: 'Ω' },
  );
}
