import { scaleLinear } from 'd3-scale';
import type { Drawing } from '../core/reply.ts';
import { onSheet } from './on-sheet.ts';
import { INK, MARGIN, SHEET_WIDTH, TYPE } from './sheet.ts';
import { element } from './svg.ts';
import { fitted, line, paragraph, type Type, widthOf } from './words.ts';

export interface CylinderBar {
  /** "1", "main 2": what stands before the bar. */
  readonly label: string;
  readonly value: number;
  /** As it is printed, without its unit. */
  readonly words: string;
  readonly standing: 'ok' | 'low' | 'high';
  /** A second reading of the same place under the first, such as the wet one. */
  readonly second?: { readonly value: number; readonly words: string };
}

export interface CylinderBarsData {
  /** The answer in a sentence. */
  readonly title: string;
  /** What is measured, with its unit: "Compression, bar". */
  readonly axis: string;
  readonly bars: readonly CylinderBar[];
  readonly limit?: { readonly value: number; readonly words: string };
  /** What a bar beyond the limit is called: "weak", "leaks". */
  readonly called: { readonly low: string; readonly high: string };
  readonly name: string;
}

const LABEL: Type = { size: TYPE.title, bold: true };
const VALUE: Type = { size: TYPE.title };
const SMALL: Type = { size: TYPE.small };
const BAR = 24;
const SECOND = 13;
const GAP = 10;

/** A bar for each cylinder from nothing on, its value beside it, and the limit as a line across them. */
export function cylinderBars({ title, axis, bars, limit, called, name }: CylinderBarsData): Drawing {
  const column = { x: MARGIN, width: SHEET_WIDTH - 2 * MARGIN };
  const heading = paragraph(title, { ...column, y: MARGIN - 3 }, { size: TYPE.title, bold: true }, 3);
  const under = paragraph(axis, { ...column, y: heading.end + 2 }, { ...SMALL, ink: INK.soft }, 2);
  const left = MARGIN + Math.max(...bars.map(({ label }) => widthOf(label, LABEL))) + 10;
  const wordsOf = ({ words, standing }: CylinderBar): string =>
    standing === 'ok' ? words : `${words} ${called[standing]}`;
  const right =
    8 +
    Math.max(
      ...bars.map((bar) => Math.max(widthOf(wordsOf(bar), VALUE), widthOf(bar.second?.words ?? '', SMALL))),
    );
  const most = Math.max(
    limit?.value ?? 0,
    ...bars.flatMap(({ value, second }) => [value, second?.value ?? 0]),
  );
  const across = scaleLinear([0, most === 0 ? 1 : most], [left, SHEET_WIDTH - MARGIN - right]);
  const top = under.end + (limit === undefined ? 8 : 26);
  let y = top;
  const rows = bars.map((bar) => {
    const drawn = drawBar(bar, { y, left, across, words: wordsOf(bar) });
    y += BAR + (bar.second === undefined ? 0 : SECOND) + GAP;
    return drawn;
  });
  const foot = y - GAP + 6;
  const height = Math.ceil(foot + MARGIN);
  const svg = onSheet(
    height,
    heading.svg,
    under.svg,
    limit === undefined ? '' : limitLine(across(limit.value), { top: top - 6, foot }, limit.words),
    ...rows,
    element('line', { x1: left, y1: top - 4, x2: left, y2: foot, stroke: INK.text, 'stroke-width': 1.5 }),
  );
  const alt = `${title} ${axis}. ${bars.map((bar) => `${bar.label}: ${wordsOf(bar)}`).join(', ')}${limit === undefined ? '' : `; ${limit.words}`}.`;
  return { name, alt, svg, width: SHEET_WIDTH, height };
}

/** A sound one is full and blue; one beyond the limit is empty, dashed and vermilion, and says so in a word. */
function drawBar(
  { label, value, standing, second }: CylinderBar,
  at: { y: number; left: number; across: (value: number) => number; words: string },
): string {
  const { y, left, across, words } = at;
  const end = across(value);
  const style =
    standing === 'ok'
      ? { fill: INK.blue, 'fill-opacity': 0.35, stroke: INK.blue, 'stroke-width': 2 }
      : {
          fill: INK.vermilion,
          'fill-opacity': 0.12,
          stroke: INK.vermilion,
          'stroke-width': 2.5,
          'stroke-dasharray': '6 4',
        };
  const base = y + BAR / 2 + TYPE.title * 0.36;
  return [
    line(label, { x: left - 8, y: base, align: 'end' }, LABEL),
    element('rect', { x: left, y, width: Math.max(end - left, 1), height: BAR, ...style }),
    onPaper(words, { x: end + 6, y: base }, standing === 'ok' ? VALUE : { ...VALUE, ink: INK.vermilionText }),
    second === undefined ? '' : drawSecond(second, { y: y + BAR + 2, left, across }),
  ].join('');
}

function drawSecond(
  second: { readonly value: number; readonly words: string },
  { y, left, across }: { y: number; left: number; across: (value: number) => number },
): string {
  const end = across(second.value);
  return [
    element('rect', { x: left, y, width: Math.max(end - left, 1), height: 6, fill: INK.soft }),
    onPaper(second.words, { x: end + 6, y: y + SECOND - 4 }, { ...SMALL, ink: INK.soft }),
  ].join('');
}

/** Words on a patch of paper, so that the limit's line does not run through them. */
function onPaper(words: string, at: { x: number; y: number }, type: Type): string {
  const patch = {
    x: at.x - 2,
    y: at.y - type.size * 0.8,
    width: widthOf(words, type) + 4,
    height: type.size,
  };
  return element('rect', { ...patch, fill: INK.paper }) + line(words, at, type);
}

function limitLine(x: number, { top, foot }: { top: number; foot: number }, words: string): string {
  const shown = fitted(words, SHEET_WIDTH - 2 * MARGIN, SMALL);
  const half = widthOf(shown, SMALL) / 2;
  const middle = Math.min(Math.max(x, MARGIN + half), SHEET_WIDTH - MARGIN - half);
  return [
    element('line', {
      x1: x,
      y1: top,
      x2: x,
      y2: foot,
      stroke: INK.text,
      'stroke-width': 2,
      'stroke-dasharray': '2 4',
      'stroke-linecap': 'round',
    }),
    line(shown, { x: middle, y: top - 5, align: 'middle' }, SMALL),
  ].join('');
}
