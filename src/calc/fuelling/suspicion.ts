import type { Axes } from './axes.ts';
import type { Fit } from './fit.ts';
import type { Sorted } from './readings.ts';

/** Something that reads lean without the fuel table being wrong; what it touches is left alone. */
export interface Suspicion {
  readonly kind: 'air-leak' | 'misfire';
  /** Cells it touches, [load][speed] one after the other. */
  readonly cells: readonly number[];
  /** Where it shows most. */
  readonly loadKPa: number;
  readonly speedRpm: number;
  /** How lean it reads there, as a share. */
  readonly leanRatio: number;
}

export interface SuspicionQuestion {
  readonly axes: Axes;
  readonly sorted: Sorted;
  readonly fit: Fit;
}
