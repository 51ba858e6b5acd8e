import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';
import { compressorOutlet } from './boost.ts';
import { KELVIN_AT_ZERO_C } from './constants.ts';

/**
 * Air temperature behind an intercooler: T_out = T_in − ε·(T_in − T_coolant).
 *
 * Source: effectiveness of a heat exchanger with the charge the smaller capacity rate (key HEYWOOD). Valid: ε 0 to 1.
 * Not for: a core soaked with heat at standstill; the coolant is the air or water that reaches the core, not the weather.
 * @throws UserError 'out-of-range' outside it.
 */
export function intercoolerOutlet(cooler: {
  readonly inletC: number;
  readonly coolantC: number;
  readonly effectivenessRatio: number;
}): Calculation<{ readonly outletC: number }> {
  const { inletC, coolantC, effectivenessRatio } = cooler;
  requireRange(
    { what: 'The charge temperature', value: inletC, min: -40, max: 400, unit: '°C' },
    { what: 'The coolant temperature', value: coolantC, min: -40, max: 120, unit: '°C' },
    { what: 'The effectiveness', value: effectivenessRatio, min: 0, max: 1, unit: '', shown: 'percent' },
  );
  return {
    value: { outletC: inletC - effectivenessRatio * (inletC - coolantC) },
    assumptions: [`cooling air or water reaches the core at ${sayNumber(coolantC)} °C`],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

/**
 * Effectiveness of an intercooler from three temperatures: ε = (T_in − T_out)/(T_in − T_coolant).
 *
 * Source: definition (key HEYWOOD). Valid: charge at least 5 K warmer than what cools it, else the reading says nothing.
 * @throws UserError 'out-of-range' outside it, or when the charge leaves colder than what cools it.
 */
export function intercoolerEffectiveness(cooler: {
  readonly inletC: number;
  readonly outletC: number;
  readonly coolantC: number;
}): Calculation<{ readonly effectivenessRatio: number }> {
  const { inletC, outletC, coolantC } = cooler;
  requireRange({
    what: 'The charge above what cools it',
    value: inletC - coolantC,
    min: 5,
    max: 400,
    unit: 'K',
  });
  const effectivenessRatio = (inletC - outletC) / (inletC - coolantC);
  requireRange({
    what: 'The effectiveness',
    value: effectivenessRatio,
    min: 0,
    max: 1,
    unit: '',
    shown: 'percent',
  });
  return { value: { effectivenessRatio }, assumptions: [], sources: ['HEYWOOD'], caveats: [] };
}

export const intercoolerSheet: SumSheet = {
  title: 'Intercooler outlet temperature and effectiveness',
  formula: 'ε = (T_in − T_out)/(T_in − T_coolant)',
  symbols: { T_in: 'charge before, °C', T_out: 'charge after, °C', T_coolant: 'what reaches the core, °C' },
  sources: ['HEYWOOD'],
  range: 'ε 0 to 1; at least 5 K between charge and coolant',
};

export interface Charge {
  readonly compressorOutC: number;
  readonly chargeC: number;
  readonly chargeKpa: number;
  /** Density in the manifold over that before the compressor. */
  readonly densityRatio: number;
}

/**
 * What boost is worth: ρ₃/ρ₁ = (p₃/p₁)·(T₁/T₃), p₃ = PR·p₁ − Δp, through compressor and intercooler.
 *
 * Source: the relations of compressorOutlet and intercoolerOutlet in turn (key HEYWOOD). Valid: as those.
 * @throws UserError 'out-of-range' as those, or when the loss is more than the boost.
 */
export function boostedCharge(boosted: {
  readonly inletKpa: number;
  readonly inletC: number;
  readonly pressureRatio: number;
  readonly efficiencyRatio: number;
  /** 0 for no intercooler. */
  readonly effectivenessRatio: number;
  readonly chargeLossKpa: number;
  /** The temperature before the compressor when left out. */
  readonly coolantC?: number;
}): Calculation<Charge> {
  const { inletKpa, inletC, chargeLossKpa, coolantC = inletC } = boosted;
  requireRange(
    { what: 'The pressure before the compressor', value: inletKpa, min: 40, max: 110, unit: 'kPa' },
    { what: 'The loss after the compressor', value: chargeLossKpa, min: 0, max: 60, unit: 'kPa' },
  );
  const compressor = compressorOutlet(boosted);
  const compressorOutC = compressor.value.outletC;
  const cooler = intercoolerOutlet({
    inletC: compressorOutC,
    coolantC,
    effectivenessRatio: boosted.effectivenessRatio,
  });
  const chargeC = cooler.value.outletC;
  const chargeKpa = boosted.pressureRatio * inletKpa - chargeLossKpa;
  const densityRatio = (chargeKpa / inletKpa) * ((inletC + KELVIN_AT_ZERO_C) / (chargeC + KELVIN_AT_ZERO_C));
  return {
    value: { compressorOutC, chargeC, chargeKpa, densityRatio },
    assumptions: [...compressor.assumptions, ...cooler.assumptions],
    sources: ['HEYWOOD'],
    caveats:
      densityRatio < 1
        ? ['The charge is thinner than the air outside: at this boost the losses cost more than it gives.']
        : [],
  };
}

export const boostedChargeSheet: SumSheet = {
  title: 'Density gained by boost',
  formula: 'ρ₃/ρ₁ = (PR − Δp/p₁)·T₁/T₃',
  symbols: {
    'ρ₁, ρ₃': 'density before the compressor and in the manifold',
    PR: 'pressure ratio',
    Δp: 'loss after the compressor, kPa',
    'p₁, T₁': 'pressure (kPa) and temperature (K) before the compressor',
    'T₃': 'temperature in the manifold, K',
  },
  sources: ['HEYWOOD'],
  range: 'as compressor and intercooler',
};
