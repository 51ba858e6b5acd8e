import type { Calculation } from '../../core/calculation.ts';
import type { SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import type { Sayer } from '../units/sayer.ts';
import { checkByFriction, type FrictionCheck } from './check-by-friction.ts';
import type { ChosenBolt } from './chosen-bolt.ts';
import { clampOfTorque, torqueAfterChange, torqueForShare } from './tightening.ts';
import { MAKER, percentOf, stagesOf } from './words.ts';

export interface TorqueQuestion {
  readonly bolt: Calculation<ChosenBolt>;
  readonly nutFactor: number;
  /** How thread and head are, in words. */
  readonly state: string;
  readonly shareRatio: number;
  /** Coefficient of friction, for the check beside it. */
  readonly mu: number;
  /** Diameter under the head where the table has it, mm. */
  readonly headMeanMm?: number | undefined;
  /** Stress area of the published table, mm². */
  readonly tableAreaMm2?: number | undefined;
  readonly makerNm?: number | undefined;
}

/** From here on a maker's figure and the sum are not about the same bolt. */
const FAR_APART = 0.25;

/** Tightening torque of a bolt, beside the maker's figure where there is one. @throws UserError as torqueForShare. */
export function torqueAnswer(asked: TorqueQuestion, say: Sayer): SumWords {
  const { bolt, nutFactor, state, shareRatio, mu, headMeanMm, tableAreaMm2, makerNm } = asked;
  const { thread, name, row, stressAreaMm2, basisMpa, proofN, breakingN } = bolt.value;
  const sum = torqueForShare({
    majorMm: thread.basic.majorMm,
    stressAreaMm2,
    proofMpa: basisMpa,
    shareRatio,
    nutFactor,
  });
  const { torqueNm, clampN } = sum.value;
  const check = checkByFriction(bolt.value, clampN, mu, headMeanMm);
  const apart = makerNm === undefined ? 0 : Math.abs(torqueNm / makerNm - 1);
  const force = (newton: number): string => say.one('force', newton);
  return {
    result:
      makerNm === undefined
        ? `${say.both('torque', torqueNm)} for ${name}, ${state}`
        : `The maker's ${say.both('torque', makerNm)} stands; the sum says ${say.one('torque', torqueNm)}`,
    ...(apart > FAR_APART
      ? {
          tone: 'soon' as const,
          certainty: `${percentOf(apart)} apart: look again at class, thread and lubrication.`,
        }
      : {}),
    working: [
      `clamps ${force(clampN)}, ${percentOf(shareRatio)} of ${force(proofN)} proof load; breaks from ${force(breakingN)}`,
      `stages ${stagesOf(makerNm ?? torqueNm, say)}`,
      `stress area ${say.one('area', stressAreaMm2)} worked out${tableAreaMm2 === undefined ? '' : `, ${say.one('area', tableAreaMm2)} in the table`}`,
      checkWords(check.value, mu, proofN, say),
    ],
    calculation: together(
      MAKER,
      bolt,
      sum,
      { assumptions: ['stages are common practice'], sources: ['COMMON'] },
      check,
    ),
    data: {
      kind: 'torque',
      torqueNm: makerNm ?? torqueNm,
      computedTorqueNm: torqueNm,
      clampN,
      diameterMm: thread.basic.majorMm,
      pitchMm: thread.pitchMm,
      propertyClass: row.id,
      nutFactor,
      shareRatio,
      stressAreaMm2,
      proofLoadN: proofN,
      breakingLoadN: breakingN,
    },
  };
}

function checkWords(
  { how, torqueNm, clampN }: FrictionCheck,
  mu: number,
  proofN: number,
  say: Sayer,
): string {
  const torque = say.both('torque', torqueNm);
  return how === 'most'
    ? `by VDI 2230 at friction ${mu}, 90 % of yield: ${torque}, clamps ${percentOf(clampN / proofN)} of proof`
    : `the same clamp force at friction ${mu}: ${torque}`;
}

/** Clamp force of a torque, and how near the bolt is to its proof load. @throws UserError as clampOfTorque. */
export function clampAnswer(
  asked: Pick<TorqueQuestion, 'bolt' | 'nutFactor' | 'state'> & { readonly torqueNm: number },
  say: Sayer,
): SumWords {
  const { bolt, nutFactor, state, torqueNm } = asked;
  const { thread, name, proofN } = bolt.value;
  const sum = clampOfTorque({ torqueNm, majorMm: thread.basic.majorMm, nutFactor });
  const { clampN } = sum.value;
  const shareRatio = clampN / proofN;
  const tooMuch =
    shareRatio > 0.9
      ? { caveats: ['That is more than 90 % of the proof load: it may stretch for good, or break.'] }
      : {};
  return {
    result: `${say.both('torque', torqueNm)} clamps ${say.one('force', clampN)}, ${percentOf(shareRatio)} of proof load`,
    ...(shareRatio > 0.9 ? { tone: 'late' as const } : {}),
    working: [`${name}, ${state}; proof load ${say.one('force', proofN)}`],
    calculation: together(tooMuch, MAKER, bolt, sum),
    data: {
      kind: 'clamp',
      torqueNm,
      clampN,
      proofLoadN: proofN,
      shareRatio,
      diameterMm: thread.basic.majorMm,
      pitchMm: thread.pitchMm,
    },
  };
}

export interface Lubrication {
  readonly state: string;
  readonly nutFactor: number;
}

/** Torque for the same clamp force with other lubrication. @throws UserError as torqueAfterChange. */
export function lubricationAnswer(
  torqueNm: number,
  [from, to]: readonly [Lubrication, Lubrication],
  say: Sayer,
): SumWords {
  const sum = torqueAfterChange({ torqueNm, fromNutFactor: from.nutFactor, toNutFactor: to.nutFactor });
  return {
    result: `${say.both('torque', sum.value.torqueNm)} ${to.state} clamps as ${say.one('torque', torqueNm)} ${from.state}`,
    working: [],
    calculation: together(MAKER, sum),
    data: { kind: 'torque-change', torqueNm: sum.value.torqueNm, fromTorqueNm: torqueNm },
  };
}
