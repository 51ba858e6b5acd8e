import type { Drawing } from '../core/reply.ts';
import { onSheet } from './on-sheet.ts';
import { INK, MARGIN, SHEET_WIDTH, TYPE } from './sheet.ts';
import type { Rect } from './svg.ts';
import type { ThreadPictureData } from './thread-data.ts';
import { drawThreadPlot } from './thread-plot.ts';
import { joinTwins, keyLine, readingLine, threadAlt, titleLine } from './thread-words.ts';
import { paragraph } from './words.ts';

/** Tried in turn until every thread drawn has room for its name. */
const PLOT_HEIGHTS = [230, 290, 350] as const;
/** Room beside the plot for the values and below it for values and name. */
const LEFT = 46;
const RIGHT = 44;
const BELOW = 46;

/** Where a reading lies among published threads: diameter across, pitch upwards, each thread a box. */
export function threadPicture(given: ThreadPictureData): Drawing {
  const data = { ...given, bands: joinTwins(given.bands) };
  const column = { x: MARGIN, width: SHEET_WIDTH - 2 * MARGIN };
  const title = paragraph(titleLine(data), { ...column, y: MARGIN - 3 }, { size: TYPE.title, bold: true }, 4);
  const reading = paragraph(readingLine(data), { ...column, y: title.end + 4 }, { size: TYPE.small }, 2);
  const inTpi = data.bands.some(({ tpi }) => tpi !== undefined);
  const plot = {
    x: LEFT,
    y: reading.end + 32,
    width: SHEET_WIDTH - LEFT - (inTpi ? RIGHT : MARGIN + 4),
  };
  const drawn = roomyPlot(data, plot);
  const key = paragraph(
    keyLine(data),
    { ...column, y: plot.y + drawn.height + BELOW },
    { size: TYPE.small, ink: INK.soft },
    3,
  );
  const height = Math.ceil(key.end + MARGIN);
  const svg = onSheet(height, title.svg, reading.svg, drawn.svg, key.svg);
  return { name: 'thread.png', alt: threadAlt(data), svg, width: SHEET_WIDTH, height };
}

function roomyPlot(
  data: ThreadPictureData,
  place: Omit<Rect, 'height'>,
): { readonly svg: string; readonly height: number } {
  let drawn = { svg: '', height: 0 };
  for (const height of PLOT_HEIGHTS) {
    const { svg, complete } = drawThreadPlot(data, { ...place, height });
    drawn = { svg, height };
    if (complete) break;
  }
  return drawn;
}
