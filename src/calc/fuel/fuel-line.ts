import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

/** Below this the flow is laminar, above the next turbulent, between them neither for sure (key ORIFICE). */
const LAMINAR_BELOW = 2300;
const TURBULENT_ABOVE = 4000;
/** Drawn tube and smooth hose, mm; from memory (key MEM). */
export const SMOOTH_MM = 0.0015;

export interface LineFlow {
  readonly velocityMPerS: number;
  readonly reynolds: number;
  /** Darcy's. */
  readonly frictionFactor: number;
  readonly dropKpa: number;
}

/**
 * Velocity and pressure drop in a line: v = 4·Q/(π·d²), Re = v·d/ν, Δp = f·(L/d)·ρ·v²/2, f = 64/Re or after Colebrook.
 *
 * Source: continuity, Darcy–Weisbach, Hagen–Poiseuille and Colebrook (key ORIFICE). Valid: bores 1 to 60 mm, lengths to
 * 20 m. Not for: fittings, filters and bends, which in a car take more than the line itself.
 * @throws UserError 'out-of-range' outside it.
 */
export function lineFlow(line: {
  readonly flowCcMin: number;
  readonly boreMm: number;
  readonly lengthMm: number;
  readonly densityKgM3: number;
  readonly viscosityMm2S: number;
  readonly roughnessMm?: number;
}): Calculation<LineFlow> {
  const { flowCcMin, boreMm, lengthMm, densityKgM3, viscosityMm2S, roughnessMm = SMOOTH_MM } = line;
  requireRange(
    { what: 'The flow', value: flowCcMin, min: 1, max: 1e6, unit: 'cc/min' },
    { what: 'The bore', value: boreMm, min: 1, max: 60, unit: 'mm' },
    { what: 'The length', value: lengthMm, min: 1, max: 20_000, unit: 'mm' },
    { what: 'The density', value: densityKgM3, min: 400, max: 1300, unit: 'kg/m³' },
    { what: 'The viscosity', value: viscosityMm2S, min: 0.1, max: 2000, unit: 'mm²/s' },
    { what: 'The roughness', value: roughnessMm, min: 0, max: 0.5, unit: 'mm' },
  );
  const velocityMPerS = (4 * flowCcMin) / (60 * Math.PI * boreMm ** 2);
  const reynolds = (velocityMPerS * boreMm * 1000) / viscosityMm2S;
  const frictionFactor =
    reynolds < LAMINAR_BELOW ? 64 / reynolds : turbulentFriction(reynolds, roughnessMm / boreMm);
  return {
    value: {
      velocityMPerS,
      reynolds,
      frictionFactor,
      dropKpa: (frictionFactor * (lengthMm / boreMm) * densityKgM3 * velocityMPerS ** 2) / 2000,
    },
    assumptions: [`smooth line (${roughnessMm} mm), no fittings, bends or filter`],
    sources: ['ORIFICE', 'MEM'],
    caveats:
      reynolds >= LAMINAR_BELOW && reynolds < TURBULENT_ABOVE
        ? ['Between laminar and turbulent: the drop can be a third less.']
        : [],
  };
}

/**
 * Bore for a velocity: d = √(4·Q/(π·v)).
 *
 * Source: continuity (key ORIFICE). Valid: 0.1 to 10 m/s.
 * @throws UserError 'out-of-range' outside it.
 */
export function boreForVelocity(line: {
  readonly flowCcMin: number;
  readonly velocityMPerS: number;
}): Calculation<{ readonly boreMm: number }> {
  const { flowCcMin, velocityMPerS } = line;
  requireRange(
    { what: 'The flow', value: flowCcMin, min: 1, max: 1e6, unit: 'cc/min' },
    { what: 'The velocity', value: velocityMPerS, min: 0.1, max: 10, unit: 'm/s' },
  );
  return {
    value: { boreMm: Math.sqrt((4 * flowCcMin) / (60 * Math.PI * velocityMPerS)) },
    assumptions: [`at most ${velocityMPerS} m/s`],
    sources: ['ORIFICE'],
    caveats: [],
  };
}

export const fuelLineSheet: SumSheet = {
  title: 'Fuel line: velocity, bore and pressure drop',
  formula:
    'v = 4·Q/(π·d²); Re = v·d/ν; Δp = f·(L/d)·ρ·v²/2; f = 64/Re, or 1/√f = −2·lg(ε/(3.7·d) + 2.51/(Re·√f))',
  symbols: {
    Q: 'flow, cc/min',
    'd, L': 'bore and length, mm',
    ν: 'kinematic viscosity, mm²/s',
    f: "Darcy's friction factor",
    ε: 'roughness, 0.0015 mm unless said otherwise',
  },
  sources: ['ORIFICE', 'MEM'],
  range: 'bores 1 to 60 mm, lengths to 20 m; fittings and filters are not in it',
};

/** Colebrook by repetition from a smooth pipe's value; the error falls tenfold each time. */
function turbulentFriction(reynolds: number, relativeRoughness: number): number {
  let root = 1 / Math.sqrt(0.02);
  for (let pass = 0; pass < 20; pass += 1) {
    root = -2 * Math.log10(relativeRoughness / 3.7 + (2.51 * root) / reynolds);
  }
  return 1 / root ** 2;
}
