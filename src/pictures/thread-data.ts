/** A published thread as it is drawn. */
export interface ThreadBand {
  readonly name: string;
  /** What uses it: "JIC -8, ORB -8". */
  readonly note?: string;
  readonly side: 'male' | 'female';
  /** Published limits of the crest diameter, mm. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly pitchMm: number;
  /** Set where the standard counts threads to the inch. */
  readonly tpi: number | undefined;
  readonly tapered: boolean;
  /** Whether the readings leave it standing. */
  readonly fits: boolean;
}

/** A number and what it could be out by, mm. */
export interface Measured {
  readonly mm: number;
  readonly plusMinusMm: number;
}

export interface ThreadPictureData {
  /** The answer in a sentence. */
  readonly title: string;
  /** The size as it was named, when it was not measured: "3/4". */
  readonly named?: string;
  readonly diameter: Measured;
  readonly pitch?: Measured;
  /** The likeliest first; names are placed in this order. */
  readonly bands: readonly ThreadBand[];
}
