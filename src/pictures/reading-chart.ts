import { scaleLinear } from 'd3-scale';
import type { Drawing } from '../core/reply.ts';
import { bottomAxis } from './axes.ts';
import { onSheet } from './on-sheet.ts';
import type { ChartPanel, ReadingChartData } from './reading-data.ts';
import { drawPanel } from './reading-panel.ts';
import { INK, MARGIN, SHEET_WIDTH, TYPE } from './sheet.ts';
import { timeTicks } from './time-ticks.ts';
import { paragraph } from './words.ts';

const LEFT = 50;
const RIGHT = MARGIN + 4;
/** One has more height than several that share the sheet. */
const HEIGHT = { alone: 230, together: 140 } as const;
/** Room above a plot for the name of its axis, and below the last one for the days. */
const NAME = 26;
const BELOW = 46;
const SMALL = { size: TYPE.small, ink: INK.soft } as const;
const HOUR_MS = 3_600_000;
const MOST_TICKS = 5;

/** Readings over time, each kind in a panel of its own above the same days, with the limits they are judged by. */
export function readingChart({ title, panels, zone, name }: ReadingChartData): Drawing {
  const column = { x: MARGIN, width: SHEET_WIDTH - 2 * MARGIN };
  const heading = paragraph(title, { ...column, y: MARGIN - 3 }, { size: TYPE.title, bold: true }, 4);
  const times = panels.flatMap(({ points }) => points.map(({ atMs }) => atMs));
  const [from, to] = spanOf(times);
  const width = SHEET_WIDTH - LEFT - RIGHT;
  const across = scaleLinear([from, to], [LEFT + 8, LEFT + width - 8]);
  let y = heading.end + 4;
  const drawn = panels.map((panel) => {
    const conditions = paragraph(panel.conditions, { ...column, y }, SMALL, 2);
    const plot = {
      x: LEFT,
      y: conditions.end + NAME,
      width,
      height: panels.length === 1 ? HEIGHT.alone : HEIGHT.together,
    };
    y = plot.y + plot.height + 10;
    return { plot, svg: conditions.svg + drawPanel(panel, plot, across) };
  });
  const last = drawn.at(-1)?.plot ?? { x: LEFT, y, width, height: 0 };
  const ticks = timeTicks(from, to, zone, MOST_TICKS).map(({ atMs, words }) => ({ at: across(atMs), words }));
  const key = paragraph(keyOf(panels), { ...column, y: last.y + last.height + BELOW }, SMALL, 3);
  const height = Math.ceil(key.end + MARGIN);
  const svg = onSheet(
    height,
    heading.svg,
    // its rules run below the marks
    bottomAxis(ticks, last, 'when it was measured'),
    ...drawn.map((panel) => panel.svg),
    key.svg,
  );
  return { name, alt: altOf(title, panels), svg, width: SHEET_WIDTH, height };
}

/** From the first to the last, never less than an hour, so that one reading has a place too. */
function spanOf(times: readonly number[]): readonly [number, number] {
  const [from, to] = times.reduce(
    ([least, most], each) => [Math.min(least, each), Math.max(most, each)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
  return to - from >= HOUR_MS ? [from, to] : [from - HOUR_MS / 2, to + HOUR_MS / 2];
}

/** Says only what is on the sheet. */
function keyOf(panels: readonly ChartPanel[]): string {
  const points = panels.flatMap((panel) => panel.points);
  return [
    points.some(({ standing }) => standing !== 'ok') && 'A diamond lies beyond a limit.',
    points.some(({ like }) => !like) && 'Pale rings were taken under other conditions.',
    panels.some(({ trend }) => trend !== undefined) && 'The dash-and-dot line is the trend.',
  ]
    .filter(Boolean)
    .join(' ');
}

function altOf(title: string, panels: readonly ChartPanel[]): string {
  const each = panels.map(({ axis, conditions, points, limits, least, most, newest }) => {
    const limit = limits.map(({ words }) => `; ${words}`).join('');
    const at = conditions === '' ? '' : ` (${conditions})`;
    return `${axis}${at}: ${points.length} readings, least ${least}, greatest ${most}, last ${newest}${limit}.`;
  });
  return `${title}${/[.!?]$/.test(title) ? '' : '.'} ${each.join(' ')}`;
}
