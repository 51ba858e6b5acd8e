import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';

/**
 * Power that an air flow can make: P = ṁ_a/(λ·AFR_st)/BSFC.
 *
 * Source: definitions (key HEYWOOD). Valid: λ 0.5 to 1.6, BSFC 150 to 900 g/kWh. Not for: what the air is worth when spark
 * or knock hold the engine back; the BSFC carries all of that.
 * @throws UserError 'out-of-range' outside it.
 */
export function powerFromAir(burn: {
  readonly massFlowGs: number;
  readonly lambdaRatio: number;
  readonly stoichiometricAfr: number;
  readonly bsfcGPerKwh: number;
}): Calculation<{ readonly powerKw: number; readonly fuelFlowGs: number }> {
  const { massFlowGs, lambdaRatio, stoichiometricAfr, bsfcGPerKwh } = burn;
  requireMixture(burn);
  requireRange({ what: 'The air flow', value: massFlowGs, min: 0.05, max: 10_000, unit: 'g/s' });
  const fuelFlowGs = massFlowGs / (lambdaRatio * stoichiometricAfr);
  return {
    value: { powerKw: (fuelFlowGs * 3600) / bsfcGPerKwh, fuelFlowGs },
    assumptions: [],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

/**
 * Air needed for a power: ṁ_a = P·BSFC·λ·AFR_st, the inverse of powerFromAir.
 *
 * Source, range and limits: as powerFromAir (key HEYWOOD).
 * @throws UserError 'out-of-range' outside it.
 */
export function airForPower(wanted: {
  readonly powerKw: number;
  readonly lambdaRatio: number;
  readonly stoichiometricAfr: number;
  readonly bsfcGPerKwh: number;
}): Calculation<{ readonly massFlowGs: number; readonly fuelFlowGs: number }> {
  const { powerKw, lambdaRatio, stoichiometricAfr, bsfcGPerKwh } = wanted;
  requireMixture(wanted);
  requireRange({ what: 'The power', value: powerKw, min: 0.1, max: 5000, unit: 'kW' });
  const fuelFlowGs = (powerKw * bsfcGPerKwh) / 3600;
  return {
    value: { massFlowGs: fuelFlowGs * lambdaRatio * stoichiometricAfr, fuelFlowGs },
    assumptions: [],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

export const powerFromAirSheet: SumSheet = {
  title: 'Power from air, and air for a power',
  formula: 'P = ṁ_a/(λ·AFR_st)/BSFC',
  symbols: {
    P: 'power at the crankshaft, kW',
    ṁ_a: 'air flow, g/h',
    λ: 'λ at that power',
    AFR_st: 'stoichiometric air–fuel ratio by mass',
    BSFC: 'fuel per work, g/kWh',
  },
  sources: ['HEYWOOD'],
  range: 'λ 0.5 to 1.6, AFR_st 1.5 to 35, BSFC 150 to 900 g/kWh',
};

/**
 * Brake thermal efficiency: η = 3600·P/(ṁ_f·CV), the share of the fuel's heat that reaches the shaft.
 *
 * Source: definition (key ICTEXT). Valid: calorific value 10 to 60 MJ/kg.
 * @throws UserError 'out-of-range' outside it, or when more work than heat is stated.
 */
export function thermalEfficiency(test: {
  readonly powerKw: number;
  readonly fuelFlowGs: number;
  readonly calorificKjPerKg: number;
}): Calculation<{ readonly efficiencyRatio: number; readonly bsfcGPerKwh: number }> {
  const { powerKw, fuelFlowGs, calorificKjPerKg } = test;
  requireRange(
    { what: 'The power', value: powerKw, min: 0.1, max: 5000, unit: 'kW' },
    { what: 'The fuel flow', value: fuelFlowGs, min: 0.005, max: 2000, unit: 'g/s' },
    { what: 'The calorific value', value: calorificKjPerKg, min: 10_000, max: 60_000, unit: 'kJ/kg' },
  );
  const efficiencyRatio = (1000 * powerKw) / (fuelFlowGs * calorificKjPerKg);
  requireRange({ what: 'The efficiency', value: efficiencyRatio, min: 0, max: 1, unit: '' });
  return {
    value: { efficiencyRatio, bsfcGPerKwh: (fuelFlowGs * 3600) / powerKw },
    assumptions: [`lower calorific value ${sayNumber(calorificKjPerKg)} kJ/kg`],
    sources: ['ICTEXT'],
    caveats: [],
  };
}

export const thermalEfficiencySheet: SumSheet = {
  title: 'Brake thermal efficiency',
  formula: 'η = P/(ṁ_f·CV)',
  symbols: { P: 'power, kW', ṁ_f: 'fuel flow, kg/s', CV: 'lower calorific value, kJ/kg' },
  sources: ['ICTEXT'],
  range: 'CV 10 000 to 60 000 kJ/kg',
};

function requireMixture(burn: {
  readonly lambdaRatio: number;
  readonly stoichiometricAfr: number;
  readonly bsfcGPerKwh: number;
}): void {
  requireRange(
    { what: 'λ', value: burn.lambdaRatio, min: 0.5, max: 1.6, unit: '' },
    {
      what: 'The stoichiometric air–fuel ratio',
      value: burn.stoichiometricAfr,
      min: 1.5,
      max: 35,
      unit: ':1',
    },
    { what: 'The BSFC', value: burn.bsfcGPerKwh, min: 150, max: 900, unit: 'g/kWh' },
  );
}
