import type { ScaleLinear } from 'd3-scale';
import { INK, MARGIN, SHEET_WIDTH, TYPE } from './sheet.ts';
import { element, type Rect } from './svg.ts';
import { line, widthOf } from './words.ts';

export type Scale = ScaleLinear<number, number>;

/** A place on an axis with its words. */
export interface Tick {
  readonly at: number;
  readonly words: string;
}

const TICK_TYPE = { size: TYPE.small, ink: INK.text } as const;
/** From the end of a tick's words to the beginning of the next. */
const BETWEEN = 8;

/** Round values along an axis, as many as have room beside one another. */
export function roundTicks(scale: Scale, most: number): readonly Tick[] {
  const words = scale.tickFormat(most);
  return scale.ticks(most).map((value) => ({ at: scale(value), words: words(value) }));
}

/** Leaves out ticks that would touch one already kept, and those outside the axis. */
export function thinned(ticks: readonly Tick[], from: number, to: number): readonly Tick[] {
  const kept: Tick[] = [];
  for (const tick of ticks) {
    const free = kept.every(({ at }) => Math.abs(at - tick.at) >= TYPE.small * 1.15);
    if (free && tick.at >= from && tick.at <= to) kept.push(tick);
  }
  return kept;
}

/** The axis along the bottom: rules up the plot, values below, and what is measured, with its unit. */
export function bottomAxis(ticks: readonly Tick[], plot: Rect, name: string): string {
  const foot = plot.y + plot.height;
  const last: { end: number } = { end: Number.NEGATIVE_INFINITY };
  const values = ticks.map(({ at, words }) => {
    const half = widthOf(words, TICK_TYPE) / 2;
    if (at - half < last.end + BETWEEN || at + half > SHEET_WIDTH - BETWEEN) return '';
    last.end = at + half;
    return line(words, { x: at, y: foot + 18, align: 'middle' }, TICK_TYPE);
  });
  return [
    ...ticks.map(({ at }) => rule(at, plot.y, at, foot)),
    stroke(plot.x, foot, plot.x + plot.width, foot),
    ...values,
    line(name, { x: plot.x + plot.width / 2, y: foot + 37, align: 'middle' }, TICK_TYPE),
  ].join('');
}

/** An axis up the left or right side, its name and unit above it. */
export function sideAxis(ticks: readonly Tick[], plot: Rect, name: string, side: 'left' | 'right'): string {
  const x = side === 'left' ? plot.x : plot.x + plot.width;
  const [out, align] = side === 'left' ? ([-6, 'end'] as const) : ([6, 'start'] as const);
  return [
    stroke(x, plot.y, x, plot.y + plot.height),
    ...ticks.map(({ at, words }) => line(words, { x: x + out, y: at + TYPE.small * 0.36, align }, TICK_TYPE)),
    line(
      name,
      side === 'left'
        ? { x: MARGIN, y: plot.y - 10 }
        : { x: SHEET_WIDTH - MARGIN, y: plot.y - 10, align: 'end' },
      TICK_TYPE,
    ),
  ].join('');
}

/** A pale line of the ruled sheet. */
export const rule = (x1: number, y1: number, x2: number, y2: number): string =>
  element('line', { x1, y1, x2, y2, stroke: INK.rule, 'stroke-width': 1 });

const stroke = (x1: number, y1: number, x2: number, y2: number): string =>
  element('line', { x1, y1, x2, y2, stroke: INK.text, 'stroke-width': 1 });
