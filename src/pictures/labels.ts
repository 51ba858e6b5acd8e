import { range } from 'd3-array';
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
 * When that leaves none for one of them, it chooses before the others, once. A name for which there is nothing even
 * then is not placed, and its rectangle is undefined.
 */
export function placeNames(
  names: readonly Naming[],
  things: readonly Rect[],
  frame: Rect,
): readonly (Rect | undefined)[] {
  const first = inTurn(names, things, frame);
  const left = names.filter((name) => !first.has(name));
  const spots = left.length === 0 ? first : inTurn([...new Set([...left, ...names])], things, frame);
  return names.map((name) => spots.get(name));
}

function inTurn(names: readonly Naming[], things: readonly Rect[], frame: Rect): ReadonlyMap<Naming, Rect> {
  const spots = new Map<Naming, Rect>();
  for (const name of names) {
    const taken = [...things, ...spots.values()];
    const isFree = ({ rect }: Place): boolean =>
      inside(rect, frame) && !taken.some((other) => overlap(rect, other));
    const isClear = (place: Place): boolean => isFree(place) && !misleads(place, name.of, things);
    const near = besideIt(name);
    // the far places are many: they are only looked at when no near one will do
    const spot =
      near.find(isClear) ??
      furtherOff(name, frame).find(isClear) ??
      near.find(isFree) ??
      furtherOff(name, frame).find(isFree);
    if (spot !== undefined) spots.set(name, spot.rect);
  }
  return spots;
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

/** Right of it, left of it, above and below. */
function besideIt({ of, width, height }: Naming): readonly Place[] {
  const at = (x: number, y: number): Rect => ({ x, y, width, height });
  const middle = of.y + (of.height - height) / 2;
  const rows = [of.y - height - CLOSE, of.y + of.height + CLOSE];
  return [
    { rect: at(of.x + of.width + GAP, middle), beside: true },
    { rect: at(of.x - width - GAP, middle), beside: true },
    ...rows.flatMap((y) =>
      [0.5, 0, 1].map((share) => ({ rect: at(of.x + (of.width - width) * share, y), beside: false })),
    ),
  ];
}

/** Every place of a grid, the nearest first. */
function furtherOff({ of, width, height }: Naming, frame: Rect): readonly Place[] {
  return range(frame.y, frame.y + frame.height - height, STEP)
    .flatMap((y) =>
      range(frame.x, frame.x + frame.width - width, STEP).map((x) => {
        const rect = { x, y, width, height };
        return { rect, beside: false, away: gapBetween(rect, of) };
      }),
    )
    .sort((a, b) => a.away - b.away || a.rect.y - b.rect.y || a.rect.x - b.rect.x);
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
