import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';

interface Turning {
  readonly strokeMm: number;
  readonly speedRpm: number;
}

/**
 * Mean piston speed: S_p = 2·S·N, in m/s with S in m and N in turns per second.
 *
 * Source: Heywood eq. 2.9 (key HEYWOOD). Valid: stroke 10 to 400 mm, up to 25 000 rpm.
 * @throws UserError 'out-of-range' outside it.
 */
export function meanPistonSpeed(engine: Turning): Calculation<{ readonly speedMs: number }> {
  requireTurning(engine);
  const speedMs = (engine.strokeMm * engine.speedRpm) / 30_000;
  return {
    value: { speedMs },
    assumptions: [],
    sources: ['HEYWOOD'],
    caveats:
      speedMs > 25
        ? [
            'Above about 25 m/s (common practice) is for engines built for it throughout; the maker’s limit outranks any sum.',
          ]
        : [],
  };
}

/**
 * Engine speed at a mean piston speed: N = S_p/(2·S).
 *
 * Source and range: meanPistonSpeed inverted (key HEYWOOD), 0.5 to 40 m/s.
 * @throws UserError 'out-of-range' outside it.
 */
export function speedForPistonSpeed(wanted: {
  readonly strokeMm: number;
  readonly speedMs: number;
}): Calculation<{ readonly speedRpm: number }> {
  requireRange(
    { what: 'The stroke', value: wanted.strokeMm, min: 10, max: 400, unit: 'mm' },
    { what: 'The mean piston speed', value: wanted.speedMs, min: 0.5, max: 40, unit: 'm/s' },
  );
  return {
    value: { speedRpm: (30_000 * wanted.speedMs) / wanted.strokeMm },
    assumptions: [],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

export const meanPistonSpeedSheet: SumSheet = {
  title: 'Mean piston speed and the engine speed for one',
  formula: 'S_p = 2·S·N',
  symbols: { S_p: 'mean piston speed, m/s', S: 'stroke, m', N: 'crankshaft speed, 1/s' },
  sources: ['HEYWOOD'],
  range: 'stroke 10 to 400 mm, to 25 000 rpm',
};

/**
 * Piston acceleration at top dead centre, its greatest: a = r·ω²·(1 + r/l); rod ratio l/(2·r).
 *
 * Source: slider-crank kinematics, exact at the dead centre (key HEYWOOD). Valid: rod longer than the crank throw by 20 %.
 * @throws UserError 'out-of-range' outside it.
 */
export function pistonAcceleration(
  engine: Turning & { readonly rodMm: number },
): Calculation<{ readonly accelerationMs2: number; readonly rodRatio: number }> {
  const throwMm = requireRod(engine);
  requireTurning(engine);
  const omega = (2 * Math.PI * engine.speedRpm) / 60;
  return {
    value: {
      accelerationMs2: (throwMm / 1000) * omega ** 2 * (1 + throwMm / engine.rodMm),
      rodRatio: engine.rodMm / engine.strokeMm,
    },
    assumptions: ['no pin offset'],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

/**
 * Piston travel below top dead centre at a crank angle: x = r + l − [r·cos θ + √(l² − r²·sin² θ)].
 *
 * Source: Heywood eq. 2.5 (key HEYWOOD). Valid: any angle, no pin offset, rod as pistonAcceleration.
 * @throws UserError 'out-of-range' for a rod too short for the throw.
 */
export function pistonTravel(crank: {
  readonly strokeMm: number;
  readonly rodMm: number;
  readonly angleDeg: number;
}): Calculation<{ readonly travelMm: number }> {
  const throwMm = requireRod(crank);
  const angle = (crank.angleDeg * Math.PI) / 180;
  const along = throwMm * Math.cos(angle) + Math.sqrt(crank.rodMm ** 2 - (throwMm * Math.sin(angle)) ** 2);
  return {
    value: { travelMm: throwMm + crank.rodMm - along },
    assumptions: ['no pin offset'],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

export const pistonMotionSheet: SumSheet = {
  title: 'Piston travel and acceleration',
  formula: 'x = r + l − [r·cos θ + √(l² − r²·sin² θ)]; a_TDC = r·ω²·(1 + r/l)',
  symbols: {
    x: 'travel below top dead centre',
    r: 'crank throw, half the stroke',
    l: 'rod length between centres',
    θ: 'crank angle after top dead centre',
    ω: 'crankshaft speed, rad/s',
  },
  sources: ['HEYWOOD'],
  range: 'no pin offset; rod longer than the throw',
};

function requireTurning({ strokeMm, speedRpm }: Turning): void {
  requireRange(
    { what: 'The stroke', value: strokeMm, min: 10, max: 400, unit: 'mm' },
    { what: 'The speed', value: speedRpm, min: 0, max: 25_000, unit: 'rpm' },
  );
}

/** The crank throw in mm. */
function requireRod({ strokeMm, rodMm }: { readonly strokeMm: number; readonly rodMm: number }): number {
  const throwMm = strokeMm / 2;
  requireRange(
    { what: 'The stroke', value: strokeMm, min: 10, max: 400, unit: 'mm' },
    { what: 'The rod', value: rodMm, min: throwMm * 1.2, max: 1000, unit: 'mm' },
  );
  return throwMm;
}
