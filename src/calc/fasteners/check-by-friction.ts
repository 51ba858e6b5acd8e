import type { Calculation } from '../../core/calculation.ts';
import { torqueByFriction, torqueOfScrew } from './by-friction.ts';
import type { ChosenBolt } from './chosen-bolt.ts';
import { stressArea } from './stress-area.ts';

/** The torque beside which one by nut factor is held. */
export interface FrictionCheck {
  /** `most`: what 90 % of the yield strength allows; `same-clamp`: the torque for the same clamp force. */
  readonly how: 'most' | 'same-clamp';
  readonly torqueNm: number;
  readonly clampN: number;
}

/**
 * The same bolt by coefficient of friction: VDI 2230 where its head is known, else the turning of a loaded screw.
 *
 * Source and range: as torqueByFriction and torqueOfScrew; heads ISO 4014 (key ISO4014).
 * @throws UserError 'out-of-range' as they do.
 */
export function checkByFriction(
  { thread, row }: ChosenBolt,
  clampN: number,
  friction: number,
  headMeanMm: number | undefined,
): Calculation<FrictionCheck> {
  const { basic, pitchMm, family } = thread;
  const { majorMm } = basic;
  if (headMeanMm !== undefined) {
    const most = torqueByFriction({ majorMm, pitchMm, yieldMpa: row.yieldMpa, friction, headMeanMm });
    return {
      ...most,
      value: { how: 'most', ...most.value },
      assumptions: [],
      sources: [...most.sources, 'ISO4014'],
    };
  }
  const { rootDiameterMm } = stressArea({ majorMm, pitchMm, sharp: family === 'unified' }).value;
  const screw = torqueOfScrew({ clampN, majorMm, rootMm: rootDiameterMm, pitchMm, friction });
  return { ...screw, value: { how: 'same-clamp', clampN, ...screw.value }, assumptions: [] };
}
