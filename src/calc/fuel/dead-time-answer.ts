import type { Calculation } from '../../core/calculation.ts';
import { percent, type SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { sayIn } from '../units/say.ts';
import { deadTimeError, deliveredFlow } from './dead-time.ts';
import type { Injection } from './injector-duty.ts';
import { milliseconds } from './words.ts';

type DeadTime = Calculation<{ readonly deadTimeS: number }>;

export interface DeadTimeQuestion {
  readonly dead: DeadTime;
  readonly voltageV: number;
  readonly pulseS?: number | undefined;
  /** What the controller reckons with. */
  readonly set?: DeadTime | undefined;
  readonly speedRpm?: number | undefined;
  readonly staticFlowCcMin?: number | undefined;
  readonly injection: Injection;
}

/**
 * A dead time at a voltage, what a pulse then delivers, and by how much the fuel is out when another one is set.
 *
 * @throws UserError 'out-of-range' when a pulse does not outlast the dead time.
 */
export function deadTimeAnswer(asked: DeadTimeQuestion): SumWords {
  const { dead, voltageV, pulseS, set } = asked;
  const { deadTimeS } = dead.value;
  const error =
    set === undefined || pulseS === undefined
      ? undefined
      : deadTimeError({ pulseS, assumedDeadTimeS: set.value.deadTimeS, trueDeadTimeS: deadTimeS });
  const delivered = deliveredIn(asked);
  const openS = pulseS === undefined ? undefined : Math.max(0, pulseS - deadTimeS);
  return {
    result:
      error === undefined
        ? `${milliseconds(deadTimeS)} dead time at ${sayIn(voltageV, 'V')}`
        : `${offWords(error.value.errorRatio)}: ${milliseconds(deadTimeS)} dead time, ${milliseconds(set?.value.deadTimeS ?? 0)} set`,
    working: [
      ...(openS === undefined
        ? []
        : [`A pulse of ${milliseconds(pulseS ?? 0)} is open for ${milliseconds(openS)}`]),
      ...(delivered === undefined
        ? []
        : [
            `${sayIn(delivered.value.meanFlowCcMin, 'cc/min', 3)} on average, open ${percent(delivered.value.effectiveDutyRatio)} of the time`,
          ]),
    ],
    calculation: together(dead, set ?? {}, error ?? {}, delivered ?? {}),
    data: {
      kind: 'injector',
      deadTimeS,
      voltageV,
      ...(pulseS === undefined || openS === undefined ? {} : { pulseS, effectiveS: openS }),
      ...(error === undefined ? {} : { errorRatio: error.value.errorRatio }),
      ...(delivered === undefined
        ? {}
        : {
            meanFlowCcMin: delivered.value.meanFlowCcMin,
            effectiveDuty: delivered.value.effectiveDutyRatio,
          }),
      result: { value: deadTimeS * 1000, unit: 'ms' },
    },
  };
}

function deliveredIn({ dead, pulseS, speedRpm, staticFlowCcMin, injection }: DeadTimeQuestion) {
  if (pulseS === undefined || speedRpm === undefined || staticFlowCcMin === undefined) return undefined;
  return deliveredFlow({ pulseS, deadTimeS: dead.value.deadTimeS, speedRpm, staticFlowCcMin, injection });
}

function offWords(errorRatio: number): string {
  if (Math.abs(errorRatio) < 0.0005) return 'Right';
  return `${percent(Math.abs(errorRatio))} ${errorRatio < 0 ? 'lean' : 'rich'}`;
}
