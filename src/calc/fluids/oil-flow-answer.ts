import { boreForVelocity, lineFlow } from '../fuel/fuel-line.ts';
import type { SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import type { Sayer } from '../units/sayer.ts';
import { coolerDrop, coolerFlow } from './oil-cooler.ts';
import { restrictorBore, restrictorFlow } from './oil-line.ts';
import { viscosityAt } from './oil-viscosity.ts';
import { cst, HOT_OIL, type HotOil, regime } from './oil-words.ts';

/** Velocities oil lines are sized by, m/s; common practice (key COMMON). */
export const LINE_M_PER_S = { pressure: 4.5, suction: 1.2, return: 2 } as const;

/** A line this much faster than usual is called narrow. */
const NARROW = 1.2;

export interface OilLineQuestion extends HotOil {
  readonly flowCcMin: number;
  /** Left out, the bore that is needed. */
  readonly boreMm?: number | undefined;
  readonly lengthMm: number;
  readonly side: keyof typeof LINE_M_PER_S;
}

/** Velocity and loss of an oil line, or the bore it needs. @throws UserError as lineFlow. */
export function oilLineAnswer(asked: OilLineQuestion, say: Sayer): SumWords {
  const { oil, temperatureC, densityKgM3, flowCcMin, lengthMm, side } = asked;
  const hot = viscosityAt({ ...oil, temperatureC });
  const { viscosityMm2S } = hot.value;
  const usual = LINE_M_PER_S[side];
  const wanted = boreForVelocity({ flowCcMin, velocityMPerS: usual });
  const boreMm = asked.boreMm ?? wanted.value.boreMm;
  const sum = lineFlow({ flowCcMin, boreMm, lengthMm, densityKgM3, viscosityMm2S });
  const { velocityMPerS, reynolds, dropKpa } = sum.value;
  const narrow = asked.boreMm !== undefined && velocityMPerS > usual * NARROW;
  const needed = `${say.both('length', wanted.value.boreMm)} bore`;
  return {
    result:
      asked.boreMm === undefined
        ? `${needed} at least for a ${side} line, loses ${say.one('pressure', dropKpa)}`
        : `${say.one('velocity', velocityMPerS)}, loses ${say.both('pressure', dropKpa)}${narrow ? `: narrow for a ${side} line` : ''}`,
    ...(narrow ? { tone: 'soon' as const } : {}),
    certainty: 'Fittings and bends come on top; cold oil loses many times as much.',
    working: [
      `${cst(viscosityMm2S)} at ${say.both('temperature', temperatureC)}, ${regime(reynolds)}, over ${say.one('length', lengthMm)}`,
      `a ${side} line for ${say.one('velocity', usual)} (common practice) takes a ${needed}`,
    ],
    calculation: together(HOT_OIL, hot, sum, {
      assumptions: [`${say.one('length', lengthMm)} of line`],
      sources: ['COMMON'],
    }),
    data: {
      kind: 'oil-line',
      velocityMPerS,
      dropKPa: dropKpa,
      reynolds,
      boreMm,
      wantedBoreMm: wanted.value.boreMm,
      viscosityMm2S,
    },
  };
}

export interface OilCoolerQuestion extends HotOil {
  readonly tubes: number;
  readonly boreMm: number;
  readonly lengthMm: number;
  /** A flow, whose drop is wanted, or a drop, whose flow is. */
  readonly given: { readonly flowCcMin: number } | { readonly dropKpa: number };
}

/** Pressure a cooler costs at a flow, or the flow a pressure drives through it. @throws UserError as coolerDrop and coolerFlow. */
export function oilCoolerAnswer(asked: OilCoolerQuestion, say: Sayer): SumWords {
  const { oil, temperatureC, densityKgM3, tubes, boreMm, lengthMm, given } = asked;
  const hot = viscosityAt({ ...oil, temperatureC });
  const { viscosityMm2S } = hot.value;
  const made = { tubes, boreMm, lengthMm, densityKgM3, viscosityMm2S };
  const driven = 'dropKpa' in given ? coolerFlow({ ...made, ...given }) : undefined;
  const flowCcMin = 'flowCcMin' in given ? given.flowCcMin : (driven?.value.flowCcMin ?? 0);
  const sum = driven ?? coolerDrop({ ...made, flowCcMin });
  const { reynolds, velocityMPerS } = sum.value;
  const dropKpa = 'dropKpa' in given ? given.dropKpa : sum.value.dropKpa;
  const through = `${tubes === 1 ? 'one tube' : `${tubes} tubes`} of ${say.one('length', boreMm)}`;
  return {
    result:
      driven === undefined
        ? `Costs ${say.both('pressure', dropKpa)} at ${say.one('liquidFlow', flowCcMin)} through ${through}`
        : `${say.both('liquidFlow', flowCcMin)} through ${through} at ${say.one('pressure', dropKpa)}`,
    certainty: 'Ends, tanks and fittings come on top; the maker’s curve outranks the sum.',
    working: [
      `${cst(viscosityMm2S)} at ${say.both('temperature', temperatureC)}, ${regime(reynolds)}, ${say.one('velocity', velocityMPerS)} in a tube`,
    ],
    calculation: together(HOT_OIL, hot, sum),
    data: { kind: 'oil-flow', flowCcMin, dropKPa: dropKpa, reynolds, boreMm },
  };
}

export interface RestrictorQuestion extends HotOil {
  /** A hole, whose flow is wanted, or a flow, whose hole is. */
  readonly given: { readonly boreMm: number } | { readonly flowCcMin: number };
  readonly dropKpa: number;
}

/** Flow through a turbo oil restrictor, or the hole for a flow. @throws UserError as restrictorFlow and restrictorBore. */
export function restrictorAnswer(asked: RestrictorQuestion, say: Sayer): SumWords {
  const { oil, temperatureC, densityKgM3, given, dropKpa } = asked;
  const hot = viscosityAt({ ...oil, temperatureC });
  const { viscosityMm2S } = hot.value;
  const run = { dropKpa, densityKgM3, viscosityMm2S };
  const boreMm =
    'boreMm' in given
      ? given.boreMm
      : restrictorBore({ ...run, flowLMin: given.flowCcMin / 1000 }).value.boreMm;
  const sum = restrictorFlow({ ...run, boreMm });
  const { flowLMin, reynolds, velocityMPerS } = sum.value;
  const flow = say.both('liquidFlow', flowLMin * 1000, 2);
  return {
    result:
      'boreMm' in given
        ? `${flow} through ${say.one('length', boreMm)} at ${say.both('pressure', dropKpa)}`
        : `${say.both('length', boreMm)} hole for ${flow} at ${say.both('pressure', dropKpa)}`,
    working: [
      `${cst(viscosityMm2S)} at ${say.both('temperature', temperatureC)}, ${say.one('velocity', velocityMPerS, 2)} in the hole, Reynolds ${Math.round(reynolds)}`,
    ],
    calculation: together(HOT_OIL, hot, sum),
    data: {
      kind: 'oil-restrictor',
      flowCcMin: flowLMin * 1000,
      boreMm,
      pressureKPa: dropKpa,
      reynolds,
    },
  };
}
