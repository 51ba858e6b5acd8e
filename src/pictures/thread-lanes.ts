import { extent } from 'd3-array';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { Rect } from './svg.ts';
import type { ThreadBand, ThreadPictureData } from './thread-data.ts';

export interface Scales {
  readonly across: ScaleLinear<number, number>;
  readonly up: ScaleLinear<number, number>;
}

/** Room round what is shown, as a share of it, and the least that is shown, as a share of the size itself. */
const AIR = 0.12;
/** Without a pitch many threads lie under one another: their names need the room beside them. */
const AIR_BESIDE_STRIP = 0.3;
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
    across: scaleLinear(
      withAir(diameters, LEAST_SHOWN.diameter, pitch === undefined ? AIR_BESIDE_STRIP : AIR),
      [plot.x, plot.x + plot.width],
    ),
    up: scaleLinear(withAir(pitches, LEAST_SHOWN.pitch, AIR), [plot.y + plot.height, plot.y]),
  };
}

function withAir(values: readonly number[], least: number, air: number): [number, number] {
  const [low = 0, high = 1] = extent(values);
  const middle = (low + high) / 2;
  const half = Math.max(((high - low) / 2) * (1 + 2 * air), (middle * least) / 2);
  return [middle - half, middle + half];
}

/** A band with its rectangle on the sheet. */
export interface PlacedBand {
  readonly band: ThreadBand;
  readonly rect: Rect;
}

/** Bands of one pitch: the height of that pitch on the sheet, and the lanes they lie in. */
interface Group {
  readonly y: number;
  readonly lanes: readonly (readonly ThreadBand[])[];
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
  const tall = Math.max(LOWEST, Math.min(TALLEST, ...roomBetween(groups)));
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

/** How tall a lane may be for two stacks, one above the other, not to touch; only those that could are asked. */
function roomBetween(groups: readonly Group[]): readonly number[] {
  return groups.flatMap((one, index) =>
    groups.slice(index + 1).flatMap((other) => {
      const meet = one.lanes.flat().some((band) => other.lanes.flat().some((each) => !apart(band, each)));
      const lanes = (one.lanes.length + other.lanes.length) / 2;
      return meet ? [Math.abs(one.y - other.y) / lanes - LANE_GAP] : [];
    }),
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
