import type { Axes } from './axes.ts';
import type { Fit } from './fit.ts';
import { LAG_WEIGHTS, type Sorted } from './readings.ts';
import type { Suspicion } from './suspicion.ts';

/** Why a cell is left as it is. */
export type LeftAlone = 'no-data' | 'too-little' | 'air-leak' | 'misfire';

/** What a drive says of one cell of a fuel table. */
export interface Cell {
  /** What the cell is to be multiplied by now; exactly 1 where it is left alone. */
  readonly multiplierRatio: number;
  /** What would bring it there in one go; undefined where nothing is claimed. */
  readonly fullMultiplierRatio?: number;
  /** The true multiplier lies within this either way, 19 times out of 20. */
  readonly uncertaintyRatio?: number;
  /** Seconds of readings it rests on. */
  readonly seconds: number;
  readonly leftAlone?: LeftAlone;
  /** Held back by the cap. */
  readonly capped: boolean;
}

/** A cell must rest on this much, and be known this well, before it is changed. */
const LEAST_S = 2;
const MOST_UNCERTAIN = 0.03;
/** Two standard deviations and a little: 19 out of 20 also where few readings carry it. */
const TWO_SIDED = 2.1;
/** What no statistics see: film, lag and delay that are only nearly right, more so where neighbours differ. Found on model engines. */
const MODEL_DEVIATION = 0.003;
const ROUGH_SHARE = 0.03;
const FILM_SHARE = 0.5;

export function judgeCells({
  axes,
  sorted,
  fit,
  suspicions,
  capRatio,
}: {
  readonly axes: Axes;
  readonly sorted: Sorted;
  readonly fit: Fit | undefined;
  readonly suspicions: readonly Suspicion[];
  readonly capRatio: number;
}): readonly (readonly Cell[])[] {
  const speeds = axes.speedRpm.length;
  const local = fit === undefined ? undefined : localNoise(sorted, fit, speeds);
  return axes.loadKPa.map((_, i) =>
    axes.speedRpm.map((_, j): Cell => {
      const cell = i * speeds + j;
      const seconds = fit?.seconds[cell] ?? 0;
      const left = (leftAlone: LeftAlone): Cell => ({
        multiplierRatio: 1,
        seconds,
        leftAlone,
        capped: false,
      });
      const full = fit?.multiplier[cell] ?? Number.NaN;
      if (fit === undefined || seconds < 0.5 || Number.isNaN(full))
        return left(seconds < 0.5 ? 'no-data' : 'too-little');
      const suspicion = suspicions.find(({ cells }) => cells.includes(cell));
      if (suspicion !== undefined) return left(suspicion.kind);
      const noisier = Math.max(1, (local?.[cell] ?? 0) / fit.noiseRatio);
      const uncertaintyRatio =
        TWO_SIDED *
        Math.hypot(
          (fit.deviation[cell] ?? 1) * noisier,
          MODEL_DEVIATION,
          ROUGH_SHARE * roughness(fit, i, j, speeds),
          FILM_SHARE * (fit.moved[cell] ?? 0),
        );
      if (seconds < LEAST_S || uncertaintyRatio > MOST_UNCERTAIN) return left('too-little');
      const multiplierRatio = Math.min(1 + capRatio, Math.max(1 - capRatio, full));
      return {
        multiplierRatio,
        fullMultiplierRatio: full,
        uncertaintyRatio,
        seconds,
        capped: multiplierRatio !== full,
      };
    }),
  );
}

/** How unlike its neighbours a cell is, at most. */
function roughness({ multiplier }: Fit, i: number, j: number, speeds: number): number {
  const own = multiplier[i * speeds + j] ?? 1;
  const beside = [
    multiplier[(i - 1) * speeds + j],
    multiplier[(i + 1) * speeds + j],
    j > 0 ? multiplier[i * speeds + j - 1] : undefined,
    j + 1 < speeds ? multiplier[i * speeds + j + 1] : undefined,
  ];
  return beside.reduce<number>((most, other) => Math.max(most, Math.abs((other || own) - own)), 0);
}

/** Standard deviation of what is left of the readings around each cell, drawn towards the whole drive's where they are few. */
function localNoise({ readings }: Sorted, fit: Fit, speeds: number): Float64Array {
  const cells = fit.multiplier.length;
  const squares = new Float64Array(cells);
  const shares = new Float64Array(cells);
  for (let r = 0; r < readings.count; r++) {
    const robust = (fit.weight[r] ?? 0) * (readings.trust[r] ?? 0);
    const [x, y] = [readings.load[0][r] ?? 0, readings.speed[0][r] ?? 0];
    const cell = Math.round(x) * speeds + Math.round(y);
    const share = robust * LAG_WEIGHTS[0];
    squares[cell] = (squares[cell] ?? 0) + share * (fit.residual[r] ?? 0) ** 2;
    shares[cell] = (shares[cell] ?? 0) + share;
  }
  const prior = 10 * fit.together;
  return squares.map((sum, cell) =>
    Math.sqrt((sum + prior * fit.noiseRatio ** 2) / ((shares[cell] ?? 0) + prior)),
  );
}
