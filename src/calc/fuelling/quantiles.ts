/** Looked at among so many values at most. */
const SAMPLE = 20_000;

/** Values below which the given shares of all values lie; of a long row every so many-th is looked at. NaN is left out. */
export function quantiles(values: ArrayLike<number>, shares: readonly number[]): readonly number[] {
  const every = Math.max(1, Math.floor(values.length / SAMPLE));
  const looked: number[] = [];
  for (let index = 0; index < values.length; index += every) {
    const value = values[index];
    if (value !== undefined && Number.isFinite(value)) looked.push(value);
  }
  if (looked.length === 0) return [];
  const sorted = Float64Array.from(looked).sort();
  return shares.map(
    (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN,
  );
}

/** Robust standard deviation of values about zero: 1.4826 times the median of what they come to. Key HUBER. */
export function robustScale(values: ArrayLike<number>): number {
  const every = Math.max(1, Math.floor(values.length / SAMPLE));
  const sizes: number[] = [];
  for (let index = 0; index < values.length; index += every)
    sizes.push(Math.abs(values[index] ?? Number.NaN));
  return 1.4826 * (quantiles(sizes, [0.5])[0] ?? 0);
}
