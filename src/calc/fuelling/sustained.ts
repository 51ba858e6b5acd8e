/** Watches for something that goes on long enough to count, and keeps the worst of it. */
export class Sustained {
  readonly #leastS: number;
  #sinceS = Number.NaN;
  #lastS = Number.NaN;
  #peak = Number.NEGATIVE_INFINITY;
  #peakPlace: Place | undefined;
  #counted = false;
  /** How often it went on long enough, and for how long in all. */
  times = 0;
  seconds = 0;
  worst: { readonly value: number; readonly place: Place } | undefined;

  constructor(leastS: number) {
    this.#leastS = leastS;
  }

  /** @param bad how bad it is, the more the worse; undefined when all is well. */
  see(bad: number | undefined, place: Place): void {
    const { timeS } = place;
    if (bad === undefined || timeS - this.#lastS > 1) {
      this.#sinceS = Number.NaN;
      this.#peak = Number.NEGATIVE_INFINITY;
      this.#counted = false;
    }
    if (bad === undefined) return;
    if (Number.isNaN(this.#sinceS)) this.#sinceS = timeS;
    const lasted = timeS - this.#sinceS;
    if (bad > this.#peak) {
      this.#peak = bad;
      this.#peakPlace = place;
    }
    if (lasted >= this.#leastS) {
      if (!this.#counted) {
        this.times++;
        this.seconds += lasted;
        this.#counted = true;
      } else {
        this.seconds += timeS - this.#lastS;
      }
      if (this.#peakPlace !== undefined && (this.worst === undefined || this.#peak > this.worst.value)) {
        this.worst = { value: this.#peak, place: this.#peakPlace };
      }
    }
    this.#lastS = timeS;
  }
}

/** When and where in a drive. */
export interface Place {
  readonly timeS: number;
  readonly speedRpm: number;
  readonly loadKPa: number;
  /** What ought to have been read there, where that is known at the time. */
  readonly wanted?: number;
}
