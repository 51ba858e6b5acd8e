import { scaleLinear } from 'd3-scale';
import type { Drawing } from '../core/reply.ts';
import { roundTicks, rule, sideAxis, thinned } from './axes.ts';
import { onSheet } from './on-sheet.ts';
import { INK, MARGIN, SHEET_WIDTH, TYPE } from './sheet.ts';
import { element } from './svg.ts';
import { line, lineHeight, paragraph, wrapped } from './words.ts';

/** A step on the strip. */
export interface StripStep {
  /** "80 km or 1.5 h". */
  readonly at: string;
  readonly what: string;
  readonly state: 'done' | 'due' | 'soon' | 'later' | 'left out';
}

export interface RunInStripData {
  /** The answer in a sentence. */
  readonly title: string;
  /** "210 km run". */
  readonly now: string;
  /** In the order they come; where the engine stands lies before this one of them. */
  readonly steps: readonly StripStep[];
  readonly before: number;
  /** The speed ceiling over the plan's measure; empty where there is none. */
  readonly ceiling: readonly { readonly at: number; readonly rpm: number }[];
  /** Where the engine stands on it. */
  readonly run: number;
  /** "km from the first start". */
  readonly measure: string;
}

const SMALL = { size: TYPE.small } as const;
const LABEL = { size: TYPE.label, bold: true } as const;
const RAIL = MARGIN + 12;
const TEXT = RAIL + 22;
const CEILING = 120;
const GAP = 10;

/** Progress of running in: the ceiling that rises, then the steps along a rail, filled down to where the engine stands. */
export function runInStrip(data: RunInStripData): Drawing {
  const { title, steps, before, now } = data;
  const column = { x: MARGIN, width: SHEET_WIDTH - 2 * MARGIN };
  const heading = paragraph(title, { ...column, y: MARGIN - 3 }, { size: TYPE.title, bold: true }, 4);
  const ceiling = drawCeiling(data, heading.end + 4);
  let y = ceiling.end + 14;
  const top = y;
  let stands = y;
  const rows: string[] = [];
  for (const [index, step] of steps.entries()) {
    if (index === before) {
      stands = y + 7;
      rows.push(nowRow(now, y));
      y += 26;
    }
    const row = drawStep(step, y);
    rows.push(row.svg);
    y = row.end + GAP;
  }
  if (before >= steps.length) {
    stands = y + 7;
    rows.push(nowRow(now, y));
    y += 26;
  }
  const height = Math.ceil(y + MARGIN - 4);
  const svg = onSheet(
    height,
    heading.svg,
    ceiling.svg,
    rail(top, y - 6, INK.rule),
    rail(top, stands, INK.blue),
    ...rows,
  );
  return { name: 'running-in.png', alt: altOf(data), svg, width: SHEET_WIDTH, height };
}

const rail = (from: number, to: number, ink: string): string =>
  element('line', {
    x1: RAIL,
    y1: from,
    x2: RAIL,
    y2: to,
    stroke: ink,
    'stroke-width': 6,
    'stroke-linecap': 'round',
  });

/** A wedge on the rail and the counter beside it: here it stands. */
function nowRow(words: string, y: number): string {
  return [
    element('polygon', { points: `${RAIL - 9},${y} ${RAIL + 9},${y} ${RAIL},${y + 14}`, fill: INK.text }),
    line(words, { x: TEXT, y: y + 12 }, LABEL),
  ].join('');
}

const NAMES: Readonly<Record<StripStep['state'], string>> = {
  done: 'done',
  due: 'due',
  soon: 'coming up',
  later: '',
  'left out': 'left out',
};

function drawStep({ at, what, state }: StripStep, y: number): { readonly svg: string; readonly end: number } {
  const said = NAMES[state] === '' ? at : `${at}, ${NAMES[state]}`;
  const ink = state === 'due' ? INK.vermilionText : state === 'left out' ? INK.soft : INK.text;
  const head = line(said, { x: TEXT, y: y + 12 }, { ...LABEL, ink });
  const lines = wrapped(what, SHEET_WIDTH - TEXT - MARGIN, SMALL, 2);
  const step = lineHeight(SMALL);
  const body = lines.map((each, index) =>
    line(
      each,
      { x: TEXT, y: y + 17 + (index + 1) * step - TYPE.small * 0.32 },
      { ...SMALL, ink: state === 'left out' ? INK.soft : INK.text },
    ),
  );
  return { svg: [mark(state, y + 8), head, ...body].join(''), end: y + 17 + lines.length * step };
}

/** Done is full and blue with a tick, due a vermilion diamond, coming up half, later an empty ring. */
function mark(state: StripStep['state'], y: number): string {
  if (state === 'due') {
    const r = 9;
    return element('polygon', {
      points: `${RAIL},${y - r} ${RAIL + r},${y} ${RAIL},${y + r} ${RAIL - r},${y}`,
      fill: INK.vermilion,
      stroke: INK.paper,
      'stroke-width': 2,
    });
  }
  const done = state === 'done';
  return [
    element('circle', {
      cx: RAIL,
      cy: y,
      r: 8,
      fill: done ? INK.blue : INK.paper,
      stroke: state === 'left out' ? INK.soft : INK.blue,
      'stroke-width': 2.5,
      'stroke-dasharray': state === 'left out' ? '3 3' : undefined,
    }),
    done
      ? element('path', {
          d: `M${RAIL - 4} ${y}l3 3.5l5 -7`,
          stroke: INK.paper,
          'stroke-width': 2,
          fill: 'none',
        })
      : '',
    state === 'soon' ? element('circle', { cx: RAIL, cy: y, r: 3.5, fill: INK.blue }) : '',
  ].join('');
}

function drawCeiling(
  { ceiling, run, measure }: RunInStripData,
  y: number,
): { readonly svg: string; readonly end: number } {
  const last = ceiling.at(-1);
  const [first] = ceiling;
  if (first === undefined || last === undefined) return { svg: '', end: y };
  const plot = { x: 58, y: y + 26, width: SHEET_WIDTH - 58 - MARGIN - 6, height: CEILING };
  const end = Math.max(last.at, run, 1);
  const across = scaleLinear([0, end], [plot.x, plot.x + plot.width]);
  const most = Math.max(...ceiling.map(({ rpm }) => rpm));
  const up = scaleLinear([0, most * 1.08], [plot.y + plot.height, plot.y]);
  const points = [...ceiling, { at: end, rpm: last.rpm }].map(
    ({ at, rpm }) => `${across(at).toFixed(1)},${up(rpm).toFixed(1)}`,
  );
  const foot = plot.y + plot.height;
  const here = Math.min(run, end);
  const ticks = roundTicks(across, 4);
  const svg = [
    ...thinned(roundTicks(up, 4), plot.y, foot).map((tick) =>
      rule(plot.x, tick.at, plot.x + plot.width, tick.at),
    ),
    sideAxis(thinned(roundTicks(up, 4), plot.y, foot), plot, 'most, rpm', 'left'),
    element('polygon', {
      points: [`${plot.x},${foot}`, ...points, `${across(end)},${foot}`].join(' '),
      fill: INK.blue,
      'fill-opacity': 0.14,
    }),
    element('polyline', { points: points.join(' '), fill: 'none', stroke: INK.blue, 'stroke-width': 2.5 }),
    element('line', {
      x1: across(here),
      y1: plot.y,
      x2: across(here),
      y2: foot,
      stroke: INK.text,
      'stroke-width': 2,
      'stroke-dasharray': '2 4',
    }),
    ...ticks
      .filter(({ at }) => at <= plot.x + plot.width - 8)
      .map(({ at, words }) => line(words, { x: at, y: foot + 18, align: 'middle' }, SMALL)),
    line(measure, { x: plot.x + plot.width, y: foot + 36, align: 'end' }, SMALL),
  ].join('');
  return { svg, end: foot + 42 };
}

function altOf({ title, now, steps, ceiling }: RunInStripData): string {
  const each = steps
    .map(({ at, what, state }) => `${at}: ${what}${NAMES[state] === '' ? '' : ` (${NAMES[state]})`}`)
    .join('; ');
  const [first] = ceiling;
  const last = ceiling.at(-1);
  const rises =
    first === undefined || last === undefined
      ? ''
      : ` The ceiling rises from ${first.rpm} to ${last.rpm} rpm.`;
  return `${title}${/[.!?]$/.test(title) ? '' : '.'} ${now}.${rises} Steps: ${each}.`;
}
