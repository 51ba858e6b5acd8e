import type { SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { GRAVITY } from '../units/definitions.ts';
import type { Sayer } from '../units/sayer.ts';
import { meanPistonSpeed, pistonAcceleration, speedForPistonSpeed } from './piston-motion.ts';

export interface PistonQuestion {
  readonly strokeMm: number;
  /** An engine speed, or a mean piston speed whose engine speed is wanted. */
  readonly given: { readonly speedRpm: number } | { readonly limitMPerS: number };
  /** Between centres: gives the acceleration. */
  readonly rodMm?: number | undefined;
}

/** Mean piston speed and acceleration, or the engine speed for a piston speed. @throws UserError as the sums. */
export function pistonAnswer({ strokeMm, given, rodMm }: PistonQuestion, say: Sayer): SumWords {
  const speedRpm =
    'speedRpm' in given
      ? given.speedRpm
      : speedForPistonSpeed({ strokeMm, speedMs: given.limitMPerS }).value.speedRpm;
  const mean = meanPistonSpeed({ strokeMm, speedRpm });
  const thrust = rodMm === undefined ? undefined : pistonAcceleration({ strokeMm, rodMm, speedRpm });
  const meanWords = say.both('pistonSpeed', mean.value.speedMs);
  return {
    result:
      'speedRpm' in given
        ? `Mean piston speed ${meanWords} at ${Math.round(speedRpm)} rpm`
        : `${Math.round(speedRpm)} rpm for a mean piston speed of ${meanWords}`,
    working:
      thrust === undefined
        ? []
        : [
            `${Math.round(thrust.value.accelerationMs2)} m/s² at top dead centre (${Math.round(thrust.value.accelerationMs2 / GRAVITY)} g), rod ratio ${thrust.value.rodRatio.toFixed(2)}`,
          ],
    calculation: together(mean, thrust ?? {}),
    data: {
      kind: 'piston-speed',
      pistonSpeedMPerS: mean.value.speedMs,
      speedRpm,
      ...(thrust === undefined
        ? {}
        : { accelerationMPerS2: thrust.value.accelerationMs2, rodRatio: thrust.value.rodRatio }),
    },
  };
}
