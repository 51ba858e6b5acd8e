import type { JsonObject } from '../../core/json.ts';
import { sourceWords } from '../threads/facts.ts';
import type { End, Ring } from './end.ts';
import { mate } from './mate.ts';
import { washersNeeded } from './seal-fit.ts';

/** Something that goes into a joint beside its two ends, new each time. */
export interface Need {
  readonly what: 'O-ring' | 'sealing washer' | 'sealant';
  readonly count: number;
  /** As it is ordered; undefined when no table has it. Several are alternatives. */
  readonly sizes: readonly string[];
  readonly rings: readonly Ring[];
  readonly source: readonly string[];
}

/** What a joint of these two ends needs to seal; nothing for metal on metal, and for a joint that does not seal. */
export function needsOf(a: End, b: End): readonly Need[] {
  if (mate(a, b).seals !== 'yes') return [];
  const [male, female] = a.gender === 'male' ? [a, b] : [b, a];
  return [needOf(male.seat === 'seat30' ? female : male)].flatMap((need) => need ?? []);
}

/** What one end wants in its joint; undefined for cones and flares, which seal metal to metal. */
export function needOf(end: End): Need | undefined {
  switch (end.seat) {
    case 'boss-oring':
    case 'face-oring': {
      const { oRing } = end;
      return {
        what: 'O-ring',
        count: 1,
        sizes: oRing === undefined ? [] : [oRing.name],
        rings: [],
        source: oRing?.source ?? [],
      };
    }
    case 'washer':
      return {
        what: 'sealing washer',
        count: washersNeeded(end),
        sizes: end.rings.map(ringSize),
        rings: end.rings,
        source: end.ringSource,
      };
    case 'taper':
      return { what: 'sealant', count: 1, sizes: [], rings: [], source: ['COMMON'] };
    case 'cone37':
    case 'cone45':
    case 'cone60':
    case 'flare30':
    case 'seat30':
    case 'double-flare':
    case 'bubble-flare':
    case 'none':
    case 'fastener':
      return undefined;
  }
}

/** Bore × outside × thickness. */
export const ringSize = ({ boreMm, outsideMm, thicknessMm }: Ring): string =>
  `${boreMm} × ${outsideMm} × ${thicknessMm} mm`;

/** "2 sealing washers 14 × 18 × 1.5 mm or 14 × 20 × 1.5 mm (from memory)". */
export function sayNeed({ what, count, sizes, source }: Need): string {
  if (what === 'sealant') return 'sealant that stands the fluid, on the male thread, clear of the first turn';
  const named = count === 1 ? what : `${count} ${what}s`;
  const size = sizes.length === 0 ? 'to suit: its size is in no table here' : sizes.join(' or ');
  return `${named} ${size}${sizes.length === 0 ? '' : ` (${sourceWords(source)})`}`;
}

/** As it goes into the line of an order: "2 sealing washers 14 × 18 × 1.5 mm". */
export function orderNeed({ what, count, sizes }: Need): string | undefined {
  if (what === 'sealant') return undefined;
  const [first] = sizes;
  return [count === 1 ? what : `${count} ${what}s`, ...(first === undefined ? [] : [first])].join(' ');
}

export function needData({ what, count, sizes, rings, source }: Need): JsonObject {
  return {
    what,
    count,
    sizes,
    rings: rings.map(({ boreMm, outsideMm, thicknessMm }) => ({
      boreMm,
      outsideMm,
      thicknessMm,
    })),
    source,
  };
}

export const NEW_EACH_TIME =
  'A joint that was opened gets new washers and O-rings, on seats checked clean, bare and unmarked.';
