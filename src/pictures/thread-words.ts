import type { Measured, ThreadBand, ThreadPictureData } from './thread-data.ts';

/** What the platform takes as a picture's description. */
const LONGEST_ALT = 1024;
/** Between the names of twins. */
const OR = ' or ';
/** Limits that differ by less look the same on any caliper, mm. */
const SAME_MM = 0.005;

/** Threads of the very same band become one, with both names on it. */
export function joinTwins(bands: readonly ThreadBand[]): readonly ThreadBand[] {
  const joined: ThreadBand[] = [];
  for (const band of bands) {
    const at = joined.findIndex((other) => areTwins(other, band));
    const twin = joined[at];
    if (twin === undefined) {
      joined.push(band);
    } else {
      const notes = [twin.note, band.note].filter((note) => note !== undefined);
      joined[at] = {
        ...twin,
        name: `${twin.name}${OR}${band.name}`,
        ...(notes.length === 0 ? {} : { note: [...new Set(notes)].join(', ') }),
      };
    }
  }
  return joined;
}

function areTwins(a: ThreadBand, b: ThreadBand): boolean {
  return (
    a.side === b.side &&
    a.tapered === b.tapered &&
    a.fits === b.fits &&
    Math.abs(a.fromMm - b.fromMm) < SAME_MM &&
    Math.abs(a.toMm - b.toMm) < SAME_MM &&
    Math.abs(a.pitchMm - b.pitchMm) < 1e-4
  );
}

/** A space at which no line is broken. */
const UNBROKEN = '\u00a0';

const unbroken = (words: string): string => words.replaceAll(' ', UNBROKEN);

const within = ({ mm, plusMinusMm }: Measured): string =>
  unbroken(`${mm.toFixed(2)} ± ${plusMinusMm.toFixed(2)} mm`);

/** What was measured, and what it could be out by. */
export function readingLine({ named, diameter, pitch }: ThreadPictureData): string {
  const size =
    named === undefined ? `Measured ${within(diameter)}` : `Named ${named}, taken as ${within(diameter)}`;
  return pitch === undefined ? `${size}, pitch not known` : `${size}, pitch ${within(pitch)}`;
}

/** Which crest the diameters are over. */
export function diameterName(bands: readonly ThreadBand[]): string {
  if (bands.length > 0 && bands.every(({ side }) => side === 'male')) return 'diameter over the crests, mm';
  if (bands.length > 0 && bands.every(({ side }) => side === 'female')) return 'diameter across the bore, mm';
  return 'diameter, mm';
}

/** How a band is named in the picture: a bore among outside diameters says so. */
export function bandName({ name, side }: ThreadBand, among: readonly ThreadBand[]): string {
  return side === 'female' && among.some((other) => other.side === 'male') ? `${name}, bore` : name;
}

/** The same, to be broken only between the names of twins. */
export function bandNameLine(band: ThreadBand, among: readonly ThreadBand[]): string {
  return bandName(band, among).split(OR).map(unbroken).join(OR);
}

/** What the marks mean, naming only those that are there. */
export function keyLine({ bands }: ThreadPictureData): string {
  const [fits, misses] = [bands.some(({ fits: each }) => each), bands.some(({ fits: each }) => !each)];
  const meaning =
    fits && misses
      ? 'filled where the reading fits, dashed where not'
      : fits
        ? 'the reading fits all of them'
        : 'the reading fits none of them';
  return [
    ...(bands.length === 0
      ? []
      : [`Boxes: published limits, ${bands.length === 1 && fits ? 'and the reading fits' : meaning}.`]),
    ...(bands.some(({ tapered }) => tapered) ? ['Wedges: taper threads.'] : []),
  ].join(' ');
}

/** Keeps each thread's name on one line of the title. */
export function titleLine({ title, bands }: ThreadPictureData): string {
  return bands.reduce((line, { name }) => line.replaceAll(name, unbroken(name)), title);
}

/** The picture in words with its values, for whoever does not see it; whole sentences, as many as may be. */
export function threadAlt(data: ThreadPictureData): string {
  const head = [
    `${data.title}.`,
    `Diameter across, pitch upwards. ${readingLine(data).replaceAll(UNBROKEN, ' ')}.`,
  ];
  const each = data.bands.map(
    (band) =>
      `${bandName(band, data.bands)}: ${band.fromMm.toFixed(2)} to ${band.toMm.toFixed(2)} mm at pitch ${pitchWords(band)}, ${band.fits ? 'fits' : 'does not fit'}.`,
  );
  let words = head.join(' ').slice(0, LONGEST_ALT);
  for (const sentence of each) {
    if (words.length + 1 + sentence.length > LONGEST_ALT) break;
    words += ` ${sentence}`;
  }
  return words;
}

const pitchWords = ({ pitchMm, tpi }: ThreadBand): string =>
  tpi === undefined ? `${pitchMm} mm` : `${pitchMm.toFixed(3)} mm (${tpi} tpi)`;
