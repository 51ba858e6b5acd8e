import type { Candidate, Identification, Suspect } from './identify.ts';
import type { Reading, ThreadReadings } from './readings.ts';
import type { Side, Thread } from './thread.ts';

/** A thread worth showing beside the reading. */
export interface Shown {
  readonly thread: Thread;
  readonly side: Side;
  /** Whether the readings leave it standing. */
  readonly stands: boolean;
}

/** As many as can be told apart on a small screen. */
const MOST_SHOWN = 8;
/** Fewer than this are filled up with near misses, so that one sees what was ruled out. */
const ENOUGH = 5;
/** One step away: so much of the diameter, or so much of the pitch. */
const STEP = { diameter: 0.02, pitch: 0.1 };
const FURTHEST = 2.5;
/** A rare thread counts as near only when it is nearer. */
const COMMON = 1;

/**
 * The threads to show beside a measured diameter: those that stand, then the next likeliest, then the nearest of the
 * common ones that were ruled out. Best first.
 */
export function threadsToShow(
  found: Identification,
  suspects: readonly Suspect[],
  diameter: Reading,
  { pitch, side }: ThreadReadings,
): readonly Shown[] {
  const standing = found.candidates.filter(({ stands }) => stands).slice(0, MOST_SHOWN);
  const likely = [...standing, ...found.candidates.filter(({ stands }) => !stands)];
  const listed = new Set(likely.map(({ thread }) => thread.id));
  const sides: readonly Side[] = side === undefined ? sidesOf(standing) : [side];
  const near = suspects
    .filter(({ thread, weight }) => !listed.has(thread.id) && weight >= COMMON)
    .flatMap(({ thread }) => sides.map((each) => ({ thread, side: each, stands: false })))
    .map((shown) => ({ shown, away: stepsAway(shown, diameter, pitch) }))
    .filter(({ away }) => away <= FURTHEST)
    .sort((a, b) => a.away - b.away || (a.shown.thread.id < b.shown.thread.id ? -1 : 1));
  const more = Math.max(0, ENOUGH - standing.length);
  return [
    ...standing,
    ...[...likely.slice(standing.length), ...near.map(({ shown }) => shown)].slice(0, more),
  ];
}

function sidesOf(standing: readonly Candidate[]): readonly Side[] {
  const sides = [...new Set(standing.map(({ side }) => side))];
  return sides.length === 0 ? ['male'] : sides;
}

function stepsAway({ thread, side }: Shown, diameter: Reading, pitch: Reading | undefined): number {
  const { minMm, maxMm } = crestLimits(thread, side);
  const beside = Math.max(0, minMm - diameter.mm, diameter.mm - maxMm);
  const off = pitch === undefined ? 0 : Math.abs(thread.pitchMm - pitch.mm) / pitch.mm;
  return Math.hypot(beside / diameter.mm / STEP.diameter, off / STEP.pitch);
}

/** Published limits of the diameter a caliper touches. */
export function crestLimits({ limits }: Thread, side: Side): Thread['limits']['major'] {
  return side === 'male' ? limits.major : limits.minor;
}
