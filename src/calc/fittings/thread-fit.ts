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
  const samePitch = Math.abs(m.pitchMm - f.pitchMm) <= SAME_PITCH * f.pitchMm;
  const sameSize = Math.abs(m.basic.majorMm - f.basic.majorMm) <= SAME_SIZE_PITCHES * f.pitchMm;
  const sameAngle = m.formAngleDeg === f.formAngleDeg;
  const start = START_PITCHES[male.tapered || female.tapered ? 'taper' : 'parallel'] * f.pitchMm;
  const enters = m.limits.major.minMm <= f.basic.majorMm + start;
  const catches = m.limits.major.maxMm > f.limits.minor.minMm;
  const fit = (engagement: Engagement, why: string, mixedForm = false): ThreadFit => ({
    engagement,
    why,
    mixedForm,
  });
  if (!samePitch) {
    const why = `${pitchWords(male)} against ${pitchWords(female)}, ${Math.abs(m.pitchMm - f.pitchMm).toFixed(2)} mm out at each turn`;
    return fit(unlike(enters, catches), sameAngle ? why : `${why}, and ${angles(male, female)}`);
  }
  if (male.tapered || female.tapered) {
    if (!sameAngle) return fit(unlike(enters, catches), `same pitch, but ${angles(male, female)}`);
    if (!sameSize) return fit(unlike(enters, catches), sizes(male, female));
    if (!male.tapered)
      return fit('binds', 'a parallel thread touches a taper one at the mouth only, then binds');
    if (female.tapered) return fit('full', 'taper in taper, same pitch and flank angle');
    if (female.system === 'rp') return fit('full', 'a taper male in the parallel female made for it');
    if (female.system === 'npsm')
      return fit('full', 'the free-fitting parallel thread of the same pipe series');
    return fit('jams', 'a taper thread in a parallel one goes in some turns and jams at the gauge plane');
  }
  if (sameSize && sameAngle)
    return fit('full', `the same thread: ${sizeWords(male)}, ${pitchWords(male)}, ${m.formAngleDeg}°`);
  if (sameSize) return fit('full', `same size and pitch, but ${angles(male, female)}`, true);
  if (!enters) return fit('will-not-enter', sizes(male, female));
  return fit(catches ? 'loose' : 'drops-through', sizes(male, female));
}

function unlike(enters: boolean, catches: boolean): Engagement {
  if (!enters) return 'will-not-enter';
  return catches ? 'binds' : 'drops-through';
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
