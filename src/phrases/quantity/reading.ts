import type { PressureReference } from '../../calc/units/pressure-reference.ts';
import type { UnitId } from '../../calc/units/table.ts';

/** One fair meaning of what was typed, and what would be typed to mean nothing else. */
export interface Offer {
  /** In `unit`. */
  readonly value: number;
  readonly unit: UnitId;
  readonly typed: string;
}

/** A value as it was meant. */
export interface Read {
  readonly verdict: 'read';
  /** In `unit`, which is the field's own for that dimension. */
  readonly value: number;
  readonly unit: UnitId;
  /** The figure and unit as they were typed. */
  readonly figure: number;
  readonly typedUnit: UnitId;
  /** The ± typed beside it, in `unit`; a difference, so without the zero of a temperature scale. */
  readonly tol?: number;
  /** What a pressure was said to be measured from. */
  readonly reference?: PressureReference;
  /** "about", "just under", "~". */
  readonly approx?: true;
  /** The word typed means this unit only in this field: the `cc` of an injector is cc/min. */
  readonly here?: true;
  /** The unit was one letter off. */
  readonly slip?: true;
}

export interface ReadRange {
  readonly verdict: 'range';
  readonly min: number;
  readonly max: number;
  readonly unit: UnitId;
  readonly typedUnit: UnitId;
  readonly reference?: PressureReference;
  readonly approx?: true;
}

export interface Ask {
  readonly verdict: 'ask';
  /** A sentence that ends in a question mark, or says what is missing. */
  readonly question: string;
  readonly options: readonly Offer[];
}

export interface Refusal {
  readonly verdict: 'refuse';
  /** What was wrong and what would be read, in whole sentences. */
  readonly problem: string;
}

/** What a quantity as typed means: one value, a range of them, several fair readings, or nothing. */
export type QuantityReading = Read | ReadRange | Ask | Refusal;
