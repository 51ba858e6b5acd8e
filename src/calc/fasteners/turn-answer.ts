import type { Calculation } from '../../core/calculation.ts';
import type { SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { sayNumber } from '../units/say.ts';
import type { Sayer } from '../units/sayer.ts';
import type { ChosenBolt } from './chosen-bolt.ts';
import { type Clamped, serviceStress } from './joint.ts';
import { boltStretch } from './stretch.ts';
import { torqueForShare } from './tightening.ts';
import { turnAfterSnug } from './turn.ts';
import { MAKER, percentOf } from './words.ts';

/** Of the proof load, where the torque that brings the parts together is not said; common practice. */
const SNUG_SHARE = 0.2;

export interface TurnQuestion {
  readonly bolt: Calculation<ChosenBolt>;
  readonly nutFactor: number;
  readonly state: string;
  readonly gripMm: number;
  readonly clamped: Clamped;
  readonly snugNm?: number | undefined;
  readonly shareRatio: number;
  /** Instead of the share: a turn that is given. */
  readonly angleDeg?: number | undefined;
  /** On the joint, in service. */
  readonly loadN?: number | undefined;
}

const PAST_PROOF = {
  caveats: [
    'Past the proof load the bolt stretches for good, and only its maker can say how far is allowed.',
  ],
};

/** Turn after snug for a clamp share, or what a turn does. @throws UserError as turnAfterSnug. */
export function turnAnswer(asked: TurnQuestion, say: Sayer): SumWords {
  const { bolt, nutFactor, gripMm, clamped, shareRatio, angleDeg: turned, loadN } = asked;
  const { thread, name, stressAreaMm2, proofN, basisMpa } = bolt.value;
  const { majorMm } = thread.basic;
  const snugNm =
    asked.snugNm ??
    torqueForShare({ majorMm, stressAreaMm2, proofMpa: basisMpa, shareRatio: SNUG_SHARE, nutFactor }).value
      .torqueNm;
  const sum = turnAfterSnug(bolt.value, {
    gripMm,
    clamped,
    snugNm,
    nutFactor,
    wanted: turned === undefined ? { shareRatio } : { angleDeg: turned },
  });
  const { angleDeg, clampN, snugClampN, advanceMm, pastProof, boltKnPerMm, partsKnPerMm } = sum.value;
  const service =
    loadN === undefined
      ? undefined
      : serviceStress({ boltKnPerMm, partsKnPerMm, clampN, loadN, stressAreaMm2 });
  const snug = say.one('torque', snugNm);
  const turn = `${Math.round(angleDeg)}°`;
  return {
    result: pastProof
      ? `Past proof load: it is reached about ${turn} after ${snug}`
      : `About ${turn} after ${snug} clamps ${say.one('force', clampN)}, ${percentOf(clampN / proofN)} of proof`,
    ...(pastProof ? { tone: 'late' as const } : {}),
    certainty: 'An estimate: stiffness and friction are both assumed.',
    working: [
      `${name}: ${say.one('force', snugClampN)} at snug; the turn moves it ${say.both('length', advanceMm)} along`,
      `bolt ${sayNumber(boltKnPerMm, 3)} kN/mm, parts ${sayNumber(partsKnPerMm, 3)} kN/mm`,
      ...(service === undefined
        ? []
        : [
            `of a load on the joint the bolt gets ${percentOf(service.value.boltShareRatio)}: ${Math.round(service.value.serviceMpa)} MPa, ${Math.round(service.value.clampMpa)} MPa from tightening`,
          ]),
    ],
    calculation: together(pastProof ? PAST_PROOF : {}, MAKER, bolt, sum, service ?? {}, {
      assumptions: [`snug at ${snug}, ${asked.state}`],
    }),
    data: {
      kind: 'torque-angle',
      angleDeg,
      clampN,
      pastProofLoad: pastProof,
      proofLoadN: proofN,
      snugTorqueNm: snugNm,
      snugClampN,
      advanceMm,
    },
  };
}

export interface StretchQuestion {
  readonly bolt: Calculation<ChosenBolt>;
  readonly lengthMm: number;
  /** Of a reduced shank. */
  readonly shankMm?: number | undefined;
  readonly shareRatio: number;
}

/** How far a bolt stretches at its clamp share. @throws UserError as boltStretch. */
export function stretchAnswer(
  { bolt, lengthMm, shankMm, shareRatio }: StretchQuestion,
  say: Sayer,
): SumWords {
  const { name, stressAreaMm2, proofN } = bolt.value;
  const clampN = shareRatio * proofN;
  const areaMm2 = shankMm === undefined ? stressAreaMm2 : (Math.PI / 4) * shankMm ** 2;
  const sum = boltStretch({ clampN, lengthMm, areaMm2 });
  const { stretchMm } = sum.value;
  return {
    result: `${name} stretches ${say.both('clearance', stretchMm)} at ${say.one('force', clampN)}`,
    working: [
      `${percentOf(shareRatio)} of ${say.one('force', proofN)} proof load over ${say.one('area', areaMm2)}`,
    ],
    calculation: together(MAKER, bolt, sum),
    data: { kind: 'bolt-stretch', stretchMm, clampN, lengthMm, areaMm2 },
  };
}
