import type { FittingSystem, ThreadFamilyName } from './words.ts';

/** A length as typed, in mm; `halfDigitMm` is the least it can be out by. */
export interface TypedLength {
  readonly mm: number;
  readonly halfDigitMm: number;
  readonly plusMinusMm: number | undefined;
  /** Given as a fraction of an inch, or a whole inch: as much a name as a length. */
  readonly inchName: boolean;
  readonly text: string;
}

/** A pitch as typed. `span`: worked out from a length over several threads. */
export interface TypedPitch {
  readonly mm: number;
  readonly how: 'mm' | 'inch' | 'tpi' | 'span';
  readonly plusMinusMm: number | undefined;
  readonly halfDigitMm: number;
  /** Pitches the span covers. */
  readonly over: number | undefined;
  readonly text: string;
}

export interface ThreadName {
  /** As in the designation: `10`, `3/4`, `#10`; absent when only the family was named. */
  readonly nominal?: string;
  readonly families?: readonly ThreadFamilyName[];
  readonly series?: readonly string[];
}

/** What a thread size as typed means. */
export interface ThreadSize {
  readonly diameter: TypedLength | undefined;
  readonly named: ThreadName | undefined;
  readonly fitting: { readonly system: FittingSystem; readonly dash: number | undefined } | undefined;
  /** More than one when the pitch was taken twice. */
  readonly pitches: readonly TypedPitch[];
  readonly taper: { readonly otherMm: number; readonly overMm: number } | undefined;
  readonly side: 'male' | 'female' | undefined;
  readonly taperSaid: 'tapered' | 'parallel' | undefined;
  readonly lengthMm: number | undefined;
  /** Words that were not used. */
  readonly unused: readonly string[];
}

export const SIZE_EXAMPLES = 'Type it like `21.9 x 1.5`, `0.746in 16tpi`, `3/4-16` or `13.1 x 15/10`.';
