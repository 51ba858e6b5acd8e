/**
 * How late the sensor hears of what the engine does: the way of the gas, τ = τ₀ + τ₁/φ with φ the flow as a multiple of that at
 * 1000 rpm and 40 kPa, then the sensor's own lag of first order T.
 */
export interface Delay {
  readonly fixedS: number;
  readonly flowS: number;
  readonly lagS: number;
  /** How long the film of fuel on the walls is felt after a change of load. */
  readonly filmS: number;
  /** From the log itself, or the usual figures because its steps do not tell. */
  readonly from: 'log' | 'usual';
}

/** Common practice, no source: 0.4 s at idle down to 0.07 s at full load, and a wideband sensor in its usual place. */
export const USUAL_DELAY: Delay = { fixedS: 0.06, flowS: 0.22, lagS: 0.08, filmS: 0.4, from: 'usual' };

const REFERENCE_FLOW = 1000 * 40;

/** φ, kept off zero so that a stalled engine has a delay too. */
export const flowOf = (speedRpm: number, loadKPa: number): number =>
  Math.max(0.3, (speedRpm * loadKPa) / REFERENCE_FLOW);

export const delayAt = ({ fixedS, flowS }: Pick<Delay, 'fixedS' | 'flowS'>, flow: number): number =>
  fixedS + flowS / flow;

/** Looks back along a row of times, from where it looked last: the place of a moment, whole and part. */
export function placeInTime(timeS: Float64Array, from: number, momentS: number): number {
  let index = from;
  while (index > 0 && (timeS[index] ?? 0) > momentS) index--;
  const [before = 0, after = 0] = [timeS[index], timeS[index + 1]];
  if (!(after > before)) return index;
  return index + Math.min(1, Math.max(0, (momentS - before) / (after - before)));
}

/** A value between two readings. */
export function between(values: ArrayLike<number>, place: number): number {
  const index = Math.floor(place);
  const part = place - index;
  const low = values[index] ?? Number.NaN;
  if (part === 0) return low;
  return low + part * ((values[index + 1] ?? Number.NaN) - low);
}
