import type { Calculation } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { together } from '../together.ts';
import type { ChosenBolt } from './chosen-bolt.ts';
import { angleForClamp, type Clamped, clampOfAngle, jointStiffness } from './joint.ts';
import { advanceOfAngle } from './stretch.ts';
import { clampOfTorque } from './tightening.ts';

export interface Turn {
  /** After snug; to the proof load where more was asked. */
  readonly angleDeg: number;
  readonly advanceMm: number;
  readonly snugClampN: number;
  /** At the end of the angle. */
  readonly clampN: number;
  /** More was asked than the proof load: there Hooke's law ends. */
  readonly pastProof: boolean;
  readonly boltKnPerMm: number;
  readonly partsKnPerMm: number;
}

/**
 * Angle after snug for a share of the proof load, or the clamp force of an angle.
 *
 * Source and range: as clampOfTorque, jointStiffness and angleForClamp (key SHIGLEY). An estimate.
 * @throws UserError 'out-of-range' as they do, or when the snug torque already clamps more than is wanted.
 */
export function turnAfterSnug(
  { thread, stressAreaMm2, proofN }: ChosenBolt,
  joint: {
    readonly gripMm: number;
    readonly clamped: Clamped;
    readonly snugNm: number;
    readonly nutFactor: number;
    readonly wanted: { readonly shareRatio: number } | { readonly angleDeg: number };
  },
): Calculation<Turn> {
  const { pitchMm } = thread;
  const { majorMm } = thread.basic;
  const { gripMm, clamped, snugNm, nutFactor, wanted } = joint;
  const snug = clampOfTorque({ torqueNm: snugNm, majorMm, nutFactor });
  const snugClampN = snug.value.clampN;
  const stiffness = jointStiffness({ majorMm, stressAreaMm2, gripMm, clamped });
  const parts = { ...stiffness.value, pitchMm };
  const askedN =
    'angleDeg' in wanted
      ? snugClampN + clampOfAngle({ ...parts, angleDeg: wanted.angleDeg }).value.addedN
      : wanted.shareRatio * proofN;
  const clampN = Math.min(askedN, proofN);
  if (clampN < snugClampN) {
    throw new UserError(
      'out-of-range',
      `${Number(snugNm.toFixed(1))} N·m already clamps ${Math.round((100 * snugClampN) / proofN)} % of the proof load: nothing is left to turn. Take a smaller snug torque.`,
    );
  }
  const sum = angleForClamp({ ...parts, addedN: clampN - snugClampN });
  const { angleDeg } = sum.value;
  return {
    ...together(snug, stiffness, sum),
    value: {
      angleDeg,
      advanceMm: advanceOfAngle({ angleDeg, pitchMm }).value.advanceMm,
      snugClampN,
      clampN,
      pastProof: askedN > proofN,
      ...stiffness.value,
    },
  };
}
