import { evenThenNormal, normalDensity } from './normal.ts';
import { PIPE_TAPER } from './pipe.ts';
import { type Reading, type Seat, sigmaOf, type ThreadReadings } from './readings.ts';
import type { CrestBand, Side, Thread } from './thread.ts';

/** What speaks for a thread whichever side of it is in hand. */
export interface Evidence {
  /** Density of the pitch reading, per mm; 1 when there is none. */
  readonly pitch: number;
  /** Taper, flank angle and seat together, as a probability of seeing what was seen. */
  readonly form: number;
}

/** Shares of judgements by eye that are wrong. Common practice, no source. */
const PARALLEL_CALLED_TAPERED = 0.01;
const TAPER_OVERLOOKED = 0.03;
const ANGLE_MISJUDGED = 0.03;
/** Pitch error of a sound thread, as a share of the pitch. */
const PITCH_OF_PART_RATIO = 0.001;
/** Some threads are stretched or read carelessly, by a few per cent; some readings are simply wrong (miscounted). */
const PITCH_SLIPS = [
  { share: 0.03, ratio: 0.025 },
  { share: 0.02, ratio: 0.15 },
] as const;
/** How often a part goes by the name of another thread. */
export const MISNAMED = 1e-4;
/** One in five of the sizes that could be a name (3/4, 22) is a reading off a rule after all. Common practice. */
const MEASURED_NOT_NAMED = 0.2;
/** Density of a size given by name, per mm: that of a crest band a quarter of a millimetre wide. */
const NAMED_DENSITY = 4;

/** How likely pitch, taper, flank angle and seat are if the part has this thread. */
export function evidenceFor(thread: Thread, readings: ThreadReadings, seats: ReadonlySet<Seat>): Evidence {
  return {
    pitch: readings.pitch === undefined ? 1 : pitchDensity(readings.pitch, thread.pitchMm),
    form: taperSeen(thread, readings) * angleSeen(thread, readings) * seatSeen(thread, readings.seat, seats),
  };
}

/** Density per mm of a crest reading over the whole band of a thread, wear, plating and instrument together. */
export function crestDensity(band: CrestBand, reading: Reading): number {
  const sigma = Math.max(sigmaOf(reading.plusMinusMm), 1e-4);
  const core = 1 - band.below.share - band.above.share;
  return (
    core * evenThenNormal(reading.mm, band.minMm, band.maxMm, sigma) +
    tail(band.below.share, reading.mm, band.below.toMm, band.minMm, sigma) +
    tail(band.above.share, reading.mm, band.maxMm, band.above.toMm, sigma)
  );
}

function tail(share: number, x: number, from: number, to: number, sigma: number): number {
  return share === 0 ? 0 : share * evenThenNormal(x, from, to, sigma);
}

/** Density of the diameter reading, per mm, on one side of a thread; 1 when there is none. */
export function diameterDensity(thread: Thread, side: Side, { diameter, named }: ThreadReadings): number {
  const read = diameter === undefined ? 1 : crestDensity(thread.crest[side], diameter);
  if (named === undefined) return read;
  if (!namesThis(thread, named)) {
    if (diameter === undefined) return MISNAMED;
    return read * (named.families === undefined ? MEASURED_NOT_NAMED : MISNAMED);
  }
  return diameter === undefined || named.nominal === undefined ? read : Math.max(read, NAMED_DENSITY);
}

/** Whether the name given is the name of this thread. A pipe size is a name, not a length: 1/8 pipe is 10 mm across. */
export function namesThis(thread: Thread, named: NonNullable<ThreadReadings['named']>): boolean {
  return (
    (named.nominal === undefined || thread.nominal === named.nominal) &&
    (named.families === undefined || named.families.includes(thread.family)) &&
    (named.series === undefined || named.series.includes(thread.series))
  );
}

export function pitchDensity(reading: Reading, pitchMm: number): number {
  const sigma = Math.hypot(sigmaOf(reading.plusMinusMm), PITCH_OF_PART_RATIO * pitchMm);
  const sound = PITCH_SLIPS.reduce((rest, { share }) => rest - share, 1);
  return PITCH_SLIPS.reduce(
    (density, { share, ratio }) =>
      density + share * normalDensity(reading.mm, pitchMm, Math.hypot(sigma, ratio * pitchMm)),
    sound * normalDensity(reading.mm, pitchMm, sigma),
  );
}

function taperSeen(thread: Thread, { taper, taperRate }: ThreadReadings): number {
  let seen = 1;
  if (taper !== undefined) {
    const calledTapered = thread.tapered ? 1 - TAPER_OVERLOOKED : PARALLEL_CALLED_TAPERED;
    seen *= taper === 'tapered' ? calledTapered : 1 - calledTapered;
  }
  if (taperRate !== undefined) {
    const sigma = Math.max(sigmaOf(taperRate.plusMinus), 1e-4);
    const asTaper = normalDensity(taperRate.perMm, PIPE_TAPER, sigma);
    const asParallel = normalDensity(taperRate.perMm, 0, sigma);
    const total = asTaper + asParallel;
    const share = total === 0 ? 0.5 : (thread.tapered ? asTaper : asParallel) / total;
    seen *= PARALLEL_CALLED_TAPERED + (1 - 2 * PARALLEL_CALLED_TAPERED) * share;
  }
  return seen;
}

function angleSeen(thread: Thread, { angleDeg }: ThreadReadings): number {
  if (angleDeg === undefined) return 1;
  return angleDeg === thread.formAngleDeg ? 1 - ANGLE_MISJUDGED : ANGLE_MISJUDGED;
}

/** Chance of seeing a seat on a part with this thread. Common practice, no source; only the ratios matter. */
function seatSeen(thread: Thread, seat: Seat | undefined, seats: ReadonlySet<Seat>): number {
  switch (seat) {
    case undefined:
      return 1;
    case 'cone37':
    case 'cone45':
    case 'face-oring':
      return seats.has(seat) ? 0.25 : 0.004;
    case 'boss-oring':
      return seats.has(seat) ? 0.25 : 0.008;
    case 'washer':
      return thread.tapered ? 0.01 : seats.has(seat) ? 0.3 : 0.1;
    case 'none':
      return thread.tapered ? 0.6 : seats.size === 0 ? 0.5 : 0.25;
  }
}
