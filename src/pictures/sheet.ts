/**
 * The paper, inks and sizes of every picture. A picture carries its own sheet, so it reads the same in a light and in a
 * dark chat.
 *
 * Lengths are sheet units: 360 across, about one point each on a phone held upright. Data inks are from the set of
 * Okabe and Ito (Color Universal Design, 2008), told apart by colour-blind eyes; a second sign (dash, filling, mark)
 * always stands beside the colour.
 */
export const SHEET_WIDTH = 360;
/** Pixels to a sheet unit: 900 across, sharp on a phone; a third more would take half as long again to pack. */
export const PIXELS_PER_UNIT = 2.5;
export const MARGIN = 12;

export const INK = {
  paper: '#f3efe6',
  rule: '#d8d1c2',
  text: '#1c2225',
  soft: '#545b5f',
  blue: '#0072b2',
  vermilion: '#d55e00',
  /** The same, dark enough for words. */
  vermilionText: '#9c4400',
} as const;

/** Nothing is set smaller than `small`: 32 pixels, 14 points on a phone's screen. */
export const TYPE = { title: 18, label: 14, small: 13 } as const;

/** Baseline to baseline, as a share of the size. */
export const LEADING = 1.3;
