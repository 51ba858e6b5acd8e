import type { Rect } from './svg.ts';

/** Something to be named, and how much room its name takes. */
export interface Naming {
  readonly of: Rect;
  readonly width: number;
  readonly height: number;
}

/** Between a name and what it names: beside it, and above or below. */
const GAP = 4;
const CLOSE = 2;
/** How finely the frame is searched where no place beside the thing is free. */
const STEP = 6;

/**
 * Finds a place for every name inside the frame that covers neither a thing nor another name: beside its thing where
 * there is room, else the nearest free place, and never closer to another thing as long as that can be helped.
 * Earlier ones choose first; the same input gives the same places.
 *
 * A name for which nothing is left is not placed, and its rectangle is undefined.
 */
export function placeNames(
  names: readonly Naming[],
  things: readonly Rect[],
  frame: Rect,
): readonly (Rect | undefined)[] {
  const taken: Rect[] = [...things];
  return names.map((name) => {
    const free = [...placesFor(name, frame)].filter(
      ({ rect }) => inside(rect, frame) && !taken.some((other) => overlap(rect, other)),
    );
    const { rect: spot } = free.find((place) => !misleads(place, name.of, things)) ?? free[0] ?? {};
    if (spot !== undefined) taken.push(spot);
    return spot;
  });
}

interface Place {
  readonly rect: Rect;
  /** In one row with what it names. */
  readonly beside: boolean;
}

/** Whether a name there would be taken for another thing's; one beside its thing only for a thing of the same row. */
function misleads({ rect, beside }: Place, of: Rect, things: readonly Rect[]): boolean {
  const own = gapBetween(rect, of);
  const middle = rect.y + rect.height / 2;
  const inRow = ({ y, height }: Rect): boolean => y < middle && middle < y + height;
  return things.some(
    (other) => other !== of && (!beside || inRow(other)) && gapBetween(rect, other) < own + GAP,
  );
}

/** Shortest way between two rectangles; 0 when they touch. */
export function gapBetween(a: Rect, b: Rect): number {
  const across = Math.max(0, a.x - (b.x + b.width), b.x - (a.x + a.width));
  const down = Math.max(0, a.y - (b.y + b.height), b.y - (a.y + a.height));
  return Math.hypot(across, down);
}

function* placesFor({ of, width, height }: Naming, frame: Rect): Generator<Place> {
  const at = (x: number, y: number): Rect => ({ x, y, width, height });
  const middle = of.y + (of.height - height) / 2;
  yield { rect: at(of.x + of.width + GAP, middle), beside: true };
  yield { rect: at(of.x - width - GAP, middle), beside: true };
  for (const y of [of.y - height - CLOSE, of.y + of.height + CLOSE]) {
    for (const share of [0.5, 0, 1]) yield { rect: at(of.x + (of.width - width) * share, y), beside: false };
  }
  const grid: Rect[] = [];
  for (let y = frame.y; y <= frame.y + frame.height - height; y += STEP) {
    for (let x = frame.x; x <= frame.x + frame.width - width; x += STEP) grid.push(at(x, y));
  }
  grid.sort((a, b) => gapBetween(a, of) - gapBetween(b, of) || a.y - b.y || a.x - b.x);
  for (const rect of grid) yield { rect, beside: false };
}

function inside(a: Rect, frame: Rect): boolean {
  return (
    a.x >= frame.x &&
    a.y >= frame.y &&
    a.x + a.width <= frame.x + frame.width &&
    a.y + a.height <= frame.y + frame.height
  );
}

export function overlap(a: Rect, b: Rect): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}
