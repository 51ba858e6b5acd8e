import { percent, type SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { sayNumber } from '../units/say.ts';
import { type Injection, injectorDuty, longestPulse } from './injector-duty.ts';
import { milliseconds } from './words.ts';

export interface DutyPoint {
  readonly speedRpm: number;
  readonly pulseS: number;
}

export interface DutyQuestion {
  /** At this the longest pulse is worked out when there are no points. */
  readonly speedRpm: number;
  readonly points: readonly DutyPoint[];
  readonly limitRatio: number;
  readonly injection: Injection;
}

/**
 * The highest duty among points of a log against a limit, or the longest pulse where there are no points.
 *
 * @throws UserError 'out-of-range' as injectorDuty and longestPulse.
 */
export function dutyAnswer({ speedRpm, points, limitRatio, injection }: DutyQuestion): SumWords {
  const worked = points.map((point) => ({ ...point, sum: injectorDuty({ ...point, injection }) }));
  const worst = worked.toSorted((a, b) => b.sum.value.dutyRatio - a.sum.value.dutyRatio)[0];
  const at = worst?.speedRpm ?? speedRpm;
  const longest = longestPulse({ dutyRatio: limitRatio, speedRpm: at, injection });
  const { pulseS: longestPulseS, periodS } = longest.value;
  const longestWords = `${milliseconds(longestPulseS)} is the longest pulse at ${sayNumber(at)} rpm and ${percent(limitRatio)}`;
  const known = { kind: 'injector', speedRpm: at, dutyLimit: limitRatio, periodS, longestPulseS };
  if (worst === undefined) {
    return {
      result: longestWords,
      working: [`${milliseconds(periodS)} between shots`],
      calculation: together(longest),
      data: { ...known, duty: limitRatio, result: { value: longestPulseS * 1000, unit: 'ms' } },
    };
  }
  const { dutyRatio } = worst.sum.value;
  const over = dutyRatio > limitRatio;
  return {
    result: `${percent(dutyRatio)} duty at ${sayNumber(at)} rpm: ${over ? 'over' : 'within'} ${percent(limitRatio)}`,
    ...(over ? { tone: 'late' as const } : {}),
    working: [
      `${milliseconds(periodS)} between shots`,
      longestWords,
      ...(worked.length < 2
        ? []
        : worked.map(({ speedRpm: each, sum }) => `${sayNumber(each)} rpm: ${percent(sum.value.dutyRatio)}`)),
    ],
    calculation: together(worst.sum),
    data: { ...known, duty: dutyRatio, pulseS: worst.pulseS, result: { value: dutyRatio, unit: '1' } },
  };
}
