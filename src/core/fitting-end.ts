/** How the trade names a kind of end that a fitting standard describes. */
export type FittingSystem =
  | 'jic37'
  | 'an37'
  | 'sae45'
  | 'orb'
  | 'iso6149'
  | 'orfs'
  | 'banjo'
  | 'g'
  | 'r'
  | 'rc'
  | 'rp'
  | 'npt'
  | 'nptf'
  | 'npsm';

/** A seat that has to be said; the others follow from the kind of end. */
export type NamedSeat =
  | 'cone60'
  | 'flare30'
  | 'seat30'
  | 'double-flare'
  | 'bubble-flare'
  | 'face-oring'
  | 'boss-oring'
  | 'washer'
  | 'none'
  | 'fastener';
