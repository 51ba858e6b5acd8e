import type { Calculation } from '../../core/calculation.ts';
import type { Thread } from '../threads/thread.ts';
import { threadName } from '../threads/wording.ts';
import { together } from '../together.ts';
import { type BoltClass, classFor, loadAtStress } from './bolt-class.ts';
import type { KnownBolt } from './known-bolt.ts';
import { stressArea } from './stress-area.ts';

/** A bolt of a size and class with the loads it carries. */
export interface ChosenBolt {
  readonly thread: Thread;
  /** "M10 × 1.5 10.9". */
  readonly name: string;
  readonly row: BoltClass;
  readonly stressAreaMm2: number;
  /** Stress its clamp share is counted from. */
  readonly basisMpa: number;
  readonly proofN: number;
  readonly breakingN: number;
}

/**
 * What a bolt carries, from its thread and class.
 *
 * Source and range: as stressArea and loadAtStress. Stainless bolts have no proof load: R_p0.2 stands for it, and it is said.
 * @throws UserError 'out-of-range' when the class is not made in that size.
 */
export function chosenBolt(
  { thread, pitchAssumed }: KnownBolt,
  classId: string,
  classes: readonly BoltClass[],
): Calculation<ChosenBolt> {
  const majorMm = thread.basic.majorMm;
  const row = classFor(classId, majorMm, classes);
  const area = stressArea({ majorMm, pitchMm: thread.pitchMm, sharp: thread.family === 'unified' });
  const { stressAreaMm2 } = area.value;
  const basisMpa = row.proofMpa ?? row.yieldMpa;
  const proof = loadAtStress({ stressAreaMm2, stressMpa: basisMpa });
  const breaking = loadAtStress({ stressAreaMm2, stressMpa: row.tensileMpa });
  const notes = together(
    { assumptions: pitchAssumed ? [`coarse thread, ${threadName(thread)}`] : [], sources: row.source },
    area,
    row.proofMpa === undefined
      ? {
          assumptions: [
            `${row.standard} gives no proof load: the 0.2 % proof stress of ${row.yieldMpa} MPa stands for it`,
          ],
          caveats: ['Stainless threads seize: use an anti-seize compound, and turn slowly.'],
        }
      : {},
  );
  return {
    ...notes,
    value: {
      thread,
      name: `${threadName(thread)} ${row.id}`,
      row,
      stressAreaMm2,
      basisMpa,
      proofN: proof.value.loadN,
      breakingN: breaking.value.loadN,
    },
  };
}
