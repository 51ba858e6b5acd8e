import { scaleLinear } from 'd3-scale';
import type { Drawing } from '../core/reply.ts';
import { addDays, type Day, sayDay } from '../core/time.ts';
import { bottomAxis, type Scale, type Tick } from './axes.ts';
import { onSheet } from './on-sheet.ts';
import { INK, MARGIN, SHEET_WIDTH, TYPE } from './sheet.ts';
import { element, type Rect } from './svg.ts';
import { fitted, line, paragraph, widthOf } from './words.ts';

/** Days counted from today: one tenth, half and nine tenths of the runs lie at or before. */
export interface TimelineSpread {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** One line of the picture: work with its beginning and end, or something that arrives. */
export type TimelineRow =
  | {
      readonly kind: 'work';
      readonly name: string;
      readonly begins: TimelineSpread;
      readonly ends: TimelineSpread;
      /** On the chain that decides the end, more often than not. */
      readonly drives: boolean;
    }
  | {
      readonly kind: 'arrival';
      readonly name: string;
      readonly arrives: TimelineSpread;
      readonly drives: boolean;
    };

export interface TimelineData {
  /** The answer as a sentence. */
  readonly title: string;
  readonly today: Day;
  readonly end: TimelineSpread;
  readonly rows: readonly TimelineRow[];
  /** How many more there are that the picture has no room for. */
  readonly more: number;
}

const ROW = 38;
const NAME_TYPE = { size: TYPE.small } as const;

/** What must be done and come, on the days it is likely to: bars with their ranges, arrivals as marks, today and the end. */
export function timelinePicture(data: TimelineData): Drawing {
  const column = { x: MARGIN, width: SHEET_WIDTH - 2 * MARGIN };
  const title = paragraph(data.title, { ...column, y: MARGIN - 3 }, { size: TYPE.title, bold: true }, 4);
  const plot = {
    x: MARGIN + 4,
    y: title.end + 28,
    width: SHEET_WIDTH - 2 * MARGIN - 8,
    height: Math.max(1, data.rows.length) * ROW + 8,
  };
  const last = Math.max(
    7,
    data.end.p90,
    ...data.rows.map((row) => (row.kind === 'work' ? row.ends.p90 : row.arrives.p90)),
  );
  const scale = scaleLinear([0, last + 2], [plot.x, plot.x + plot.width]);
  const key = paragraph(keyLine(data), { ...column, y: plot.y + plot.height + 46 }, KEY_TYPE, 5);
  const height = Math.ceil(key.end + MARGIN);
  const svg = onSheet(
    height,
    title.svg,
    endBand(data.end, scale, plot),
    bottomAxis(weekTicks(data.today, last, scale), plot, 'weeks from Monday'),
    standing(scale(0), plot, INK.text, 'today', 'start'),
    standing(
      scale(data.end.p50 + 0.5),
      plot,
      INK.vermilionText,
      sayShort(data.today, data.end.p50),
      'middle',
    ),
    ...data.rows.map((row, index) => drawRow(row, scale, plot, plot.y + 6 + index * ROW)),
    key.svg,
  );
  return { name: 'timeline.png', alt: altOf(data), svg, width: SHEET_WIDTH, height };
}

const KEY_TYPE = { size: TYPE.small, ink: INK.soft } as const;

/** The end's range behind everything, so that a bar in it stays to be read. */
function endBand({ p10, p90 }: TimelineSpread, scale: Scale, { y, height }: Rect): string {
  const x = scale(p10);
  // a day is as wide as it is long
  return element('rect', {
    x,
    y,
    width: scale(p90 + 1) - x,
    height,
    fill: INK.vermilion,
    'fill-opacity': 0.16,
  });
}

/** A line over the whole height, its name above it, kept on the sheet and off today's. */
function standing(
  x: number,
  { y, height }: Rect,
  ink: string,
  words: string,
  align: 'start' | 'middle',
): string {
  const at = align === 'start' ? x : Math.min(SHEET_WIDTH - 48, Math.max(110, x));
  return [
    element('line', { x1: x, y1: y, x2: x, y2: y + height, stroke: ink, 'stroke-width': 1.75 }),
    line(words, { x: at, y: y - 8, align }, { size: TYPE.small, ink }),
  ].join('');
}

function drawRow(row: TimelineRow, scale: Scale, plot: Rect, top: number): string {
  const name = fitted(row.name, plot.width - 12, { ...NAME_TYPE, bold: row.drives });
  const middle = top + 25;
  return [
    line(name, { x: plot.x + 6, y: top + 13 }, { ...NAME_TYPE, bold: row.drives }),
    row.kind === 'work' ? bar(row, scale, middle) : diamond(row.arrives, scale, middle),
  ].join('');
}

/** Filled where it drives the end, else only its outline; a thin line shows the range. */
function bar(
  { begins, ends, drives }: Extract<TimelineRow, { kind: 'work' }>,
  scale: Scale,
  middle: number,
): string {
  // a job takes its day up: it is drawn to the end of it
  const [x, end] = [scale(begins.p50), scale(ends.p50 + 1)];
  return [
    range(scale(begins.p10), scale(ends.p90 + 1), middle, INK.blue),
    element('rect', {
      x,
      y: middle - 5,
      width: Math.max(3, end - x),
      height: 10,
      fill: drives ? INK.blue : INK.paper,
      stroke: INK.blue,
      'stroke-width': 1.5,
    }),
  ].join('');
}

function diamond({ p10, p50, p90 }: TimelineSpread, scale: Scale, middle: number): string {
  const x = scale(p50 + 0.5);
  return [
    range(scale(p10), scale(p90 + 1), middle, INK.vermilion),
    element('path', {
      d: `M${x.toFixed(1)} ${middle - 7}l7 7l-7 7l-7 -7z`,
      fill: INK.vermilion,
    }),
  ].join('');
}

const range = (x1: number, x2: number, y: number, ink: string): string =>
  element('line', { x1, y1: y, x2: Math.max(x1 + 1, x2), y2: y, stroke: ink, 'stroke-width': 1.5 });

/** Mondays, or every other, fourth … Monday where they would crowd. */
function weekTicks(today: Day, last: number, scale: Scale): readonly Tick[] {
  const weekday = Temporal.PlainDate.from(today).dayOfWeek;
  const first = (8 - weekday) % 7;
  const step = [1, 2, 4, 8, 16, 32, 64].find((weeks) => last / (7 * weeks) <= 5) ?? 128;
  return Array.from({ length: Math.floor((last - first) / (7 * step)) + 1 }, (_, index) => {
    const day = first + index * 7 * step;
    return { at: scale(day), words: sayShort(today, day) };
  }).filter(({ at, words }) => at >= widthOf(words, { size: TYPE.small }) / 2);
}

/** "7 Dec", with the year when it is another. */
function sayShort(today: Day, day: number): string {
  return sayDay(addDays(today, day), today).replace(/^\w{3} /, '');
}

function keyLine({ rows, more }: TimelineData): string {
  const arrivals = rows.some(({ kind }) => kind === 'arrival');
  return [
    'Bars: work; thin lines: where it lies eight times in ten. Filled and bold: drives the day.',
    arrivals ? 'Diamond: a part arrives.' : '',
    'Red band: the day itself, eight times in ten.',
    more > 0 ? `${more} more not drawn.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}

function altOf({ title, today, end, rows, more }: TimelineData): string {
  const day = (offset: number): string => sayDay(addDays(today, offset), today);
  const lines = rows.map((row) =>
    row.kind === 'work'
      ? `${row.name}: ${day(row.begins.p50)} to ${day(row.ends.p50)}`
      : `${row.name} arrives ${day(row.arrives.p50)}`,
  );
  return `${title}. Between ${day(end.p10)} and ${day(end.p90)}, eight times in ten. ${lines.join('; ')}${more > 0 ? `; ${more} more` : ''}.`.slice(
    0,
    1024,
  );
}
