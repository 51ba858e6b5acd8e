import type { JsonObject } from '../../core/json.ts';
import type { SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { fromBase } from '../units/convert.ts';
import { sayIn, sayNumber } from '../units/say.ts';
import type { Sayer } from '../units/sayer.ts';
import { gsFromCcMin } from './fuel-units.ts';
import { flowAtPressure, flowOfFluid, pressureAcrossInjector, pressureForFlow } from './injector-pressure.ts';
import type { KnownFuel } from './known-fuel.ts';
import { ratedFlow, type TypedFlow } from './typed-fuel.ts';
import { FUEL_CAUTION } from './words.ts';

export interface FlowQuestion {
  readonly flow: TypedFlow;
  readonly fuel: KnownFuel;
  /** Density of petrol, which a rating in pounds an hour was measured with. */
  readonly petrolKgM3: number;
  /** What the flow was measured with, when it was not the fuel. */
  readonly bench?: KnownFuel | undefined;
  readonly ratedKpa: number;
  readonly manifoldKpa: number;
  readonly referenced: boolean;
  /** At the rail without boost. */
  readonly baseKpa?: number | undefined;
  readonly wanted?: TypedFlow | undefined;
}

/**
 * An injector's flow at another pressure; the pressure for a flow where one is wanted; in other units where neither is said.
 *
 * @throws UserError 'out-of-range' as the sums do.
 */
export function flowAnswer(asked: FlowQuestion, say: Sayer): SumWords {
  const { flow, fuel, bench, petrolKgM3 } = asked;
  const rated = ratedFlow(flow, bench ?? fuel, petrolKgM3);
  const typedCcMin = rated.value.flowCcMin;
  const fluid =
    bench === undefined
      ? undefined
      : flowOfFluid({
          flowCcMin: typedCcMin,
          testDensityKgM3: bench.densityKgM3,
          fuelDensityKgM3: fuel.densityKgM3,
        });
  const answer = answerFrom(asked, fluid?.value.flowCcMin ?? typedCcMin, say);
  return {
    ...answer,
    calculation: together(answer.calculation, rated, fluid ?? {}),
    data: {
      kind: 'injector',
      ...('massGs' in flow ? { flowGs: flow.massGs } : { flowCcMin: flow.volumeCcMin }),
      fuel: fuel.name,
      densityKgM3: fuel.densityKgM3,
      fromKPa: asked.ratedKpa,
      ...answer.data,
    },
  };
}

function answerFrom(asked: FlowQuestion, ratedCcMin: number, say: Sayer): SumWords {
  if (asked.wanted !== undefined) return pressureAnswer(asked, ratedCcMin, asked.wanted, say);
  if (asked.baseKpa === undefined && asked.manifoldKpa === 0) return unitsAnswer(asked, ratedCcMin);
  const { fuel, ratedKpa, manifoldKpa, referenced } = asked;
  const baseKpa = asked.baseKpa ?? ratedKpa;
  const rail = pressureAcrossInjector({ baseKpa, manifoldKpa, referenced });
  const { acrossKpa, railKpa } = rail.value;
  const sum = flowAtPressure({ flowCcMin: ratedCcMin, ratedKpa, acrossKpa });
  return {
    result: `${say.injector(sum.value.flowCcMin, fuel.densityKgM3)} at ${say.both('pressure', acrossKpa)} across the injector`,
    working: [
      `Rated ${say.injector(ratedCcMin, fuel.densityKgM3)} at ${say.both('pressure', ratedKpa)}`,
      `Rail ${say.both('pressure', railKpa)}, manifold ${say.both('pressure', manifoldKpa)}, both by gauge`,
      `× √(${sayNumber(acrossKpa)} / ${sayNumber(ratedKpa)}) = × ${sayNumber(Math.sqrt(acrossKpa / ratedKpa), 3)}`,
    ],
    calculation: together(sum, rail, { caveats: [FUEL_CAUTION] }),
    data: {
      toKPa: baseKpa,
      railKPa: railKpa,
      acrossKPa: acrossKpa,
      manifoldKPa: manifoldKpa,
      ...resultIn(sum.value.flowCcMin, 'cc/min'),
    },
  };
}

function pressureAnswer(
  { fuel, ratedKpa, petrolKgM3 }: FlowQuestion,
  ratedCcMin: number,
  wanted: TypedFlow,
  say: Sayer,
): SumWords {
  const wantedCcMin = ratedFlow(wanted, fuel, petrolKgM3).value.flowCcMin;
  const sum = pressureForFlow({ flowCcMin: ratedCcMin, ratedKpa, wantedCcMin });
  const { acrossKpa } = sum.value;
  return {
    result: `${say.both('pressure', acrossKpa)} across the injector for ${say.injector(wantedCcMin, fuel.densityKgM3)}`,
    working: [
      `From ${say.injector(ratedCcMin, fuel.densityKgM3)} at ${say.both('pressure', ratedKpa)}, by the square`,
    ],
    calculation: together(sum, { caveats: [FUEL_CAUTION] }),
    data: { wantedCcMin, toKPa: acrossKpa, ...resultIn(acrossKpa, 'kPa') },
  };
}

function unitsAnswer({ flow, fuel }: FlowQuestion, ccMin: number): SumWords {
  const flowGs = gsFromCcMin(ccMin, fuel.densityKgM3);
  const byMass = 'massGs' in flow;
  return {
    result: `${byMass ? sayIn(ccMin, 'cc/min', 3) : sayIn(flowGs, 'lb/h', 3)} of ${fuel.name} at ${sayNumber(fuel.densityKgM3 / 1000, 3)} g/cc`,
    certainty: 'The trade also reckons 10.5 cc/min to the lb/h, which is a fuel of 0.720 g/cc.',
    working: [`${sayIn(ccMin, 'cc/min', 3)} = ${sayIn(flowGs, 'g/s', 3)} = ${sayIn(flowGs, 'lb/h', 3)}`],
    calculation: together({ sources: ['SP811', 'COMMON'] }),
    data: byMass ? resultIn(ccMin, 'cc/min') : resultIn(fromBase(flowGs, 'lb/h'), 'lb/h'),
  };
}

const resultIn = (value: number, unit: string): JsonObject => ({ result: { value, unit } });
