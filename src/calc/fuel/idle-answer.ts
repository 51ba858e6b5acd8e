import type { Calculation } from '../../core/calculation.ts';
import { percent, type SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { sayNumber } from '../units/say.ts';
import type { Sayer } from '../units/sayer.ts';
import { deliveredFlow } from './dead-time.ts';
import { ccMinFromGs, gsFromCcMin } from './fuel-units.ts';
import { idlePulse } from './idle.ts';
import { fuelForCharge } from './injector-pulse.ts';
import type { KnownFuel } from './known-fuel.ts';
import { milliseconds } from './words.ts';

/** Open time beyond the dead time that most injectors still repeat; common practice, no source (key COMMON). */
const SHORTEST_OPEN_S = 0.0005;

export interface IdleQuestion {
  readonly flowCcMin: number;
  readonly fuel: KnownFuel;
  readonly dead: Calculation<{ readonly deadTimeS: number }>;
  readonly displacementL: number;
  readonly cylinders: number;
  readonly speedRpm: number;
  readonly manifoldKpa: number;
  readonly chargeC: number;
  readonly veRatio: number;
  readonly lambdaRatio: number;
  readonly smallestPulseS?: number | undefined;
}

/**
 * Whether an injector can be held at idle, from the air the engine takes there, and the largest that could.
 *
 * @throws UserError 'out-of-range' as the sums do.
 */
export function idleAnswer(asked: IdleQuestion, say: Sayer): SumWords {
  const { flowCcMin, fuel, dead, cylinders, speedRpm } = asked;
  const { deadTimeS } = dead.value;
  const charge = fuelForCharge({
    ...asked,
    cylinderL: asked.displacementL / cylinders,
    stoichiometricAfr: fuel.stoichiometricAfr,
  });
  const { airG, fuelG } = charge.value;
  const sum = idlePulse({
    fuelG,
    staticFlowGs: gsFromCcMin(flowCcMin, fuel.densityKgM3),
    deadTimeS,
    smallestPulseS: asked.smallestPulseS ?? deadTimeS + SHORTEST_OPEN_S,
  });
  const { pulseS, effectiveS, feasible, marginRatio, largestFlowGs } = sum.value;
  const largestCcMin = ccMinFromGs(largestFlowGs, fuel.densityKgM3);
  const { meanFlowCcMin } = deliveredFlow({
    pulseS,
    deadTimeS,
    speedRpm,
    staticFlowCcMin: flowCcMin,
    injection: 'sequential',
  }).value;
  return {
    result: feasible
      ? `It idles on ${milliseconds(pulseS)}, ${percent(marginRatio - 1)} above the smallest pulse`
      : `Too big to idle: it needs ${milliseconds(pulseS)}, less than it can repeat`,
    ...(feasible ? {} : { tone: 'late' as const }),
    certainty: `The largest that idles there: ${say.injector(largestCcMin, fuel.densityKgM3)} on ${fuel.name}.`,
    working: [
      `${sayNumber(airG * 1000, 3)} mg of air want ${sayNumber(fuelG * 1000, 3)} mg of ${fuel.name}`,
      `${milliseconds(effectiveS)} open and ${milliseconds(deadTimeS)} dead time`,
      `${say.one('pumpFlow', meanFlowCcMin * cylinders)} in all at ${sayNumber(speedRpm)} rpm`,
    ],
    calculation: together(sum, charge, dead, {
      assumptions: [`λ ${sayNumber(asked.lambdaRatio)} at ${sayNumber(speedRpm)} rpm`],
    }),
    data: {
      kind: 'injector',
      flowCcMin,
      fuel: fuel.name,
      airKg: airG / 1000,
      fuelKg: fuelG / 1000,
      effectiveS,
      pulseS,
      marginRatio,
      feasible,
      largestCcMin,
      result: { value: pulseS * 1000, unit: 'ms' },
    },
  };
}
