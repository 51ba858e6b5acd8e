import { extent } from 'd3-array';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { ThreadBand, ThreadPictureData } from './thread-picture.ts';
import type { Rect } from './svg.ts';

export interface Scales {
  readonly across: ScaleLinear<number, number>;
  readonly up: ScaleLinear<number, number>;
}

/** Room round what is shown, as a share of it, and the least that is shown, as a share of the size itself. */
const AIR = 0.12;
const LEAST_SHOWN = { diameter: 0.03, pitch: 0.3 };

/** Scales that hold every band and the reading with what it could be out by, with some air round them. */
export function scalesFor({ bands, diameter, pitch }: ThreadPictureData, plot: Rect): Scales {
  const diameters = [
    diameter.mm - diameter.plusMinusMm,
    diameter.mm + diameter.plusMinusMm,
    ...bands.flatMap(({ fromMm, toMm }) => [fromMm, toMm]),
  ];
  const pitches = [
    ...bands.map(({ pitchMm }) => pitchMm),
    ...(pitch === undefined ? [] : [pitch.mm - pitch.plusMinusMm, pitch.mm + pitch.plusMinusMm]),
  ];
  return {
    across: scaleLinear(withAir(diameters, LEAST_SHOWN.diameter), [plot.x, plot.x + plot.width]),
    up: scaleLinear(withAir(pitches, LEAST_SHOWN.pitch), [plot.y + plot.height, plot.y]),
  };
}

function withAir(values: readonly number[], least: number): [number, number] {
  const [low = 0, high = 1] = extent(values);
  const middle = (low + high) / 2;
  const half = Math.max(((high - low) / 2) * (1 + 2 * AIR), (middle * least) / 2);
  return [middle - half, middle + half];
}

/** A band with its rectangle on the sheet. */
export interface PlacedBand {
  readonly band: ThreadBand;
  readonly rect: Rect;
}

const TALLEST = 18;
const LOWEST = 5;
const LANE_GAP = 3;

/**
 * Puts every band at the height of its pitch. Bands of one pitch that overlap lie in lanes, stacked round that height;
 * their thickness says nothing, a published pitch being one number.
 */
export function placeBands(bands: readonly ThreadBand[], { across, up }: Scales): readonly PlacedBand[] {
  const groups = [...Map.groupBy(bands, ({ pitchMm }) => pitchMm.toFixed(4)).values()].map((group) => ({
    y: up(group[0]?.pitchMm ?? 0),
    lanes: lanesOf(group),
  }));
  groups.sort((a, b) => a.y - b.y);
  const height = groups.reduce((lowest, { y, lanes }, index) => {
    const before = groups[index - 1];
    if (before === undefined) return lowest;
    const share = (y - before.y) / ((lanes.length + before.lanes.length) / 2);
    return Math.min(lowest, share - LANE_GAP);
  }, TALLEST);
  const tall = Math.max(LOWEST, height);
  return groups.flatMap(({ y, lanes }) =>
    lanes.flatMap((lane, index) =>
      lane.map((band) => ({
        band,
        rect: {
          x: across(band.fromMm),
          y: y + (index - (lanes.length - 1) / 2) * (tall + LANE_GAP) - tall / 2,
          width: Math.max(across(band.toMm) - across(band.fromMm), 2),
          height: tall,
        },
      })),
    ),
  );
}

function lanesOf(bands: readonly ThreadBand[]): readonly (readonly ThreadBand[])[] {
  const lanes: ThreadBand[][] = [];
  for (const band of bands) {
    const free = lanes.find((lane) => lane.every((other) => apart(band, other)));
    if (free === undefined) lanes.push([band]);
    else free.push(band);
  }
  return lanes;
}

const apart = (a: ThreadBand, b: ThreadBand): boolean => a.toMm < b.fromMm || b.toMm < a.fromMm;
