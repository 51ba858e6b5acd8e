import type { Side, ThreadFamily } from './thread.ts';

/** What was seen where the joint seals. */
export type Seat = 'cone37' | 'cone45' | 'face-oring' | 'boss-oring' | 'washer' | 'none';

/** A number read off an instrument: out by no more than `plusMinus` 95 times in 100 (two standard deviations). */
export interface Reading {
  readonly mm: number;
  readonly plusMinusMm: number;
}

/** A name read off the part or a drawing: `M10`, `1/8 BSP`, the `3/8` of an inch fraction, or only a family. */
export interface NamedSize {
  readonly nominal?: string;
  /** Families the name can mean; every family when absent. */
  readonly families?: readonly ThreadFamily[];
  readonly series?: readonly string[];
}

/** Everything known about the thread in hand. */
export interface ThreadReadings {
  /** Over the crests of a male thread, or across the bore of a female one. */
  readonly diameter?: Reading;
  readonly named?: NamedSize;
  readonly pitch?: Reading;
  readonly side?: Side;
  readonly taper?: 'tapered' | 'parallel';
  /** Change of diameter per unit of length from two diameters and the distance between them, with its ±. */
  readonly taperRate?: { readonly perMm: number; readonly plusMinus: number };
  readonly angleDeg?: 55 | 60;
  readonly seat?: Seat;
}

/** Standard deviation meant by a ± that holds 95 times in 100 (JCGM 100, coverage factor 2). */
export function sigmaOf(plusMinus: number): number {
  return plusMinus / 2;
}
