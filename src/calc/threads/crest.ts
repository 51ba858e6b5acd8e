import type { CrestBand, Range } from './thread.ts';

/** Of the threads in service, this share is rubbed below the published size, by up to this much. Common practice. */
const WORN_SHARE = 0.05;
const WEAR_MM = 0.1;

/**
 * The band of a parallel male thread's major diameter. Plating may take a coated thread up to the basic size
 * (ISO 965-1 and ASME B1.1 allow 6g and 2A that much), so the range reaches it; worn crests lie below.
 */
export function maleCrest(major: Range, basicMajorMm: number): CrestBand {
  return {
    minMm: major.minMm,
    maxMm: Math.max(major.maxMm, basicMajorMm),
    below: { toMm: major.minMm - WEAR_MM, share: WORN_SHARE },
    above: { toMm: Math.max(major.maxMm, basicMajorMm), share: 0 },
  };
}

/** The band of a parallel female thread's minor diameter: wear opens it, plating must not close it past the basic. */
export function femaleCrest(minor: Range): CrestBand {
  return {
    minMm: minor.minMm,
    maxMm: minor.maxMm,
    below: { toMm: minor.minMm, share: 0 },
    above: { toMm: minor.maxMm + WEAR_MM, share: WORN_SHARE },
  };
}
