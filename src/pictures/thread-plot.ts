import { bottomAxis, roundTicks, rule, sideAxis, thinned } from './axes.ts';
import { placeNames } from './labels.ts';
import { box, cross, crossRoom, strip, wedge } from './marks.ts';
import { drawName, type Name, nameOf } from './named.ts';
import { INK, SHEET_WIDTH, TYPE } from './sheet.ts';
import type { Rect } from './svg.ts';
import type { ThreadBand, ThreadPictureData } from './thread-data.ts';
import { type PlacedBand, placeBands, type Scales, scalesFor } from './thread-lanes.ts';
import { bandNameLine, diameterName } from './thread-words.ts';
import { line } from './words.ts';

/** Something drawn that bears a name. */
interface Thing {
  readonly rect: Rect;
  readonly name: Name;
}

/**
 * The axes, the bands, the reading, and every name where it covers nothing; `complete` when there was room for all.
 */
export function drawThreadPlot(
  data: ThreadPictureData,
  plot: Rect,
): { readonly svg: string; readonly complete: boolean } {
  const scales = scalesFor(data, plot);
  const placed = placeBands(data.bands, scales);
  // the reading chooses first: it sits where it is crowded
  const things: readonly Thing[] = [
    ...readingThing(data, scales),
    ...placed
      .toSorted((a, b) => data.bands.indexOf(a.band) - data.bands.indexOf(b.band))
      .map(({ band, rect }) => ({ rect, name: nameOfBand(band, data.bands) })),
  ];
  const spots = placeNames(
    things.map(({ rect, name: { width, height } }) => ({ of: rect, width, height })),
    things.map(({ rect }) => rect),
    { x: plot.x + 3, y: plot.y + 2, width: plot.width - 6, height: plot.height - 4 },
  );
  const parts = [
    drawAxes(data, placed, plot, scales),
    ...placed.map(({ band, rect }) => (band.tapered ? wedge : box)(rect, band.fits ? 'holds' : 'misses')),
    drawReading(data, plot, scales),
    ...things.map(({ rect, name }, index) => {
      const spot = spots[index];
      return spot === undefined ? '' : drawName(name, spot, rect);
    }),
  ];
  return { svg: parts.join(''), complete: spots.every((spot) => spot !== undefined) };
}

function drawAxes(
  { bands }: ThreadPictureData,
  placed: readonly PlacedBand[],
  plot: Rect,
  { across, up }: Scales,
): string {
  const [top, foot] = [plot.y, plot.y + plot.height];
  const inTpi = bands.flatMap(({ tpi, pitchMm }) =>
    tpi === undefined ? [] : [{ at: up(pitchMm), words: `${tpi}` }],
  );
  const pitches = new Set(placed.map(({ band }) => band.pitchMm));
  return [
    bottomAxis(roundTicks(across, 5), plot, diameterName(bands)),
    ...[...pitches].map((pitchMm) => rule(plot.x, up(pitchMm), plot.x + plot.width, up(pitchMm))),
    sideAxis(thinned(roundTicks(up, 6), top, foot), plot, 'pitch, mm', 'left'),
    inTpi.length === 0 ? '' : sideAxis(thinned(inTpi, top, foot), plot, 'tpi', 'right'),
  ].join('');
}

function drawReading({ diameter, pitch, named }: ThreadPictureData, plot: Rect, scales: Scales): string {
  if (pitch === undefined) return namedStrip(stripOf(diameter, plot, scales), readingName(named));
  return cross(
    { x: scales.across(diameter.mm), y: scales.up(pitch.mm) },
    reachOf(diameter.plusMinusMm, pitch.plusMinusMm, scales),
  );
}

/** The name of a strip stands over it, between the names of the two side axes. */
function namedStrip(room: Rect, name: string): string {
  const x = Math.min(Math.max(room.x + room.width / 2, 125), SHEET_WIDTH - 85);
  const type = { size: TYPE.label, ink: READING.ink };
  return strip(room) + line(name, { x, y: room.y - 10, align: 'middle' }, type);
}

/** A cross to be named; a strip has its name above the plot. */
function readingThing({ diameter, pitch, named }: ThreadPictureData, scales: Scales): readonly Thing[] {
  if (pitch === undefined) return [];
  const at = { x: scales.across(diameter.mm), y: scales.up(pitch.mm) };
  const reach = reachOf(diameter.plusMinusMm, pitch.plusMinusMm, scales);
  return [{ rect: crossRoom(at, reach), name: nameOf(readingName(named), undefined, READING) }];
}

function reachOf(diameterMm: number, pitchMm: number, { across, up }: Scales): { x: number; y: number } {
  return { x: across(diameterMm) - across(0), y: up(0) - up(pitchMm) };
}

function stripOf({ mm, plusMinusMm }: ThreadPictureData['diameter'], plot: Rect, { across }: Scales): Rect {
  const x = across(mm - plusMinusMm);
  return { x, y: plot.y, width: across(mm + plusMinusMm) - x, height: plot.height };
}

/** What uses a thread is told where one stands alone; among several it would only crowd their names out. */
function nameOfBand(band: ThreadBand, among: readonly ThreadBand[]): Name {
  const alone = band.fits && among.filter(({ fits }) => fits).length === 1;
  const style = { bold: band.fits, ink: band.fits ? INK.text : INK.soft };
  return nameOf(bandNameLine(band, among), alone ? band.note : undefined, style);
}

const READING = { bold: false, ink: INK.vermilionText };

const readingName = (named: string | undefined): string => (named === undefined ? 'measured' : 'as named');
