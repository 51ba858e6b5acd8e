import type { Calculation } from '../../core/calculation.ts';
import type { Fact } from '../../core/reply.ts';
import { percent, type SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { sayIn } from '../units/say.ts';
import type { Sayer } from '../units/sayer.ts';
import { type FuelChange, fuelChange, lambdaIfUnchanged, pulseAfterChange } from './fuel-change.ts';
import type { KnownFuel } from './known-fuel.ts';
import { FUEL_CAUTION, milliseconds } from './words.ts';

export interface ChangeQuestion {
  readonly oldCcMin: number;
  readonly newCcMin: number;
  readonly oldFuel: KnownFuel;
  readonly newFuel: KnownFuel;
  readonly pulseS?: number | undefined;
  readonly dutyRatio?: number | undefined;
  readonly voltageV: number;
  /** Known once the new injectors' dead time is. */
  readonly deadTimes?: { readonly oldS: number; readonly newS: number } | undefined;
}

/**
 * Other injectors or another fuel: the factor for a table of open times, the settings for the first start, what becomes of a
 * pulse and of the highest duty.
 *
 * @throws UserError 'out-of-range' as fuelChange and pulseAfterChange.
 */
export function changeAnswer(asked: ChangeQuestion, say: Sayer): SumWords {
  const { oldCcMin, newCcMin, oldFuel, newFuel, dutyRatio } = asked;
  const sum = fuelChange({ ...oldFuel, flowCcMin: oldCcMin }, { ...newFuel, flowCcMin: newCcMin });
  const { openTimeRatio, volumeRatio, massRatio } = sum.value;
  const unchanged = lambdaIfUnchanged(1, sum.value);
  const newPulseS = newPulse(asked, sum.value);
  const newDuty = dutyRatio === undefined ? undefined : dutyRatio * openTimeRatio;
  const direction =
    openTimeRatio < 1 ? `take ${percent(1 - openTimeRatio)} out` : `put ${percent(openTimeRatio - 1)} in`;
  const same = Math.abs(openTimeRatio - 1) < 0.0005;
  return {
    result: same ? 'Open times stay as they are' : `Open times × ${openTimeRatio.toFixed(3)}: ${direction}`,
    certainty: `Changed nothing, λ 1.00 would become ${unchanged.toFixed(2)}${verdictOf(unchanged)}.`,
    working: [
      `Fuel by volume × ${volumeRatio.toFixed(3)}, flow × ${(newCcMin / oldCcMin).toFixed(3)}`,
      ...(newPulseS === undefined
        ? []
        : [
            `Pulse ${milliseconds(asked.pulseS ?? 0)} becomes ${milliseconds(newPulseS)}, dead time included`,
          ]),
      ...(newDuty === undefined ? [] : [`Duty ${percent(dutyRatio ?? 0)} becomes ${percent(newDuty)}`]),
    ],
    facts: firstStart(asked, sum, say),
    calculation: together(sum, {
      caveats: [
        FUEL_CAUTION,
        ...(newDuty !== undefined && newDuty > 0.9
          ? ['That duty is over 90 %: these injectors are too small for it.']
          : []),
      ],
    }),
    data: {
      kind: 'injector',
      oldCcMin,
      newCcMin,
      fuel: oldFuel.name,
      newFuel: newFuel.name,
      openTimeRatio,
      volumeRatio,
      massRatio,
      lambdaUnchanged: unchanged,
      ...(newPulseS === undefined ? {} : { newPulseS }),
      ...(newDuty === undefined ? {} : { newDuty }),
      result: { value: openTimeRatio, unit: '1' },
    },
  };
}

function newPulse({ pulseS, deadTimes }: ChangeQuestion, { openTimeRatio }: FuelChange): number | undefined {
  if (pulseS === undefined || deadTimes === undefined) return undefined;
  return pulseAfterChange({
    pulseS,
    oldDeadTimeS: deadTimes.oldS,
    newDeadTimeS: deadTimes.newS,
    openTimeRatio,
  });
}

/** What is typed into a controller before the first start. */
function firstStart(asked: ChangeQuestion, { value }: Calculation<FuelChange>, say: Sayer): readonly Fact[] {
  const { newCcMin, newFuel, deadTimes, voltageV } = asked;
  return [
    [
      'Controller that knows both',
      `injector ${say.injector(newCcMin, newFuel.densityKgM3)}, fuel ${newFuel.stoichiometricAfr.toFixed(2)} : 1; leave the table`,
    ],
    [
      'Table of open times',
      `all cells × ${value.openTimeRatio.toFixed(3)}; cranking, warm-up and acceleration likewise`,
    ],
    [
      'Dead time',
      deadTimes === undefined
        ? "the new injectors' own: type dead to see the first pulse"
        : `${milliseconds(deadTimes.newS)} at ${sayIn(voltageV, 'V')}`,
    ],
  ];
}

function verdictOf(lambdaRatio: number): string {
  if (Math.abs(lambdaRatio - 1) < 0.005) return '';
  return lambdaRatio < 1 ? ', rich' : ', lean: do not drive it so';
}
