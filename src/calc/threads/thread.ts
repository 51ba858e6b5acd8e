/** Which standard a thread belongs to. */
export type ThreadFamily = 'iso-metric' | 'unified' | 'bsp-parallel' | 'bsp-taper' | 'npt' | 'whitworth';

export type Side = 'male' | 'female';

/** The lowest and highest a dimension may be, mm. */
export interface Range {
  readonly minMm: number;
  readonly maxMm: number;
}

/**
 * Where the crest diameter of a real thread is found, mm: the published range, and beside it a stretch on either hand
 * that wear, plating or where the jaws sit can reach, each with the share of threads found there.
 */
export interface CrestBand extends Range {
  readonly below: { readonly toMm: number; readonly share: number };
  readonly above: { readonly toMm: number; readonly share: number };
}

/** One designation with its dimensions; for a taper thread `basic` is at the gauge (hand-tight) plane. */
export interface Thread {
  readonly id: string;
  readonly family: ThreadFamily;
  readonly series: string;
  /** As it stands in the name: `22`, `7/16`, `#10`. */
  readonly nominal: string;
  readonly pitchMm: number;
  readonly tpi: number | undefined;
  readonly formAngleDeg: 55 | 60;
  readonly tapered: boolean;
  readonly basic: { readonly majorMm: number; readonly pitchDiameterMm: number; readonly minorMm: number };
  /** Class the limits are for, outside and inside. */
  readonly classes: { readonly male: string; readonly female: string };
  readonly limits: {
    readonly major: Range;
    readonly malePitch: Range | undefined;
    readonly minor: Range;
    readonly femalePitch: Range | undefined;
  };
  /** The crest a caliper touches: the major diameter of a male thread, the minor of a female one. */
  readonly crest: { readonly male: CrestBand; readonly female: CrestBand };
  /** Other names for the very same dimensions. */
  readonly sameAs: readonly string[];
  readonly sources: readonly string[];
}
