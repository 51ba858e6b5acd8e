import { diameterDensity, type Evidence, evidenceFor, MISNAMED, namesThis } from './evidence.ts';
import type { Reading, Seat, ThreadReadings } from './readings.ts';
import type { Side, Thread } from './thread.ts';

/** A thread that may be the one in hand. */
export interface Suspect {
  readonly thread: Thread;
  /** How often it turns up, relative to an ordinary thread (1). */
  readonly weight: number;
  /** Seats of the fittings that use it. */
  readonly seats: ReadonlySet<Seat>;
}

export interface Candidate {
  readonly thread: Thread;
  /** The side that explains the diameter best; the one given, when it was. */
  readonly side: Side;
  readonly probability: number;
  /** Whether the readings leave it standing beside the best: they cannot rule out one against the other. */
  readonly stands: boolean;
  readonly seats: ReadonlySet<Seat>;
}

export interface Identification {
  /** Best first: all that stand, and any other with at least a 1 % chance. */
  readonly candidates: readonly Candidate[];
  /** Probability that it is none of the candidates; with theirs it makes one. */
  readonly noneProbability: number;
  /** The part of that which a thread of no table takes. */
  readonly untabledProbability: number;
  /** Whether two or more of the candidates stand. */
  readonly ambiguous: boolean;
}

/** Share of parts whose thread is in no table. Common practice, no source. */
const NONE_PRIOR = 0.02;
/** Without a word on it, three diameters in four are taken over a male thread. Common practice, no source. */
const MALE_SHARE = 0.75;
/** Odds below which evidence does not rule a candidate out: 10 to 1 is called strong (Jeffreys, key JEFFREYS). */
const STRONG_ODDS = 10;
const WORTH_SHOWING = 0.01;
const MOST_SHOWN = 20;

interface Weighed extends Suspect {
  readonly side: Side;
  readonly evidence: Evidence;
  readonly likelihood: number;
  readonly consistent: boolean;
}

/**
 * Which thread the readings mean, as the posterior over every suspect and "none of these".
 *
 * P(thread | readings) ∝ weight · ∫ band ⊗ instrument · pitch ⊗ instrument · P(taper, angle, seat). Closed form, no
 * sampling. "None" is a thread of any size and pitch, evenly in their logarithms over 2–70 mm and 0.25–6.5 mm.
 *
 * Two candidates are called inseparable when the evidence (without the weights) favours neither by 10 to 1, or when
 * both lie within the stated uncertainty of the readings. A judgement of what is common never separates them.
 *
 * Sources: published limits of each thread (its own `sources`); JCGM 100 for the reading (key GUM). Assumes normal
 * reading errors, crests spread evenly over the published band, and one part in twenty worn.
 */
export function identifyThread(suspects: readonly Suspect[], readings: ThreadReadings): Identification {
  const weighed = suspects.map((suspect) => weigh(suspect, readings));
  const totalWeight = weighed.reduce((sum, { weight }) => sum + weight, 0);
  const score = ({ weight, likelihood }: Weighed) => ((1 - NONE_PRIOR) * weight * likelihood) / totalWeight;
  const noneScore = NONE_PRIOR * noneDensity(readings);
  const total = weighed.reduce((sum, each) => sum + score(each), noneScore);

  const bestLikelihood = Math.max(...weighed.map(({ likelihood }) => likelihood));
  const bestForm = Math.max(
    ...weighed.filter(({ consistent }) => consistent).map(({ evidence }) => evidence.form),
  );
  const candidates = weighed
    .map((each) => {
      const probability = score(each) / total;
      const stands =
        probability > noneScore / total / STRONG_ODDS / 100 &&
        (each.likelihood * STRONG_ODDS > bestLikelihood ||
          (each.consistent && each.evidence.form * STRONG_ODDS > bestForm));
      return { thread: each.thread, side: each.side, seats: each.seats, probability, stands };
    })
    .filter(({ stands, probability }) => stands || probability >= WORTH_SHOWING)
    .sort((a, b) => b.probability - a.probability || (a.thread.id < b.thread.id ? -1 : 1))
    .slice(0, MOST_SHOWN);
  const shown = candidates.reduce((sum, { probability }) => sum + probability, 0);
  return {
    candidates,
    noneProbability: Math.max(0, 1 - shown),
    untabledProbability: noneScore / total,
    ambiguous: candidates.filter(({ stands }) => stands).length > 1,
  };
}

function weigh(suspect: Suspect, readings: ThreadReadings): Weighed {
  const evidence = evidenceFor(suspect.thread, readings, suspect.seats);
  const onSide = (side: Side, share: number): Weighed => ({
    ...suspect,
    side,
    evidence,
    likelihood: share * diameterDensity(suspect.thread, side, readings) * evidence.pitch * evidence.form,
    consistent: isConsistent(suspect.thread, side, readings),
  });
  if (readings.side !== undefined) return onSide(readings.side, 1);
  const male = onSide('male', MALE_SHARE);
  const female = onSide('female', 1 - MALE_SHARE);
  return {
    ...(male.likelihood >= female.likelihood ? male : female),
    likelihood: male.likelihood + female.likelihood,
    consistent: male.consistent || female.consistent,
  };
}

/**
 * Whether size and pitch both agree with the published figures within what the readings could be out by. A size given by
 * name agrees with the threads of that name only.
 */
function isConsistent(thread: Thread, side: Side, { diameter, named, pitch }: ThreadReadings): boolean {
  const { minMm, maxMm } = thread.crest[side];
  const nameAgrees = named === undefined || namesThis(thread, named);
  const sizeAgrees =
    named?.nominal !== undefined || (diameter !== undefined && within(diameter, minMm, maxMm));
  return nameAgrees && sizeAgrees && (pitch === undefined || within(pitch, thread.pitchMm, thread.pitchMm));
}

function within(reading: Reading, minMm: number, maxMm: number): boolean {
  return reading.mm >= minMm - reading.plusMinusMm && reading.mm <= maxMm + reading.plusMinusMm;
}

/** Chance of seeing any one seat, taper or flank angle on a thread of no table. Common practice, no source. */
const NONE_SEAT = 0.05;
const NONE_EITHER = 0.5;

/** Density of the readings for a thread of no table: even in the logarithms of size and pitch. */
function noneDensity({ diameter, named, pitch, seat, taper, angleDeg }: ThreadReadings): number {
  const size = diameter === undefined ? 1 : 1 / (diameter.mm * Math.log(70 / 2));
  const name = named === undefined || (named.families === undefined && diameter !== undefined) ? 1 : MISNAMED;
  const step = pitch === undefined ? 1 : 1 / (pitch.mm * Math.log(6.5 / 0.25));
  const form = [taper, angleDeg].reduce(
    (product, seen) => (seen === undefined ? product : product * NONE_EITHER),
    1,
  );
  return size * name * step * form * (seat === undefined ? 1 : NONE_SEAT);
}
