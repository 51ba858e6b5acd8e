import { describe, expect, it } from 'vitest';
import { gapBetween, overlap, placeNames } from '../../../src/pictures/labels.ts';

const frame = { x: 0, y: 0, width: 200, height: 100 };
const thing = { x: 80, y: 40, width: 20, height: 20 };
const name = { of: thing, width: 50, height: 16 };

describe('a name', () => {
  it('stands to the right of its thing where there is room', () => {
    expect(placeNames([name], [thing], frame)[0]).toMatchObject({ x: 104, y: 42 });
  });

  it('goes to the left at the right edge, and above where both sides are taken', () => {
    const atEdge = { ...thing, x: 170 };
    expect(placeNames([{ ...name, of: atEdge }], [atEdge], frame)[0]?.x).toBe(116);
    const walls = [
      { x: 102, y: 40, width: 98, height: 20 },
      { x: 0, y: 40, width: 78, height: 20 },
    ];
    const spot = placeNames([name], [thing, ...walls], frame)[0];
    expect(spot?.y).toBeLessThan(40);
  });

  it('does not stand between two things of a row where it could be taken for the other’s', () => {
    const other = { x: 160, y: 40, width: 20, height: 20 };
    const spot = placeNames([name], [thing, other], frame)[0];
    expect(spot?.x).toBe(26);
  });

  it('is not placed when nothing is free, and covers nothing otherwise', () => {
    expect(placeNames([name], [frame], frame)).toEqual([undefined]);
    const names = Array.from({ length: 8 }, () => ({ ...name }));
    const spots = placeNames(names, [thing], frame).flatMap((spot) => spot ?? []);
    expect(spots.length).toBeGreaterThan(5);
    for (const [index, spot] of spots.entries()) {
      expect(overlap(spot, thing)).toBe(false);
      for (const other of spots.slice(index + 1)) expect(overlap(spot, other)).toBe(false);
    }
  });
});

describe('the gap between rectangles', () => {
  it('is 0 when they touch and the shortest way otherwise', () => {
    expect(gapBetween(thing, { x: 100, y: 40, width: 5, height: 5 })).toBe(0);
    expect(gapBetween(thing, { x: 103, y: 64, width: 5, height: 5 })).toBe(5);
  });
});
