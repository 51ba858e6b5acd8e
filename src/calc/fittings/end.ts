import type { FittingSystem, NamedSeat } from '../../core/fitting-end.ts';
import type { Side, Thread } from '../threads/thread.ts';

/** A kind of end; `plain` is a thread with no fitting standard behind it. */
export type System = FittingSystem | 'plain';

/** Where a joint is made tight. */
export type EndSeat = NamedSeat | 'cone37' | 'cone45' | 'taper';

/** A flat sealing ring, mm. */
export interface Ring {
  readonly boreMm: number;
  readonly outsideMm: number;
  readonly thicknessMm: number;
}

/** One half of a joint: its thread, which side of it, and where it seals. */
export interface End {
  /** Its name, which reads back as itself: `JIC -6 male`, `G 1/4 female`, `M14x1.5 male flat face`. */
  readonly id: string;
  readonly system: System;
  readonly thread: Thread;
  /** The thread itself runs to a taper; an Rp or NPSM thread is the parallel one of a taper series. */
  readonly tapered: boolean;
  readonly gender: Side;
  readonly seat: EndSeat;
  /** As in the fitting tables: `JIC -6`; undefined for a thread of no fitting standard. */
  readonly fittingId: string | undefined;
  /** Sixteenths of an inch of the tube, or of the nominal pipe bore. */
  readonly dash: number | undefined;
  readonly standard: string;
  /** The seat meant when none was said; others must be named. */
  readonly usual: boolean;
  readonly oRing: { readonly name: string; readonly source: readonly string[] } | undefined;
  readonly rings: readonly Ring[];
  readonly ringSource: readonly string[];
  /** Washers said to be fitted; undefined when nobody said. */
  readonly washersFitted?: number;
}

/** What a seat is, to go after "seals on". */
export const SEAT_WORDS: Readonly<Record<EndSeat, string>> = {
  cone37: 'a 37° cone',
  cone45: 'a 45° cone',
  cone60: 'a 60° cone',
  flare30: 'a 30° flare',
  seat30: 'a 30° seat',
  'double-flare': 'a double flare',
  'bubble-flare': 'a bubble flare',
  'face-oring': 'an O-ring in its flat face',
  'boss-oring': 'an O-ring in the chamfered mouth of the port',
  washer: 'a washer on a flat face',
  taper: 'the taper of the thread, with sealant',
  none: 'nothing',
  fastener: 'nothing, being a fastener',
};

/** What is written after the thread in a name, for the seats that are not the usual one. */
export const SEAT_NAMES: Readonly<Partial<Record<EndSeat, string>>> = {
  cone60: '60° cone',
  flare30: '30° flare',
  seat30: '30° seat',
  'double-flare': 'double flare',
  'bubble-flare': 'bubble flare',
  washer: 'flat face',
  none: 'bare',
};
