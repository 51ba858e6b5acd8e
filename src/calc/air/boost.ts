import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { sayNumber } from '../units/say.ts';
import { GAMMA_AIR, KELVIN_AT_ZERO_C } from './constants.ts';

/**
 * Pressure ratio a compressor works at: PR = (p_atm + p_boost + Δp_after)/(p_atm − Δp_inlet).
 *
 * Boost is what the gauge in the manifold shows; losses of intercooler and pipes lie between it and the compressor.
 * Source: definition (key HEYWOOD). Valid: 50 to 110 kPa outside, boost 0 to 500 kPa, PR up to 6.
 * @throws UserError 'out-of-range' outside it.
 */
export function pressureRatio(boosted: {
  readonly atmosphereKpa: number;
  /** Gauge pressure in the manifold. */
  readonly boostKpa: number;
  readonly inletLossKpa?: number;
  /** Intercooler and pipes between compressor and manifold. */
  readonly chargeLossKpa?: number;
}): Calculation<{ readonly pressureRatio: number; readonly inletKpa: number; readonly outletKpa: number }> {
  const { atmosphereKpa, boostKpa, inletLossKpa = 0, chargeLossKpa = 0 } = boosted;
  requireRange(
    { what: 'The atmospheric pressure', value: atmosphereKpa, min: 50, max: 110, unit: 'kPa' },
    { what: 'The boost', value: boostKpa, min: 0, max: 500, unit: 'kPa' },
    { what: 'The inlet loss', value: inletLossKpa, min: 0, max: 20, unit: 'kPa' },
    { what: 'The loss after the compressor', value: chargeLossKpa, min: 0, max: 60, unit: 'kPa' },
  );
  const inletKpa = atmosphereKpa - inletLossKpa;
  const outletKpa = atmosphereKpa + boostKpa + chargeLossKpa;
  return {
    value: { pressureRatio: outletKpa / inletKpa, inletKpa, outletKpa },
    assumptions: [],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

export const pressureRatioSheet: SumSheet = {
  title: 'Compressor pressure ratio with losses',
  formula: 'PR = (p_atm + p_boost + Δp_after)/(p_atm − Δp_inlet)',
  symbols: {
    p_atm: 'air pressure outside, kPa',
    p_boost: 'gauge pressure in the manifold, kPa',
    Δp_inlet: 'loss of filter and inlet pipe, kPa',
    Δp_after: 'loss of intercooler and pipes, kPa',
  },
  sources: ['HEYWOOD'],
  range: 'boost 0 to 500 kPa, 50 to 110 kPa outside',
};

interface Compression {
  readonly inletC: number;
  readonly pressureRatio: number;
  readonly gammaRatio?: number;
}

/** Temperature rise in K that a loss-free compressor would give. */
function isentropicRise({ inletC, pressureRatio: ratio, gammaRatio = GAMMA_AIR }: Compression): number {
  requireRange(
    { what: 'The air temperature before the compressor', value: inletC, min: -40, max: 120, unit: '°C' },
    { what: 'The pressure ratio', value: ratio, min: 1, max: 6, unit: '' },
    { what: 'κ', value: gammaRatio, min: 1.2, max: 1.67, unit: '' },
  );
  return (inletC + KELVIN_AT_ZERO_C) * (ratio ** ((gammaRatio - 1) / gammaRatio) - 1);
}

/**
 * Air temperature behind a compressor: T₂ = T₁·[1 + (PR^((κ−1)/κ) − 1)/η_c].
 *
 * Source: Heywood eq. 6.42 (key HEYWOOD). Valid: η_c 0.3 to 1, PR 1 to 6, κ 1.4. Not for: heat from a hot turbine housing,
 * which adds to it.
 * @throws UserError 'out-of-range' outside it.
 */
export function compressorOutlet(
  compressor: Compression & { readonly efficiencyRatio: number },
): Calculation<{ readonly outletC: number; readonly isentropicC: number }> {
  const { inletC, efficiencyRatio, gammaRatio = GAMMA_AIR } = compressor;
  requireRange({
    what: 'The compressor efficiency',
    value: efficiencyRatio,
    min: 0.3,
    max: 1,
    unit: '',
    shown: 'percent',
  });
  const rise = isentropicRise(compressor);
  return {
    value: { outletC: inletC + rise / efficiencyRatio, isentropicC: inletC + rise },
    assumptions: [`κ = ${sayNumber(gammaRatio)}; no heat from the turbine housing`],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

/**
 * Efficiency of a compressor from measured temperatures: η_c = T₁·(PR^((κ−1)/κ) − 1)/(T₂ − T₁).
 *
 * Source and range: as compressorOutlet (key HEYWOOD).
 * @throws UserError 'out-of-range' when the air did not get warmer.
 */
export function compressorEfficiency(
  compressor: Compression & { readonly outletC: number },
): Calculation<{ readonly efficiencyRatio: number }> {
  const { inletC, outletC, gammaRatio = GAMMA_AIR } = compressor;
  requireRange({ what: 'The rise in temperature', value: outletC - inletC, min: 1, max: 400, unit: 'K' });
  const efficiencyRatio = isentropicRise(compressor) / (outletC - inletC);
  return {
    value: { efficiencyRatio },
    assumptions: [`κ = ${sayNumber(gammaRatio)}`],
    sources: ['HEYWOOD'],
    caveats:
      efficiencyRatio > 0.85
        ? ['Above 85 % no such compressor is known: a probe reads slow or sits in cooler air.']
        : [],
  };
}

export const compressorOutletSheet: SumSheet = {
  title: 'Compressor outlet temperature and efficiency',
  formula: 'T₂ = T₁·[1 + (PR^((κ−1)/κ) − 1)/η_c]',
  symbols: {
    'T₁, T₂': 'temperature before and after, K',
    PR: 'pressure ratio',
    κ: 'ratio of specific heats, 1.4',
    η_c: 'isentropic efficiency',
  },
  sources: ['HEYWOOD'],
  range: 'η_c 0.3 to 1, PR 1 to 6',
};
