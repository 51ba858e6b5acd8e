import type { End } from './end.ts';
import { sealFit } from './seal-fit.ts';
import { type Engagement, threadFit } from './thread-fit.ts';

/** Whether one end goes on another, and whether it seals. */
export interface Mating {
  readonly mates: 'yes' | 'no';
  /** `n/a` for fasteners, which seal nothing. */
  readonly seals: 'yes' | 'no' | 'n/a';
  readonly engagement: Engagement | 'same-side';
  readonly why: readonly string[];
  /** What happens to whoever believes the spanner. */
  readonly danger: string | undefined;
  readonly sources: readonly string[];
}

/**
 * Does one end go on the other, and does it seal? The order of the two does not matter.
 *
 * Judged from the threads' dimensions and the seats, as in docs/decisions/0007-what-mates.md; the rules name their sources.
 * Not for: pressure ratings, materials, or whether the joint suits the fluid.
 */
export function mate(a: End, b: End): Mating {
  if (a.gender === b.gender) {
    const both = a.gender === 'male' ? 'both are male' : 'both are female';
    return refused('same-side', [`${both}: they need something between them`], undefined, []);
  }
  const [male, female] = a.gender === 'male' ? [a, b] : [b, a];
  const fit = threadFit(male, female);
  if (fit.engagement !== 'full' && fit.engagement !== 'jams') {
    return refused(fit.engagement, [fit.why], DANGER[fit.engagement], ['COMMON'], isFastener(a, b));
  }
  if (isFastener(a, b)) {
    return {
      mates: 'yes',
      seals: 'n/a',
      engagement: fit.engagement,
      why: [fit.why],
      danger: fit.mixedForm ? MIXED_FORM : undefined,
      sources: ['COMMON'],
    };
  }
  if (fit.engagement === 'jams') {
    return {
      mates: 'yes',
      seals: 'no',
      engagement: 'jams',
      why: [fit.why, 'a G thread is not meant to hold pressure, and its bore is not sized for it'],
      danger: 'It feels tight and may hold for a while. A wedged taper also splits a thin aluminium boss.',
      sources: ['BS2779', 'WIKIBSP', 'COMMON'],
    };
  }
  const seal = sealFit(male, female);
  const seals = seal.seals && !fit.mixedForm;
  return {
    mates: 'yes',
    seals: seals ? 'yes' : 'no',
    engagement: 'full',
    why: [fit.why, seal.why, ...aside(male, female)],
    danger: fit.mixedForm ? MIXED_FORM : seals ? undefined : LEAKS,
    sources: seal.sources,
  };
}

const isFastener = (a: End, b: End): boolean => a.seat === 'fastener' || b.seat === 'fastener';

function refused(
  engagement: Mating['engagement'],
  why: readonly string[],
  danger: string | undefined,
  sources: readonly string[],
  fastener = false,
): Mating {
  return { mates: 'no', seals: fastener ? 'n/a' : 'no', engagement, why, danger, sources };
}

const LEAKS = 'It screws together and feels tight, and it leaks. More torque does not cure it.';
const MIXED_FORM = 'The flanks touch along a line: do not load it, and do not trust it to seal.';

const DANGER: Readonly<Record<Exclude<Engagement, 'full' | 'jams'>, string | undefined>> = {
  binds:
    'It may start by hand and then tightens as if it were home. Forced, it cross-threads, strips or cracks the port.',
  loose: 'It holds by the tips of the threads only and can blow out under pressure.',
  'will-not-enter': 'Forced, it cross-threads.',
  'drops-through': undefined,
};

/** What is to be known of a joint that is tight all the same. */
function aside(male: End, female: End): readonly string[] {
  const systems = new Set([male.system, female.system]);
  if (systems.has('an37') && systems.has('jic37')) {
    return [
      'AN has the closer thread of rounded root; the two may not be mixed where a design calls for AN, as on aircraft',
    ];
  }
  if (systems.has('npt') && systems.has('nptf'))
    return ['only NPTF on both sides is made to seal without sealant'];
  return [];
}
