import type { Axes } from './axes.ts';
import { type Cell, judgeCells } from './cells.ts';
import { type Delay, USUAL_DELAY } from './delay.ts';
import type { Drive } from './drive.ts';
import { estimateDelay } from './estimate-delay.ts';
import { type Fit, fitMultipliers } from './fit.ts';
import { type Sorted, sortReadings, thinned } from './readings.ts';
import { type DropReason, screen } from './screen.ts';
import { suspect } from './suspect.ts';
import type { Suspicion } from './suspicion.ts';
import type { TargetAt } from './target.ts';

export interface FuellingQuestion {
  readonly drive: Drive;
  readonly axes: Axes;
  readonly targetAt: TargetAt;
  /** No cell is changed by more than this share in one pass. */
  readonly capRatio: number;
  /** Correct also what a leak or a misfire may have spoilt. */
  readonly correctSuspects?: boolean;
}

/** What a drive says of a fuel table. */
export interface FuellingResult {
  /** [load][speed], as the axes. */
  readonly cells: readonly (readonly Cell[])[];
  readonly delay: Delay;
  readonly droppedS: Readonly<Record<DropReason, number>>;
  readonly totalS: number;
  readonly usedS: number;
  readonly suspicions: readonly Suspicion[];
  readonly noiseRatio: number;
  readonly notes: readonly string[];
  /** Whether there was enough to say anything at all. */
  readonly usable: boolean;
}

/** Less steady running than this says nothing about an engine, s. */
const LEAST_USED_S = 5;
/** Readings enough to find the delay by; the last fit takes them all. */
const ROUGH = 40_000;

/**
 * The multipliers of a fuel table from a logged drive. Yields often, so that whoever runs it can do other things between; pure
 * otherwise.
 */
export function* fuelling({
  drive,
  axes,
  targetAt,
  capRatio,
  correctSuspects = false,
}: FuellingQuestion): Generator<void, FuellingResult> {
  const screened = yield* screen(drive);
  let delay = USUAL_DELAY;
  let sorted: Sorted = yield* sortReadings(drive, screened, axes, delay, targetAt);
  const nothing = usedIn(sorted) < LEAST_USED_S;
  let fit: Fit | undefined;
  if (!nothing) {
    let rough = yield* fitMultipliers(thinned(sorted.readings, ROUGH), axes);
    for (let pass = 0; pass < 2; pass++) {
      delay = yield* estimateDelay(drive, screened, axes, rough, targetAt);
      if (delay.from === 'usual' && pass === 0) break;
      sorted = yield* sortReadings(drive, screened, axes, delay, targetAt);
      if (pass === 0) rough = yield* fitMultipliers(thinned(sorted.readings, ROUGH), axes);
    }
    fit = yield* fitMultipliers(sorted.readings, axes);
  }
  const droppedS = { ...sorted.droppedS };
  let usedS = usedIn(sorted);
  if (fit !== undefined) {
    const { weight } = fit;
    const outliersS = sorted.readings.seconds.reduce(
      (sum, each, r) => sum + ((weight[r] ?? 1) < 0.05 ? each : 0),
      0,
    );
    droppedS.outlier += outliersS;
    usedS -= outliersS;
  }
  yield;
  const suspicions = fit === undefined ? [] : suspect({ axes, sorted, fit });
  yield;
  const usable = fit !== undefined && usedS >= LEAST_USED_S;
  return {
    cells: judgeCells({
      axes,
      sorted,
      fit: usable ? fit : undefined,
      suspicions: correctSuspects ? [] : suspicions,
      capRatio,
    }),
    delay,
    droppedS,
    totalS: sorted.totalS,
    usedS,
    suspicions,
    noiseRatio: fit?.noiseRatio ?? Number.NaN,
    notes: screened.notes,
    usable,
  };
}

const usedIn = ({ readings }: Sorted): number => readings.seconds.reduce((sum, each) => sum + each, 0);
