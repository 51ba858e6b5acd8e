import { type End, type EndSeat, SEAT_WORDS } from './end.ts';

export interface SealFit {
  readonly seals: boolean;
  readonly why: string;
  /** Keys into docs/sources.md. */
  readonly sources: readonly string[];
}

/** Washers a joint needs: a banjo eye has two faces, everything else one. */
export const washersNeeded = (male: End): number => (male.system === 'banjo' ? 2 : 1);

/**
 * Whether two ends whose threads go together also seal: both must seal in the same place, and have what it takes.
 *
 * Sources in each rule; that nothing else seals is common practice, no source.
 */
export function sealFit(male: End, female: End): SealFit {
  if (onTaper(male) && onTaper(female)) {
    return {
      seals: true,
      why: 'the tapered flanks wedge tight, with sealant on them',
      sources: ['WIKIBSP', 'ALFAG'],
    };
  }
  if (male.seat === female.seat) return alike(male, female);
  const special = UNLIKE.find(([a, b]) => a === male.seat && b === female.seat);
  if (special !== undefined) return { seals: false, why: special[2], sources: special[3] };
  if (male.seat === 'none' || female.seat === 'none') {
    return {
      seals: false,
      why: 'nothing seals it: the thread only clamps and is not tight by itself',
      sources: ['BS2779'],
    };
  }
  return {
    seals: false,
    why: `${male.id} seals on ${SEAT_WORDS[male.seat]}, ${female.id} on ${SEAT_WORDS[female.seat]}: neither finds what it needs`,
    sources: ['COMMON'],
  };
}

/** A pipe thread that also carries a 30° chamfer still seals on its taper. */
const onTaper = ({ seat, tapered }: End): boolean => seat === 'taper' || (seat === 'seat30' && tapered);

function alike(male: End, female: End): SealFit {
  const { seat } = male;
  if (seat === 'washer') return washerFit(male, female);
  if (seat === 'none' || seat === 'fastener') {
    return {
      seals: false,
      why: 'the thread only clamps: neither end has a washer, an O-ring or a seat',
      sources: ['BS2779'],
    };
  }
  return { seals: true, ...ALIKE[seat] };
}

function washerFit(male: End, female: End): SealFit {
  const needed = washersNeeded(male);
  const fitted = male.washersFitted ?? female.washersFitted ?? needed;
  if (fitted < needed) {
    return {
      seals: false,
      why: 'a banjo eye needs a washer on both sides: one side is left open',
      sources: ['COMMON'],
    };
  }
  const why =
    needed === 2
      ? 'a washer on each side of the eye seals on flat faces'
      : 'the washer seals on the faces, the thread only clamps';
  return { seals: true, why, sources: ['BS2779', 'ISO1179P', 'COMMON'] };
}

const ALIKE: Readonly<
  Record<
    Exclude<EndSeat, 'none' | 'fastener' | 'washer'>,
    { readonly why: string; readonly sources: readonly string[] }
  >
> = {
  cone37: { why: '37° cone on 37° cone, metal to metal', sources: ['PERKINS', 'EXACT'] },
  cone45: { why: '45° cone on 45° cone, metal to metal', sources: ['J512NOTE', 'EXACT'] },
  cone60: { why: '60° cone on 60° cone', sources: ['MEM'] },
  flare30: { why: '30° flare on 30° cone', sources: ['RYCO'] },
  seat30: { why: 'the 30° seats seal, the threads only clamp', sources: ['ALFAG'] },
  'double-flare': { why: 'the double flare seats in the port made for it', sources: ['COMMON'] },
  'bubble-flare': { why: 'the bubble flare seats in the port made for it', sources: ['COMMON'] },
  'face-oring': { why: 'the O-ring in the face is pressed flat', sources: ['J1453', 'ORFSLIST'] },
  'boss-oring': { why: 'the O-ring is pressed into the mouth of the port', sources: ['J1926P', 'J1926-4'] },
  taper: {
    why: 'the tapered flanks wedge tight, with sealant on them',
    sources: ['WIKIBSP', 'ALFAG'],
  },
};

type Unlike = readonly [male: EndSeat, female: EndSeat, why: string, sources: readonly string[]];

const bothWays = (a: EndSeat, b: EndSeat, why: string, sources: readonly string[]): readonly Unlike[] => [
  [a, b, why, sources],
  [b, a, why, sources],
];

/** Pairs of seats that are mistaken for each other, with what goes wrong. */
const UNLIKE: readonly Unlike[] = [
  ...bothWays('cone37', 'cone45', 'the cones differ, 37° against 45°: they touch along a line only', [
    'J512NOTE',
    'EXACT',
  ]),
  ...bothWays('cone60', 'flare30', 'the cones face opposite ways', ['RYCO']),
  ...bothWays('double-flare', 'bubble-flare', 'the two flares have opposite shapes', ['COMMON']),
  ...bothWays('face-oring', 'cone37', 'a flat face against a cone', ['ORFSLIST', 'PERKINS']),
  [
    'cone37',
    'boss-oring',
    'there is no O-ring, and the cone touches nothing in the port',
    ['J1926P', 'PERKINS', 'COMMON'],
  ],
  ['boss-oring', 'cone37', 'the male has no cone for the swivel to sit on', ['J1926P', 'PERKINS', 'COMMON']],
  [
    'boss-oring',
    'washer',
    'the O-ring needs the chamfered mouth of its own port; on a flat face it is cut or squeezed out',
    ['ISO6149C', 'COMMON'],
  ],
  [
    'washer',
    'boss-oring',
    'the washer may not find enough flat outside the chamfer of the port: not to be relied on',
    ['COMMON'],
  ],
  ['washer', 'double-flare', 'there is no flat face in the port for the washer', ['COMMON']],
  ['washer', 'bubble-flare', 'there is no flat face in the port for the washer', ['COMMON']],
];
