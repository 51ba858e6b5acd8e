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
  /** What is in it, in litres: poured in since it was last drained. */
  readonly inL: number;
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
