import { extent } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { roundTicks, rule, type Scale, sideAxis, thinned } from './axes.ts';
import { overlap } from './labels.ts';
import type { ChartLimit, ChartPanel, ChartPoint } from './reading-data.ts';
import { INK, TYPE } from './sheet.ts';
import { element, type Rect } from './svg.ts';
import { thinOut } from './thin-out.ts';
import { fitted, line, widthOf } from './words.ts';

/** No eye tells more apart on a phone. */
const MOST_POINTS = 2000;
/** Up to so many each has a mark of its own; more are a line. */
const MOST_MARKS = 60;
const SMALL = { size: TYPE.small } as const;
/** Air above the highest and below the lowest value, as a share of what lies between. */
const AIR = 0.12;
/** A limit further off than this many times the readings' own range would flatten them: it is named at the edge. */
const FARTHEST = 8;

/** The readings of one kind in a plot of their own; `across` is shared by all panels. */
export function drawPanel(panel: ChartPanel, plot: Rect, across: Scale): string {
  const up = scaleFor(panel, plot);
  const taken: Rect[] = [];
  const shown = panel.points;
  const like = thinOut(
    shown.filter((point) => point.like),
    MOST_POINTS,
  );
  const apart = thinOut(
    shown.filter((point) => !point.like),
    MOST_MARKS,
  );
  const at = ({ atMs, value }: { readonly atMs: number; readonly value: number }) => ({
    x: across(atMs),
    y: up(value),
  });
  const newest = like.at(-1);
  return [
    ...thinned(roundTicks(up, 5), plot.y, plot.y + plot.height).map((tick) =>
      rule(plot.x, tick.at, plot.x + plot.width, tick.at),
    ),
    sideAxis(thinned(roundTicks(up, 5), plot.y + 4, plot.y + plot.height), plot, panel.axis, 'left'),
    ...panel.limits.map((limit) => drawLimit(limit, plot, up)),
    like.length > 1 ? joined(like.map(at)) : '',
    panel.trend === undefined ? '' : trendLine(panel.trend.map(at)),
    ...apart.map((point) => mark(point, at(point), true)),
    ...(like.length <= MOST_MARKS ? like.map((point) => mark(point, at(point), false)) : []),
    ...panel.limits.map((limit) => nameLimit(limit, plot, up, taken)),
    newest === undefined
      ? ''
      : nameNewest(panel.newest, at(newest), plot, [...taken, ...inTheWay(panel, like.map(at), at)]),
  ].join('');
}

function scaleFor({ points, limits, trend }: ChartPanel, plot: Rect): Scale {
  const [low = 0, high = 0] = extent([...points, ...(trend ?? [])], ({ value }) => value);
  const range = high - low || Math.abs(high) * 0.1 || 1;
  const near = limits
    .map(({ value }) => value)
    .filter((value) => value > low - FARTHEST * range && value < high + FARTHEST * range);
  const [least, most] = [Math.min(low, ...near), Math.max(high, ...near)];
  const air = AIR * (most - least || range);
  const from = least >= 0 ? Math.max(0, least - air) : least - air;
  return scaleLinear([from, most + air], [plot.y + plot.height, plot.y]);
}

type Spot = { readonly x: number; readonly y: number };

const points = (spots: readonly Spot[]): string =>
  spots.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');

const joined = (spots: readonly Spot[]): string =>
  element('polyline', {
    points: points(spots),
    fill: 'none',
    stroke: INK.blue,
    'stroke-width': 2,
    'stroke-linejoin': 'round',
  });

const trendLine = (spots: readonly Spot[]): string =>
  element('polyline', {
    points: points(spots),
    fill: 'none',
    stroke: INK.text,
    'stroke-width': 2,
    'stroke-dasharray': '9 4 2 4',
  });

/** Full and round within limits; a diamond beyond one; empty and small where it was taken at something else. */
function mark({ standing }: ChartPoint, { x, y }: Spot, apart: boolean): string {
  if (standing === 'ok') {
    return apart
      ? element('circle', { cx: x, cy: y, r: 3.5, fill: INK.paper, stroke: INK.soft, 'stroke-width': 1.5 })
      : element('circle', { cx: x, cy: y, r: 4.5, fill: INK.blue });
  }
  const r = 6.5;
  return element('polygon', {
    points: points([
      { x, y: y - r },
      { x: x + r, y },
      { x, y: y + r },
      { x: x - r, y },
    ]),
    fill: standing === 'bad' ? INK.vermilion : INK.paper,
    stroke: INK.vermilion,
    'stroke-width': 2,
  });
}

/** A limit beyond the sheet stands at its edge, so that it is at least named. */
const edge = ({ value }: ChartLimit, plot: Rect, up: Scale): number =>
  Math.min(Math.max(up(value), plot.y), plot.y + plot.height);

function drawLimit(limit: ChartLimit, plot: Rect, up: Scale): string {
  const y = up(limit.value);
  if (y < plot.y - 0.5 || y > plot.y + plot.height + 0.5) return '';
  return element('line', {
    x1: plot.x,
    y1: y,
    x2: plot.x + plot.width,
    y2: y,
    stroke: INK.vermilion,
    'stroke-width': 2,
    'stroke-dasharray': '6 4',
  });
}

/** The words of a limit stand on the side that is sound; where another has the room, on the other. */
function nameLimit(limit: ChartLimit, plot: Rect, up: Scale, taken: Rect[]): string {
  const y = edge(limit, plot, up);
  const beyond = up(limit.value) !== y;
  const words = fitted(beyond ? `${limit.words} (off this chart)` : limit.words, plot.width - 8, SMALL);
  const width = widthOf(words, SMALL);
  const above = y - 5;
  const below = y + TYPE.small + 2;
  const spots = [...(limit.side === 'least' ? [above, below] : [below, above])]
    .filter((base) => base - TYPE.small >= plot.y - 2 && base <= plot.y + plot.height + 2)
    .map((base) => ({ base, room: { x: plot.x + 4, y: base - TYPE.small, width, height: TYPE.small + 4 } }));
  const free = spots.find(({ room }) => taken.every((other) => !overlap(room, other)));
  if (free === undefined) return '';
  taken.push(free.room);
  return onPaper(words, free.room, { x: free.room.x, y: free.base }, { ...SMALL, ink: INK.vermilionText });
}

/** Marks and lines as rooms, so that no word is set on them. */
function inTheWay(
  { points: all, trend }: ChartPanel,
  spots: readonly Spot[],
  at: (point: { readonly atMs: number; readonly value: number }) => Spot,
): readonly Rect[] {
  const room = ({ x, y }: Spot, half: number): Rect => ({
    x: x - half,
    y: y - half,
    width: 2 * half,
    height: 2 * half,
  });
  const lines = [spots.slice(-MOST_MARKS), (trend ?? []).map(at)];
  const along = lines.flatMap((line_) =>
    line_.slice(1).flatMap((to, index) => {
      const from = line_[index] ?? to;
      const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 8));
      return Array.from({ length: steps }, (_each, step) => ({
        x: from.x + ((to.x - from.x) * step) / steps,
        y: from.y + ((to.y - from.y) * step) / steps,
      }));
    }),
  );
  return [
    ...all.slice(-MOST_MARKS).map((point) => room(at(point), 5)),
    ...along.map((spot) => room(spot, 2)),
  ];
}

function nameNewest(words: string, { x, y }: Spot, plot: Rect, taken: readonly Rect[]): string {
  const type = { size: TYPE.label, bold: true } as const;
  const width = widthOf(words, type);
  const left = Math.min(Math.max(x - width, plot.x + 2), plot.x + plot.width - width);
  const spots = [y - 10, y + TYPE.label + 9, y - 26, y + TYPE.label + 25, y - 42, y + TYPE.label + 41]
    .filter((base) => base - TYPE.label >= plot.y - 4 && base <= plot.y + plot.height - 2)
    .map((base) => ({
      base,
      room: { x: left - 2, y: base - TYPE.label, width: width + 4, height: TYPE.label + 4 },
    }));
  const free = spots.find(({ room }) => taken.every((other) => !overlap(room, other)));
  return free === undefined ? '' : onPaper(words, free.room, { x: left, y: free.base }, type);
}

function onPaper(
  words: string,
  room: Rect,
  at: Spot,
  type: { size: number; bold?: boolean; ink?: string },
): string {
  return element('rect', { ...room, fill: INK.paper, 'fill-opacity': 0.8 }) + line(words, at, type);
}
