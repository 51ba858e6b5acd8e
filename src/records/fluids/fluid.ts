import type { Day } from '../../core/time.ts';

/** Something that is filled: the sump, the cooling system, a gearbox. */
export interface FluidCase {
  readonly id: number;
  readonly buildId: number;
  readonly name: string;
  /** What goes in, as the crew says it; cases of the same grade share their bottles. */
  readonly grade: string;
  /** What it takes, in litres: the maker's figure or the crew's. */
  readonly capacityL: number;
  /** What is in it, in litres. */
  readonly inL: number;
  /** When what is in it was first poured in, but for what would not drain; null while it is empty. */
  readonly filledOn: Day | null;
  readonly note: string | null;
}

/** Bottles of a grade on the shelf. */
export interface Bottle {
  readonly id: number;
  readonly buildId: number;
  readonly grade: string;
  readonly sizeL: number;
  readonly leftL: number;
  readonly boughtOn: Day;
  readonly openedOn: Day | null;
}

/** Something poured into a case or drained out of it. */
export interface FluidMove {
  readonly id: number;
  readonly caseId: number;
  readonly kind: 'poured' | 'drained';
  /** The grade poured; of a drain, what the case takes. */
  readonly grade: string;
  readonly volumeL: number;
  /** How much of it came out of bottles of the record. */
  readonly fromShelfL: number;
  /** What was in the case afterwards; nothing after a whole drain. */
  readonly inAfterL: number;
  readonly movedOn: Day;
  readonly byName: string;
  /** What the car's distance stood at, where somebody said it. */
  readonly distanceKm: number | null;
  readonly note: string | null;
}

/** From this share of what it takes a case counts as full: what a dipstick does not show. */
const FULL_SHARE = 0.98;

export const isFull = ({ capacityL, inL }: Pick<FluidCase, 'capacityL' | 'inL'>): boolean =>
  inL >= capacityL * FULL_SHARE;

/** What is still to go in, in litres. */
export const lackingL = (one: Pick<FluidCase, 'capacityL' | 'inL'>): number =>
  isFull(one) ? 0 : one.capacityL - one.inL;

/** Grades compare without case, spaces and dashes: "SAE 10w40" is "10W-40". */
export function plainGrade(grade: string): string {
  return grade
    .normalize('NFKD')
    .toLowerCase()
    .replace(/^\s*sae\b/, '')
    .replace(/[^\p{L}\p{N}.]+/gu, '');
}
