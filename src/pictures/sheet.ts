/**
 * The paper, inks and sizes of every picture. A picture carries its own sheet, so it reads the same in a light and in a
 * dark chat.
 *
 * Lengths are sheet units: 360 across, about one point each on a phone held upright. Data inks are from the set of
 * Okabe and Ito (Color Universal Design, 2008), told apart by colour-blind eyes; a second sign (dash, filling, mark)
 * always stands beside the colour.
 */
export const SHEET_WIDTH = 360;
/** Pixels to a sheet unit: 1080 across, sharp on a phone. */
export const PIXELS_PER_UNIT = 3;
export const MARGIN = 12;

export const INK = {
  paper: '#f3efe6',
  rule: '#d8d1c2',
  text: '#1c2225',
  soft: '#545b5f',
  blue: '#0072b2',
  vermilion: '#d55e00',
} as const;

/** Nothing is set smaller than `small`: 39 pixels, 14 on a phone's screen. */
export const TYPE = { title: 18, label: 14, small: 13 } as const;

/** Baseline to baseline, as a share of the size. */
export const LEADING = 1.3;
