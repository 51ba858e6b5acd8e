import { gapBetween } from './labels.ts';
import { INK, TYPE } from './sheet.ts';
import { element, type Rect } from './svg.ts';
import { line, lineHeight, type Type, widthOf, wrapped } from './words.ts';

/** A name of one or more lines, the first the weightiest. */
export interface Name {
  readonly lines: readonly { readonly words: string; readonly type: Type }[];
  readonly width: number;
  readonly height: number;
}

/** Widest a name may be, so that a place for it is always found. */
const WIDEST = 150;

/** Measures a name; lines too long are cut, and the cut is seen. */
export function nameOf(words: string, note: string | undefined, style: { bold: boolean; ink: string }): Name {
  const first = { size: TYPE.label, ...style };
  const second = { size: TYPE.small, ink: INK.soft };
  const lines = [
    ...wrapped(words, WIDEST, first, 2).map((each) => ({ words: each, type: first })),
    ...(note === undefined
      ? []
      : wrapped(note, WIDEST, second, 2).map((each) => ({ words: each, type: second }))),
  ];
  return {
    lines,
    width: Math.max(...lines.map(({ words: each, type }) => widthOf(each, type))),
    height: lines.reduce((sum, { type }) => sum + lineHeight(type), 0),
  };
}

/** A name at its place, on a patch of paper, with a fine line to what it names when it had to go further off. */
export function drawName({ lines }: Name, place: Rect, of: Rect): string {
  let y = place.y;
  const written = lines.map(({ words, type }) => {
    y += lineHeight(type);
    return line(words, { x: place.x, y: y - type.size * 0.32 }, type);
  });
  return [
    gapBetween(place, of) > 8 ? leader(place, of) : '',
    element('rect', { ...place, fill: INK.paper, 'fill-opacity': 0.85 }),
    ...written,
  ].join('');
}

function leader(from: Rect, to: Rect): string {
  const [x1, y1] = nearest(from, to);
  const [x2, y2] = nearest(to, from);
  return element('line', { x1, y1, x2, y2, stroke: INK.soft, 'stroke-width': 1 });
}

/** The point of a rectangle that is nearest to the middle of another. */
function nearest(a: Rect, b: Rect): readonly [number, number] {
  const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
  return [clamp(b.x + b.width / 2, a.x, a.x + a.width), clamp(b.y + b.height / 2, a.y, a.y + a.height)];
}
