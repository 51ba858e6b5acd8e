import type { Drawing } from '../core/reply.ts';
import { bottomAxis, roundTicks, rule, sideAxis, thinned } from './axes.ts';
import { placeNames } from './labels.ts';
import { box, cross, crossRoom, strip, wedge } from './marks.ts';
import { drawName, type Name, nameOf } from './named.ts';
import { INK, MARGIN, SHEET_WIDTH, TYPE } from './sheet.ts';
import { element, type Rect } from './svg.ts';
import { type PlacedBand, placeBands, type Scales, scalesFor } from './thread-lanes.ts';
import { joinTwins, threadAlt } from './thread-words.ts';
import { line, lineHeight, wrapped } from './words.ts';

/** A published thread as it is drawn. */
export interface ThreadBand {
  readonly name: string;
  /** What uses it: "JIC -8, ORB -8". */
  readonly note?: string;
  readonly side: 'male' | 'female';
  /** Published limits of the crest diameter, mm. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly pitchMm: number;
  /** Set where the standard counts threads to the inch. */
  readonly tpi: number | undefined;
  readonly tapered: boolean;
  /** Whether the readings leave it standing. */
  readonly fits: boolean;
}

/** A number and what it could be out by, mm. */
interface Measured {
  readonly mm: number;
  readonly plusMinusMm: number;
}

export interface ThreadPictureData {
  /** The answer in a sentence. */
  readonly title: string;
  /** The size as it was named, when it was not measured: "3/4". */
  readonly named?: string;
  readonly diameter: Measured;
  readonly pitch?: Measured;
  readonly bands: readonly ThreadBand[];
}

const PLOT_HEIGHT = 230;
const LEFT = 46;
const RIGHT = 34;
const TITLE = { size: TYPE.title, bold: true } as const;
const UNDER = { size: TYPE.small, ink: INK.text } as const;
const FOOT = { size: TYPE.small, ink: INK.soft } as const;

/** Where a reading lies among published threads: diameter across, pitch upwards, each thread a box. */
export function threadPicture(given: ThreadPictureData): Drawing {
  const data = { ...given, bands: joinTwins(given.bands) };
  const room = SHEET_WIDTH - 2 * MARGIN;
  const parts: string[] = [];
  let y = MARGIN - 2;
  const write = (words: string, type: typeof TITLE | typeof UNDER | typeof FOOT, most: number): void => {
    for (const each of wrapped(words, room, type, most)) {
      y += lineHeight(type);
      parts.push(line(each, { x: MARGIN, y: y - type.size * 0.32 }, type));
    }
  };
  write(data.title, TITLE, 4);
  y += 2;
  write(readingLine(data), UNDER, 2);
  y += 30;
  const inTpi = data.bands.some(({ tpi }) => tpi !== undefined);
  const plot = { x: LEFT, y, width: SHEET_WIDTH - LEFT - (inTpi ? RIGHT : MARGIN + 6), height: PLOT_HEIGHT };
  parts.push(drawPlot(data, plot));
  y += PLOT_HEIGHT + 44;
  write(key(data), FOOT, 3);
  const height = Math.ceil(y + MARGIN);
  const svg = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: SHEET_WIDTH,
      height,
      viewBox: `0 0 ${SHEET_WIDTH} ${height}`,
    },
    element('rect', { width: SHEET_WIDTH, height, fill: INK.paper }),
    ...parts,
  );
  return { name: 'thread.png', alt: threadAlt(data), svg, width: SHEET_WIDTH, height };
}

function drawPlot(data: ThreadPictureData, plot: Rect): string {
  const scales = scalesFor(data, plot);
  const placed = placeBands(data.bands, scales);
  const things = [...placed.map(({ rect }) => rect), readingRoom(data, plot, scales)];
  const names = [...placed.map(nameOfBand), nameOfReading(data)];
  // the reading's own name first: it has the least room
  const order = [names.length - 1, ...placed.map((_, index) => index)];
  const spots = placeNames(
    order.map((index) => naming(names, things, index)),
    things,
    inset(plot, 3),
  );
  return [
    drawAxes(data, plot, scales),
    ...placed.map(({ band, rect }) => (band.tapered ? wedge : box)(rect, band.fits ? 'holds' : 'misses')),
    drawReading(data, plot, scales),
    ...order.flatMap((index, nth) => {
      const [name, spot, thing] = [names[index], spots[nth], things[index]];
      return name && spot && thing ? [drawName(name, spot, thing)] : [];
    }),
  ].join('');
}

function naming(names: readonly Name[], things: readonly Rect[], index: number) {
  const { width = 0, height = 0 } = names[index] ?? {};
  return { of: things[index] ?? { x: 0, y: 0, width: 0, height: 0 }, width, height };
}
