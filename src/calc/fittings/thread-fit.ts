import type { End } from './end.ts';

/**
 * How a male thread goes into a female one. `full`: as far as it should; `jams`: at the gauge plane of a taper;
 * `binds`: starts, then tightens up; `loose`: on the crests only.
 */
export type Engagement = 'full' | 'jams' | 'binds' | 'loose' | 'will-not-enter' | 'drops-through';

export interface ThreadFit {
  readonly engagement: Engagement;
  readonly why: string;
  /** Same size and pitch, but 55° flanks against 60°. */
  readonly mixedForm: boolean;
}

/** Pitches nearer than this are the same one; the closest that differ (19 and 18 tpi) are 5 % apart. */
const SAME_PITCH = 0.002;
/** Diameters within a twentieth of a pitch belong to one size; 7/8-14 and G 5/8, the closest that do not, are 0.4 apart. */
const SAME_SIZE_PITCHES = 0.05;

/** How much too big a male may be and still start, in pitches. Common practice: a taper end is chamfered and begins small. */
const START_PITCHES = { parallel: 0.1, taper: 0.3 } as const;

/**
 * Whether the threads of two ends go together, from diameter, pitch, flank angle and taper alone.
 *
 * A pair is one thread when pitch, size, flank angle and taper agree. Otherwise the male enters when its smallest major
 * diameter is not much over the female's basic one, and catches when its largest is over the female's smallest bore.
 * Sources: the threads' own tables; that a taper male is right in a taper or Rp female only, and jams in a G thread, from
 * ISO 7-1 and BS 2779 (keys WIKIBSP, BS2779). Not for: worn, stretched or coated-over threads.
 */
export function threadFit(male: End, female: End): ThreadFit {
  const [m, f] = [male.thread, female.thread];
  const outByMm = Math.abs(m.pitchMm - f.pitchMm);
  if (outByMm > SAME_PITCH * f.pitchMm) {
    const why = `${pitchWords(male)} against ${pitchWords(female)}, ${outByMm.toFixed(2)} mm out at each turn`;
    return engage(
      unlike(male, female),
      sameAngle(male, female) ? why : `${why}, and ${angles(male, female)}`,
    );
  }
  return male.tapered || female.tapered ? taperFit(male, female) : parallelFit(male, female);
}

/** Threads of one pitch, at least one of them tapered. */
function taperFit(male: End, female: End): ThreadFit {
  if (!sameAngle(male, female))
    return engage(unlike(male, female), `same pitch, but ${angles(male, female)}`);
  if (!sameSize(male, female)) return engage(unlike(male, female), sizes(male, female));
  if (!male.tapered)
    return engage('binds', 'a parallel thread touches a taper one at the mouth only, then binds');
  if (female.tapered) return engage('full', 'taper in taper, same pitch and flank angle');
  if (female.system === 'rp') return engage('full', 'a taper male in the parallel female made for it');
  if (female.system === 'npsm')
    return engage('full', 'the free-fitting parallel thread of the same pipe series');
  return engage('jams', 'a taper thread in a parallel one goes in some turns and jams at the gauge plane');
}

/** Parallel threads of one pitch. */
function parallelFit(male: End, female: End): ThreadFit {
  const { formAngleDeg } = male.thread;
  if (sameSize(male, female)) {
    return sameAngle(male, female)
      ? engage('full', `the same thread: ${sizeWords(male)}, ${pitchWords(male)}, ${formAngleDeg}°`)
      : { ...engage('full', `same size and pitch, but ${angles(male, female)}`), mixedForm: true };
  }
  const engagement = unlike(male, female);
  return engage(engagement === 'binds' ? 'loose' : engagement, sizes(male, female));
}

const engage = (engagement: Engagement, why: string): ThreadFit => ({ engagement, why, mixedForm: false });

const sameAngle = (male: End, female: End): boolean =>
  male.thread.formAngleDeg === female.thread.formAngleDeg;

const sameSize = ({ thread: m }: End, { thread: f }: End): boolean =>
  Math.abs(m.basic.majorMm - f.basic.majorMm) <= SAME_SIZE_PITCHES * f.pitchMm;

/** How far threads that are not one get. */
function unlike(male: End, female: End): 'binds' | 'will-not-enter' | 'drops-through' {
  const [m, f] = [male.thread, female.thread];
  const startMm = START_PITCHES[male.tapered || female.tapered ? 'taper' : 'parallel'] * f.pitchMm;
  if (m.limits.major.minMm > f.basic.majorMm + startMm) return 'will-not-enter';
  return m.limits.major.maxMm > f.limits.minor.minMm ? 'binds' : 'drops-through';
}

function pitchWords({ thread }: End): string {
  return thread.tpi === undefined ? `${thread.pitchMm} mm pitch` : `${thread.tpi} tpi`;
}

const sizeWords = ({ thread }: End): string => `${thread.basic.majorMm.toFixed(2)} mm`;

function sizes(male: End, female: End): string {
  return `${sizeWords(male)} across against ${sizeWords(female)}`;
}

function angles(male: End, female: End): string {
  return `${male.thread.formAngleDeg}° flanks against ${female.thread.formAngleDeg}°`;
}
