import type { Day } from '../../core/time.ts';

/** Where a part comes from, as far as it matters to whoever fits it. */
export const ORIGINS = ['new', 'used', 'modified', 'made'] as const;
export type Origin = (typeof ORIGINS)[number];

/** A part the build needs, under the name the crew knows it by. */
export interface Part {
  readonly id: number;
  readonly buildId: number;
  readonly name: string;
  /** What else the crew calls it. */
  readonly alsoCalled: readonly string[];
  readonly origin: Origin;
  /** How many the build needs. */
  readonly needed: number;
  /** Lubrication, cooling, fuel …: the crew's own word. */
  readonly system: string | null;
  /** Used once and then renewed: gaskets, crush washers, stretch bolts. */
  readonly singleUse: boolean;
  readonly note: string | null;
  /** The message that holds its photograph or document. */
  readonly link: string | null;
}

/** Where it is, by the first that is true of any of it. */
export type Whereabouts =
  | 'to sort out'
  | 'out for work'
  | 'on order'
  | 'in the box'
  | 'on the shelf'
  | 'fitted'
  | 'sent back'
  | 'not ordered';

/** Some of a part that is on its way here, from a supplier or from work done elsewhere. */
export interface Coming {
  readonly orderId: number;
  readonly quantity: number;
  readonly supplier: string;
  readonly promisedOn: Day;
  /** When it is likely to be here, by what this supplier's orders have done so far; never before it was promised. */
  readonly expectedOn: Day;
  /** By when nine of ten such orders had come. */
  readonly latestOn: Day;
}

/** How many of a part are where, in counts that add up. */
export interface PartStanding {
  readonly part: Part;
  readonly whereabouts: Whereabouts;
  /** Here, good and not fitted. */
  readonly inHand: number;
  readonly fitted: number;
  readonly toSortOut: number;
  readonly sentBack: number;
  readonly coming: readonly Coming[];
  /** Out for work, and due back. */
  readonly out: readonly Coming[];
  /** Needed, and neither here, fitted, coming nor out. */
  readonly missing: number;
}
