import type { Calculation } from '../../core/calculation.ts';
import type { SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import type { Sayer } from '../units/sayer.ts';
import type { ChosenBolt } from './chosen-bolt.ts';
import { engagementLength } from './engagement.ts';
import { type Layout, STAGES, tighteningOrder } from './pattern.ts';
import { MAKER, percentOf, stagesOf } from './words.ts';
import { wrenchSetting } from './wrench.ts';

/** Tensile strength of tapped aluminium, MPa; from memory (EN 1706 AC-42100-T6, EN 755-2 AW-6082-T6; key MEM). */
const ALUMINIUM_MPA = { cast: 230, wrought: 290 } as const;

export interface EngagementQuestion {
  readonly bolt: Calculation<ChosenBolt>;
  readonly metal: keyof typeof ALUMINIUM_MPA;
  /** Where it is known. */
  readonly strengthMpa?: number | undefined;
}

/** How much thread a bolt needs in aluminium. @throws UserError as engagementLength. */
export function engagementAnswer({ bolt, metal, strengthMpa }: EngagementQuestion, say: Sayer): SumWords {
  const { thread, name, stressAreaMm2, row } = bolt.value;
  const { basic, limits, pitchMm } = thread;
  const sum = engagementLength({
    majorMm: basic.majorMm,
    pitchMm,
    leastMajorMm: limits.major.minMm,
    mostPitchDiameterMm: limits.femalePitch?.maxMm ?? basic.pitchDiameterMm,
    stressAreaMm2,
    boltTensileMpa: row.tensileMpa,
    holeTensileMpa: strengthMpa ?? ALUMINIUM_MPA[metal],
  });
  const { engagementMm, diametersRatio, turns } = sum.value;
  return {
    result: `${name} needs ${say.both('length', engagementMm)} of full thread in aluminium, ${diametersRatio.toFixed(1)} × d`,
    working: [`${turns.toFixed(1)} turns; the usual rule is 1.5 to 2 × d in aluminium (common practice)`],
    calculation: together(
      MAKER,
      bolt,
      sum,
      strengthMpa === undefined
        ? { assumptions: [`${metal} aluminium, heat-treated`], sources: ['MEM'] }
        : {},
    ),
    data: {
      kind: 'thread-engagement',
      engagementMm,
      engagementRatio: diametersRatio,
      turns,
      diameterMm: basic.majorMm,
      pitchMm,
    },
  };
}

/** More bolts than their order fits a line of an answer. */
const MOST_IN_LINE = 16;

/** Order in which to tighten, and the stages. @throws UserError as tighteningOrder. */
export function patternAnswer(
  { bolts, layout, torqueNm }: { bolts: number; layout: Layout; torqueNm?: number | undefined },
  say: Sayer,
): SumWords {
  const sum = tighteningOrder({ bolts, layout });
  const numbering =
    layout === 'circle'
      ? 'numbered round the circle'
      : `1 to ${bolts / 2} along the near row, the rest along the far one`;
  const rounds = torqueNm === undefined ? STAGES.map(percentOf).join(', ') : stagesOf(torqueNm, say);
  const order = sum.value.order.join(' ');
  return {
    result: bolts > MOST_IN_LINE ? `${bolts} bolts, ${layout}: the order is below` : order,
    working: [
      ...(bolts > MOST_IN_LINE ? [order] : []),
      numbering,
      `the whole round at each of ${rounds}, then once more at the last`,
    ],
    calculation: together(MAKER, sum, { assumptions: ['order and stages are common practice'] }),
    data: {
      kind: 'tightening-order',
      order: [...sum.value.order],
      ...(torqueNm === undefined ? {} : { torqueNm }),
    },
  };
}

/** What to set a torque wrench to with an extension in line. @throws UserError as wrenchSetting. */
export function wrenchAnswer(
  asked: { readonly torqueNm: number; readonly wrenchMm: number; readonly extensionMm: number },
  say: Sayer,
): SumWords {
  const sum = wrenchSetting(asked);
  const { settingNm } = sum.value;
  return {
    result: `Set ${say.both('torque', settingNm)} for ${say.one('torque', asked.torqueNm)} at the bolt`,
    working: [],
    calculation: sum,
    data: { kind: 'wrench-setting', settingNm, torqueNm: asked.torqueNm },
  };
}
