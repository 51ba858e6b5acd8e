import { INK } from './sheet.ts';
import { element, type Rect } from './svg.ts';

/** A filled box holds, a dashed and empty one does not: the filling says it without the colour. */
export type Standing = 'holds' | 'misses';

const styleOf = (standing: Standing) =>
  standing === 'holds'
    ? { fill: INK.blue, 'fill-opacity': 0.28, stroke: INK.blue, 'stroke-width': 2 }
    : {
        fill: INK.paper,
        'fill-opacity': 0.6,
        stroke: INK.soft,
        'stroke-width': 1.25,
        'stroke-dasharray': '4 3',
      };

/** What lies between two values. */
export const box = ({ x, y, width, height }: Rect, standing: Standing): string =>
  element('rect', { x, y, width, height, ...styleOf(standing) });

/** What lies between two values and grows from the first to the second. */
export function wedge({ x, y, width, height }: Rect, standing: Standing): string {
  const thin = height * 0.3;
  const points = [
    [x, y + thin],
    [x + width, y],
    [x + width, y + height],
    [x, y + height - thin],
  ];
  return element('polygon', {
    points: points.map((point) => point.map((each) => each.toFixed(2)).join(',')).join(' '),
    'stroke-linejoin': 'round',
    ...styleOf(standing),
  });
}

/** Least reach of a cross's arm, so that a very exact reading is still seen. */
const LEAST_ARM = 4;
const CAP = 4;

/** A reading and how far out it could be either way, as a cross with capped arms. Reaches are in sheet units. */
export function cross(
  at: { readonly x: number; readonly y: number },
  reach: { x: number; y: number },
): string {
  const [dx, dy] = [Math.max(reach.x, LEAST_ARM), Math.max(reach.y, LEAST_ARM)];
  const { x, y } = at;
  const d = [
    `M${x - dx} ${y}H${x + dx}M${x} ${y - dy}V${y + dy}`,
    `M${x - dx} ${y - CAP}v${2 * CAP}M${x + dx} ${y - CAP}v${2 * CAP}`,
    `M${x - CAP} ${y - dy}h${2 * CAP}M${x - CAP} ${y + dy}h${2 * CAP}`,
  ].join('');
  return [
    element('path', { d: shortPath(d), stroke: INK.paper, 'stroke-width': 5, fill: 'none' }),
    element('path', { d: shortPath(d), stroke: INK.vermilion, 'stroke-width': 2.25, fill: 'none' }),
    element('circle', { cx: x, cy: y, r: 3.5, fill: INK.vermilion }),
  ].join('');
}

/** The room a cross takes. */
export function crossRoom(
  at: { readonly x: number; readonly y: number },
  reach: { x: number; y: number },
): Rect {
  const [dx, dy] = [Math.max(reach.x, LEAST_ARM) + 2, Math.max(reach.y, LEAST_ARM) + 2];
  return { x: at.x - dx, y: at.y - dy, width: 2 * dx, height: 2 * dy };
}

/** One value known and the other not: a strip over the whole height, its middle drawn through. */
export function strip({ x, y, width, height }: Rect): string {
  const middle = x + width / 2;
  return [
    element('rect', { x, y, width, height, fill: INK.vermilion, 'fill-opacity': 0.16 }),
    element('line', {
      x1: middle,
      y1: y,
      x2: middle,
      y2: y + height,
      stroke: INK.vermilion,
      'stroke-width': 2.25,
    }),
  ].join('');
}

const shortPath = (d: string): string =>
  d.replace(/\d+\.\d+/g, (digits) => `${Math.round(Number(digits) * 100) / 100}`);
