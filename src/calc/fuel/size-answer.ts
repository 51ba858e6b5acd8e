import type { Calculation } from '../../core/calculation.ts';
import { percent, type SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import type { Sayer } from '../units/sayer.ts';
import { gsFromCcMin } from './fuel-units.ts';
import { flowAtPressure } from './injector-pressure.ts';
import { injectorForPower, powerFromInjectors } from './injector-size.ts';
import type { KnownFuel } from './known-fuel.ts';
import { FUEL_CAUTION, fuelUseWords } from './words.ts';

interface SetQuestion {
  readonly injectors: number;
  readonly fuel: KnownFuel;
  readonly use: Calculation<{ readonly bsfcGPerKwh: number }>;
  readonly dutyRatio: number;
  readonly drivelineLossRatio: number;
  readonly ratedKpa: number;
  /** Across the injector when it works. */
  readonly acrossKpa: number;
}

/** Injector size for a power, as it is rated in catalogues. @throws UserError 'out-of-range' as injectorForPower. */
export function sizeAnswer(asked: SetQuestion & { readonly powerKw: number }, say: Sayer): SumWords {
  const { powerKw, injectors, fuel, use, dutyRatio, ratedKpa, acrossKpa } = asked;
  const { densityKgM3, name } = fuel;
  const { bsfcGPerKwh } = use.value;
  const sum = injectorForPower({ ...asked, bsfcGPerKwh, densityKgM3 });
  const { flowCcMin, flowGs, fuelFlowGs, crankPowerKw } = sum.value;
  const rated = flowAtPressure({ flowCcMin, ratedKpa: acrossKpa, acrossKpa: ratedKpa });
  const ratedCcMin = rated.value.flowCcMin;
  const elsewhere = acrossKpa !== ratedKpa;
  return {
    result: `${say.injector(ratedCcMin, densityKgM3)} each on ${name}, rated at ${say.one('pressure', ratedKpa)}`,
    certainty: 'The next size up, not the next down; then look whether it still idles (/injector idle).',
    working: [
      `${say.both('power', crankPowerKw)} at the crank burn ${say.one('burn', fuelFlowGs)} at ${fuelUseWords(bsfcGPerKwh)}`,
      `${say.one('burn', flowGs)} each of ${injectors}, open ${percent(dutyRatio)} of the time`,
      ...(elsewhere
        ? [`${say.injector(flowCcMin, densityKgM3)} at ${say.one('pressure', acrossKpa)} across it`]
        : []),
    ],
    calculation: together(sum, use, elsewhere ? rated : {}, { caveats: [FUEL_CAUTION] }),
    data: {
      kind: 'injector',
      powerKW: powerKw,
      crankPowerKW: crankPowerKw,
      cylinders: injectors,
      fuel: name,
      duty: dutyRatio,
      bsfcGPerKWh: bsfcGPerKwh,
      densityKgM3,
      totalGs: fuelFlowGs,
      flowGs: gsFromCcMin(ratedCcMin, densityKgM3),
      flowCcMin: ratedCcMin,
      result: { value: ratedCcMin, unit: 'cc/min' },
    },
  };
}

/** Power that a set supports, at the crank and at the wheels. @throws UserError 'out-of-range' as powerFromInjectors. */
export function powerAnswer(asked: SetQuestion & { readonly ratedCcMin: number }, say: Sayer): SumWords {
  const { ratedCcMin, injectors, fuel, use, dutyRatio, ratedKpa, acrossKpa } = asked;
  const { densityKgM3, name } = fuel;
  const { bsfcGPerKwh } = use.value;
  const { flowCcMin } = flowAtPressure({ flowCcMin: ratedCcMin, ratedKpa, acrossKpa }).value;
  const sum = powerFromInjectors({ ...asked, flowCcMin, bsfcGPerKwh, densityKgM3 });
  const { crankPowerKw, wheelPowerKw, fuelFlowGs, flowGs } = sum.value;
  return {
    result: `Good for ${say.both('power', crankPowerKw)} at the crank on ${name}`,
    certainty: `About ${say.both('power', wheelPowerKw)} at the wheels. The pump has to bring it too: /pump need.`,
    working: [
      `${injectors} of ${say.injector(flowCcMin, densityKgM3)}, open ${percent(dutyRatio)}: ${say.one('burn', fuelFlowGs)}`,
      `at ${fuelUseWords(bsfcGPerKwh)}`,
    ],
    calculation: together(sum, use, {
      assumptions: [
        acrossKpa === ratedKpa
          ? `run at the ${say.one('pressure', ratedKpa)} it is rated at`
          : `rated at ${say.one('pressure', ratedKpa)}, run at ${say.one('pressure', acrossKpa)} across it`,
      ],
      caveats: [FUEL_CAUTION],
    }),
    data: {
      kind: 'injector',
      count: injectors,
      flowCcMin: ratedCcMin,
      flowGs,
      fuel: name,
      duty: dutyRatio,
      bsfcGPerKWh: bsfcGPerKwh,
      densityKgM3,
      totalGs: fuelFlowGs,
      powerKW: crankPowerKw,
      wheelPowerKW: wheelPowerKw,
      result: { value: crankPowerKw, unit: 'kW' },
    },
  };
}
