import type { Drawing } from '../core/reply.ts';
import { onSheet } from './on-sheet.ts';
import { INK, MARGIN, SHEET_WIDTH, TYPE } from './sheet.ts';
import { element } from './svg.ts';
import { line, paragraph, widthOf } from './words.ts';

/** A cell of a fuel table as it is drawn. */
export interface MapCell {
  /** Fuel to put in (above 0) or take out, as a share; undefined where nothing is claimed. */
  readonly changeRatio?: number;
  /** Left alone although the drive speaks of it. */
  readonly suspect?: boolean;
}

export interface FuelMapData {
  /** The answer in a sentence. */
  readonly title: string;
  readonly loadKPa: readonly number[];
  readonly speedRpm: readonly number[];
  /** [load][speed] */
  readonly cells: readonly (readonly MapCell[])[];
}

const LEFT = 46;
const ROW = 24;
const HEAD = 36;
const BETWEEN = 26;
/** A number of two digits with its sign has room in this. */
const LEAST_COLUMN = 29;
const MOST_COLUMNS = Math.floor((SHEET_WIDTH - LEFT - MARGIN) / LEAST_COLUMN);
/** From here on the colour is as strong as it gets. */
const STRONG_RATIO = 0.12;

/**
 * A fuel table as a map: what to put in or take out of each cell, in per cent. Only the part the drive speaks of is drawn; a wide
 * one is cut into strips under each other, since a number must be read at arm's length.
 */
export function fuelMap(data: FuelMapData): Drawing {
  const column = { x: MARGIN, width: SHEET_WIDTH - 2 * MARGIN };
  const title = paragraph(data.title, { ...column, y: MARGIN - 3 }, { size: TYPE.title, bold: true }, 4);
  const part = spokenOf(data);
  const strips = cutIntoStrips(part.columns);
  const height = part.rows.length * ROW + HEAD;
  let top = title.end + 10;
  const drawn: string[] = [];
  for (const columns of strips) {
    drawn.push(strip(data, part.rows, columns, top));
    top += height + BETWEEN;
  }
  const key = paragraph(
    'Per cent of fuel: + with a filled box puts in, − with an open one takes out, 0 is right, ? is left alone on suspicion, blank has too little data.',
    { ...column, y: top - BETWEEN + 14 },
    { size: TYPE.small, ink: INK.soft },
    4,
  );
  const whole = Math.ceil(key.end + MARGIN);
  const svg = onSheet(whole, title.svg, ...drawn, key.svg);
  return { name: 'fuel-map.png', alt: altOf(data), svg, width: SHEET_WIDTH, height: whole };
}

interface Part {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
}

/** The rows and columns from the first to the last that the drive says something about. */
function spokenOf({ cells, loadKPa, speedRpm }: FuelMapData): Part {
  const speaks = (cell: MapCell | undefined): boolean =>
    cell?.changeRatio !== undefined || cell?.suspect === true;
  const rows = loadKPa.flatMap((_, i) => (cells[i]?.some(speaks) ? [i] : []));
  const columns = speedRpm.flatMap((_, j) => (cells.some((row) => speaks(row[j])) ? [j] : []));
  const span = (found: readonly number[]): readonly number[] => {
    const [first = 0, last = 0] = [found[0], found.at(-1)];
    return Array.from({ length: last - first + 1 }, (_, index) => first + index);
  };
  return { rows: span(rows), columns: span(columns) };
}

function cutIntoStrips(columns: readonly number[]): readonly (readonly number[])[] {
  const strips = Math.ceil(columns.length / MOST_COLUMNS);
  const each = Math.ceil(columns.length / strips);
  return Array.from({ length: strips }, (_, index) => columns.slice(index * each, (index + 1) * each));
}

/** Loads rise upwards, as on a graph. */
function strip(data: FuelMapData, rows: readonly number[], columns: readonly number[], top: number): string {
  const width = Math.min(56, (SHEET_WIDTH - LEFT - MARGIN) / columns.length);
  const x = (place: number): number => LEFT + place * width;
  const y = (place: number): number => top + HEAD + (rows.length - 1 - place) * ROW;
  const small = { size: TYPE.small, ink: INK.text };
  return [
    line('kPa', { x: LEFT - 6, y: top + 30, align: 'end' }, small),
    line('rpm', { x: LEFT, y: top + 12 }, small),
    ...speedMarks(data, columns, x, width, top + 30),
    ...rows.map((row, place) =>
      line(String(data.loadKPa[row] ?? ''), { x: LEFT - 6, y: y(place) + 17, align: 'end' }, small),
    ),
    ...rows.flatMap((row, up) =>
      columns.map((column, across) => box(data.cells[row]?.[column], x(across), y(up), width)),
    ),
  ].join('');
}

/** Speeds above their columns; where they would touch, every other is left out. */
function speedMarks(
  { speedRpm }: FuelMapData,
  columns: readonly number[],
  x: (place: number) => number,
  width: number,
  y: number,
): readonly string[] {
  const type = { size: TYPE.small, ink: INK.text };
  const widest = Math.max(...columns.map((column) => widthOf(String(speedRpm[column] ?? ''), type)));
  const every = Math.ceil((widest + 6) / width);
  return columns.flatMap((column, place) =>
    place % every === 0
      ? [line(String(speedRpm[column] ?? ''), { x: x(place) + width / 2, y, align: 'middle' }, type)]
      : [],
  );
}

function box(cell: MapCell | undefined, x: number, y: number, width: number): string {
  const [w, h] = [width - 2, ROW - 2];
  const place = { x: x + 1, y: y + 1, width: w, height: h };
  const middle = { x: x + width / 2, y: y + 17, align: 'middle' as const };
  if (cell?.suspect) {
    return [
      element('rect', {
        ...place,
        fill: 'none',
        stroke: INK.text,
        'stroke-width': 1.25,
        'stroke-dasharray': '4 3',
      }),
      line('?', middle, { size: TYPE.label, bold: true }),
    ].join('');
  }
  const change = cell?.changeRatio;
  if (change === undefined)
    return element('rect', { ...place, fill: 'none', stroke: INK.rule, 'stroke-width': 1 });
  const strength = Math.min(1, Math.abs(change) / STRONG_RATIO);
  const percent = Math.round(change * 100);
  const words = percent === 0 ? '0' : `${percent > 0 ? '+' : '−'}${Math.abs(percent)}`;
  const puts = percent > 0;
  const fill = percent === 0 ? INK.paper : puts ? INK.vermilion : INK.blue;
  return [
    element('rect', {
      ...place,
      fill,
      'fill-opacity': percent === 0 ? 1 : puts ? 0.2 + 0.4 * strength : 0.08 + 0.16 * strength,
      stroke: percent === 0 ? INK.rule : puts ? INK.vermilion : INK.blue,
      'stroke-width': percent === 0 ? 1 : puts ? 1 : 1 + strength,
    }),
    line(words, middle, { size: TYPE.small, bold: Math.abs(change) >= 0.05 }),
  ].join('');
}

function altOf({ title, cells, loadKPa, speedRpm }: FuelMapData): string {
  const said = cells.flatMap((row, i) =>
    row.flatMap((cell, j) =>
      cell.changeRatio === undefined
        ? []
        : [{ change: cell.changeRatio, load: loadKPa[i], rpm: speedRpm[j] }],
    ),
  );
  const sorted = said.toSorted((a, b) => a.change - b.change);
  const [least, most] = [sorted[0], sorted.at(-1)];
  if (least === undefined || most === undefined) return title;
  const words = (one: typeof least): string =>
    `${one.change < 0 ? '−' : '+'}${Math.abs(one.change * 100).toFixed(1)} % at ${one.rpm} rpm and ${one.load} kPa`;
  return `${title} ${said.length} cells by load and speed, from ${words(least)} to ${words(most)}.`;
}
