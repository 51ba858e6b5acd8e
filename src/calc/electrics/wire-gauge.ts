import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** Of 36 AWG, exact (key B258). */
const FINEST_MM = 0.127;
/** 4/0 is 92 times as thick as 36 AWG, in 39 equal steps. */
const SPAN = 92;

/**
 * Diameter and area of a solid wire by its gauge number: d = 0.127·92^((36 − n)/39) mm, A = π/4·d².
 *
 * Source: ASTM B258 (key B258). Valid: −3 (4/0) to 40. Not for: a stranded cable's outside, which is thicker; its copper
 * area is meant to be the same.
 * @throws UserError 'out-of-range' outside it.
 */
export function wireOfGauge(wire: {
  /** 0 for 1/0, −1 for 2/0, −2 for 3/0, −3 for 4/0. */
  readonly gaugeNumber: number;
}): Calculation<{ readonly diameterMm: number; readonly areaMm2: number }> {
  const { gaugeNumber } = wire;
  requireRange({ what: 'The gauge number (4/0 is −3)', value: gaugeNumber, min: -3, max: 40, unit: 'AWG' });
  const diameterMm = FINEST_MM * SPAN ** ((36 - gaugeNumber) / 39);
  return {
    value: { diameterMm, areaMm2: (Math.PI / 4) * diameterMm ** 2 },
    assumptions: [],
    sources: ['B258'],
    caveats: [],
  };
}

/**
 * Gauge number of an area of copper, with its fraction: n = 36 − 39·log₉₂(d/0.127), d = √(4·A/π).
 *
 * Source: ASTM B258 inverted (key B258). Valid: 0.005 to 107.3 mm², 4/0.
 * @throws UserError 'out-of-range' outside it.
 */
export function gaugeOfArea(wire: {
  readonly areaMm2: number;
}): Calculation<{ readonly gaugeNumber: number; readonly diameterMm: number }> {
  requireRange({ what: 'The cross-section', value: wire.areaMm2, min: 0.005, max: 107.3, unit: 'mm²' });
  const diameterMm = Math.sqrt((4 * wire.areaMm2) / Math.PI);
  return {
    value: { gaugeNumber: 36 - (39 * Math.log(diameterMm / FINEST_MM)) / Math.log(SPAN), diameterMm },
    assumptions: [],
    sources: ['B258'],
    caveats: [],
  };
}

/** A gauge number as it is written: 4/0, 1/0, 10. */
export function gaugeName(gaugeNumber: number): string {
  return gaugeNumber > 0 ? String(gaugeNumber) : `${1 - gaugeNumber}/0`;
}

export const wireOfGaugeSheet: SumSheet = {
  title: 'American wire gauge and square millimetres',
  formula: 'd = 0.127·92^((36 − n)/39); A = π/4·d²',
  symbols: { d: 'diameter of a solid wire, mm', n: 'gauge number; 1/0 is 0, 4/0 is −3', A: 'area, mm²' },
  sources: ['B258'],
  range: '4/0 to 40 AWG',
};
