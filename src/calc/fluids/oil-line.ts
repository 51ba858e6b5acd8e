import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** Share of the ideal flow that a short drilled hole passes; from memory (key MEM). */
const DISCHARGE = 0.7;
/** Below this a small hole throttles by friction, and passes less. */
const SHORT_HOLE_FROM = 1000;

/**
 * Flow that a pressure drives through a line, laminar: Q = π·d⁴·Δp/(128·η·L), Re = 4·ρ·Q/(π·η·d).
 *
 * Source: Hagen–Poiseuille (key ORIFICE). Valid: Re below 2300; above it the real flow is less, and it is said.
 * @throws UserError 'out-of-range' outside bores of 0.5 to 500 mm, 0.001 to 100 m, 0.1 to 5000 mPa·s.
 */
export function laminarFlow(line: {
  readonly dropKpa: number;
  readonly boreMm: number;
  readonly lengthMm: number;
  readonly viscosityMpaS: number;
  readonly densityKgM3: number;
}): Calculation<{ readonly flowLMin: number; readonly reynolds: number }> {
  const { dropKpa, boreMm, lengthMm, viscosityMpaS, densityKgM3 } = line;
  requireRange(
    { what: 'The pressure drop', value: dropKpa, min: 0, max: 2000, unit: 'kPa' },
    { what: 'The bore', value: boreMm, min: 0.5, max: 500, unit: 'mm' },
    { what: 'The length', value: lengthMm, min: 1, max: 100_000, unit: 'mm' },
    { what: 'The dynamic viscosity', value: viscosityMpaS, min: 0.1, max: 5000, unit: 'mPa·s' },
    { what: 'The density', value: densityKgM3, min: 500, max: 1500, unit: 'kg/m³' },
  );
  const cubicMetres = (1e-3 * Math.PI * boreMm ** 4 * dropKpa) / (128 * viscosityMpaS * lengthMm);
  const reynolds = (4 * densityKgM3 * cubicMetres) / (Math.PI * viscosityMpaS * boreMm * 1e-6);
  return {
    value: { flowLMin: cubicMetres * 60_000, reynolds },
    assumptions: ['straight line, laminar'],
    sources: ['ORIFICE'],
    caveats: reynolds > 2300 ? ['The flow would be turbulent: less passes than this.'] : [],
  };
}

/**
 * Flow through an oil restrictor: Q = C·π/4·d²·√(2·Δp/ρ), C = 0.7.
 *
 * Source: Bernoulli with a discharge coefficient (key ORIFICE; 0.7 from memory). Valid: hot oil, Re in the hole from 1000; cold
 * oil passes less, and it is said. Not for: long drillings.
 * @throws UserError 'out-of-range' outside holes of 0.2 to 10 mm and 1 to 2000 kPa.
 */
export function restrictorFlow(restrictor: {
  readonly boreMm: number;
  readonly dropKpa: number;
  readonly densityKgM3: number;
  readonly viscosityMm2S: number;
}): Calculation<{ readonly flowLMin: number; readonly reynolds: number; readonly velocityMPerS: number }> {
  const { boreMm, dropKpa, densityKgM3, viscosityMm2S } = restrictor;
  requireRange(
    { what: 'The hole', value: boreMm, min: 0.2, max: 10, unit: 'mm' },
    { what: 'The pressure across it', value: dropKpa, min: 1, max: 2000, unit: 'kPa' },
    { what: 'The density', value: densityKgM3, min: 500, max: 1500, unit: 'kg/m³' },
    { what: 'The viscosity', value: viscosityMm2S, min: 0.3, max: 5000, unit: 'mm²/s' },
  );
  const velocityMPerS = DISCHARGE * Math.sqrt((2000 * dropKpa) / densityKgM3);
  const reynolds = (velocityMPerS * boreMm * 1000) / viscosityMm2S;
  return {
    value: { velocityMPerS, reynolds, flowLMin: (Math.PI / 4) * boreMm ** 2 * velocityMPerS * 0.06 },
    assumptions: [`a short drilled hole passes ${DISCHARGE} of the ideal flow`, 'no pressure behind it'],
    sources: ['ORIFICE', 'MEM'],
    caveats: [
      "The turbo maker's restrictor and pressure outrank this: too little oil ends a bearing, too much passes its seals.",
      ...(reynolds < SHORT_HOLE_FROM ? ['Oil this thick passes less than the sum says.'] : []),
    ],
  };
}

/**
 * Hole that lets a flow pass: restrictorFlow solved for the bore, d = √(4·Q/(π·C·√(2·Δp/ρ))).
 *
 * Source and limits: as there.
 * @throws UserError 'out-of-range' as there, or when the flow takes a hole outside 0.2 to 10 mm.
 */
export function restrictorBore(wanted: {
  readonly flowLMin: number;
  readonly dropKpa: number;
  readonly densityKgM3: number;
  readonly viscosityMm2S: number;
}): Calculation<{ readonly boreMm: number }> {
  const { flowLMin, ...oil } = wanted;
  const ofOneMm = restrictorFlow({ ...oil, boreMm: 1 }).value.flowLMin;
  const boreMm = Math.sqrt(flowLMin / ofOneMm);
  return { ...restrictorFlow({ ...oil, boreMm }), value: { boreMm } };
}

export const restrictorFlowSheet: SumSheet = {
  title: 'Oil restrictor, and laminar flow in a line',
  formula: 'Q = C·π/4·d²·√(2·Δp/ρ); laminar Q = π·d⁴·Δp/(128·η·L)',
  symbols: {
    C: 'discharge coefficient, 0.7',
    d: 'hole or bore, mm',
    Δp: 'pressure across it, kPa',
    η: 'dynamic viscosity, mPa·s',
  },
  sources: ['ORIFICE', 'MEM'],
  range: 'restrictor: Reynolds number from 1000; line: below 2300',
};
