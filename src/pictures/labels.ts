import type { Rect } from './svg.ts';

/** Something to be named, and how much room its name takes. */
export interface Naming {
  readonly of: Rect;
  readonly width: number;
  readonly height: number;
}

const GAP = 4;
/** How finely the frame is searched where no place beside the thing is free. */
const STEP = 6;

/**
 * Finds a place for every name inside the frame that covers neither a thing nor another name: beside its thing where
 * there is room, else the nearest free place. Earlier ones choose first; the same input gives the same places.
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
    const spot = placesFor(name, frame).find(
      (place) => inside(place, frame) && !taken.some((other) => overlap(place, other)),
    );
    if (spot !== undefined) taken.push(spot);
    return spot;
  });
}

/** Shortest way between two rectangles; 0 when they touch. */
export function gapBetween(a: Rect, b: Rect): number {
  const across = Math.max(0, a.x - (b.x + b.width), b.x - (a.x + a.width));
  const down = Math.max(0, a.y - (b.y + b.height), b.y - (a.y + a.height));
  return Math.hypot(across, down);
}

function* placesFor({ of, width, height }: Naming, frame: Rect): Generator<Rect> {
  const size = { width, height };
  const middle = of.y + (of.height - height) / 2;
  const centre = of.x + (of.width - width) / 2;
  const [right, left] = [of.x + of.width + GAP, of.x - width - GAP];
  const [below, above] = [of.y + of.height + 2, of.y - height - 2];
  yield { x: right, y: middle, ...size };
  yield { x: left, y: middle, ...size };
  for (const y of [above, below]) {
    for (const x of [centre, of.x, of.x + of.width - width]) yield { x, y, ...size };
  }
  const free: Rect[] = [];
  for (let y = frame.y; y <= frame.y + frame.height - height; y += STEP) {
    for (let x = frame.x; x <= frame.x + frame.width - width; x += STEP) free.push({ x, y, ...size });
  }
  yield* free.sort((a, b) => gapBetween(a, of) - gapBetween(b, of) || a.y - b.y || a.x - b.x);
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
