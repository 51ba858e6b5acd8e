import { percent, type SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { sayNumber } from '../units/say.ts';
import type { Sayer } from '../units/sayer.ts';
import { pressureFall } from './pressure-fall.ts';

export interface HoldQuestion {
  readonly startKpa: number;
  readonly endKpa: number;
  readonly minutes: number;
  readonly limitRatio: number;
  /** The time the limit is given for. */
  readonly overMinutes: number;
}

const CAUTION =
  'Fuel stands under pressure, and a leak can be into a cylinder or onto something hot: no flame, glasses on, extinguisher at hand. Do not start on a suspected wet cylinder: it can lock solid.';

/** Whether a fuel system holds its pressure, and where to look when it does not. @throws UserError as pressureFall. */
export function holdAnswer(asked: HoldQuestion, say: Sayer): SumWords {
  const { startKpa, endKpa, minutes, limitRatio, overMinutes } = asked;
  const sum = pressureFall(asked);
  const { fallRatio, overRatio } = sum.value;
  const holds = overRatio <= limitRatio;
  const time = `${sayNumber(minutes, 3)} min`;
  return {
    result: `Falls ${percent(fallRatio)} in ${time}: ${holds ? 'holds' : 'leaks'}`,
    tone: holds ? 'done' : 'late',
    certainty: holds
      ? 'Look at every joint all the same: a drop outside is a leak whatever the gauge says.'
      : 'Look for a drop outside first; then pinch the return, then the supply, and read again.',
    working: [
      `${say.both('pressure', startKpa)} to ${say.both('pressure', endKpa)} in ${time}`,
      ...(minutes === overMinutes ? [] : [`${percent(overRatio)} in ${overMinutes} min at that rate`]),
      ...(holds
        ? []
        : [
            'Holds with the return pinched: the regulator',
            'Holds with the supply pinched: the check valve of the pump',
            'Holds with neither: an injector lets through; the wet plug tells which',
          ]),
    ],
    calculation: together(sum, {
      assumptions: [`a fall of ${percent(limitRatio)} in ${overMinutes} min is let pass, common practice`],
      sources: ['COMMON'],
      caveats: [CAUTION],
    }),
    data: {
      kind: 'pressure-hold',
      startKPa: startKpa,
      endKPa: endKpa,
      timeS: minutes * 60,
      fallRatio,
      limitRatio,
      holds,
      result: { value: fallRatio, unit: '1' },
    },
  };
}
