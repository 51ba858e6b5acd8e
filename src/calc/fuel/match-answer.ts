import { percent, type SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { sayNumber } from '../units/say.ts';
import { type MatchLimits, matchInjectors } from './match.ts';

/** The spread of a set, its verdict in words, and each cylinder's trim. @throws UserError as matchInjectors. */
export function matchAnswer(flowsCcMin: readonly number[], limits: MatchLimits): SumWords {
  const sum = matchInjectors(flowsCcMin, limits);
  const { spreadRatio, meanCcMin, offRatios, trimRatios, leanest, richest } = sum.value;
  const offOf = (cylinder: number): string => percent(Math.abs(offRatios[cylinder - 1] ?? 0));
  const verdict = verdictOf(spreadRatio, limits);
  return {
    result:
      spreadRatio === 0
        ? 'No spread at all: matched'
        : `${percent(spreadRatio)} spread, ${verdict}: cylinder ${leanest} leans by ${offOf(leanest)}`,
    ...(verdict === 'not a set' ? { tone: 'late' as const } : {}),
    certainty:
      verdict === 'matched'
        ? 'Nothing to trim.'
        : `Cylinder ${richest} runs rich by ${offOf(richest)}. Clean and measure again before trimming.`,
    working: flowsCcMin.map(
      (each, index) =>
        `Cylinder ${index + 1}: ${sayNumber(each)}, trim × ${(trimRatios[index] ?? 1).toFixed(3)}`,
    ),
    calculation: together(sum),
    data: {
      kind: 'injector',
      meanCcMin,
      spreadRatio,
      offRatios: [...offRatios],
      trimRatios: [...trimRatios],
      leanest,
      richest,
      verdict,
      result: { value: spreadRatio, unit: '1' },
    },
  };
}

function verdictOf(
  spreadRatio: number,
  { matchedRatio, usableRatio }: MatchLimits,
): 'matched' | 'usable' | 'not a set' {
  if (spreadRatio <= matchedRatio) return 'matched';
  return spreadRatio <= usableRatio ? 'usable' : 'not a set';
}
