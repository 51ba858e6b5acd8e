import type { Sayer } from '../units/sayer.ts';
import { STAGES } from './pattern.ts';

/** What is said wherever something is tightened (key COMMON). */
export const MAKER = {
  caveats: [
    "The maker's figure outranks this, always: for head, rod, main, flywheel and wheel bolts use nothing else, and new bolts where it says so. Brakes, steering and lifting are work for somebody qualified.",
  ],
};

export const percentOf = (ratio: number): string => `${Math.round(ratio * 100)} %`;

/** The torques of the stages: "27 N·m, 63 N·m, 90 N·m". */
export const stagesOf = (torqueNm: number, say: Sayer): string =>
  STAGES.map((part) => say.one('torque', torqueNm * part, 2)).join(', ');
