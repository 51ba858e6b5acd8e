/** Sums of a weighted least-squares fit as they grow: A = Σ w·x·xᵀ, b = Σ w·x·y. Only the lower half of A is kept right. */
export interface NormalEquations {
  readonly size: number;
  readonly matrix: Float64Array;
  readonly right: Float64Array;
}

export const emptyEquations = (size: number): NormalEquations => ({
  size,
  matrix: new Float64Array(size * size),
  right: new Float64Array(size),
});

/** Adds one reading: its few unknowns, how much of each, the reading and its weight. */
export function addReading(
  { size, matrix, right }: NormalEquations,
  unknowns: Int32Array,
  shares: Float64Array,
  used: number,
  reading: number,
  weight: number,
): void {
  for (let k = 0; k < used; k++) {
    const row = unknowns[k] ?? 0;
    const weighted = weight * (shares[k] ?? 0);
    right[row] = (right[row] ?? 0) + weighted * reading;
    for (let l = 0; l < used; l++) {
      const column = unknowns[l] ?? 0;
      if (column > row) continue;
      const place = row * size + column;
      matrix[place] = (matrix[place] ?? 0) + weighted * (shares[l] ?? 0);
    }
  }
}

/**
 * Cholesky's factor of A, in place of its lower half. Yields between rows, so that a big table holds nobody up.
 *
 * @throws RangeError when A is not positive definite: an unknown that nothing speaks of.
 */
export function* factor({
  size,
  matrix,
}: Pick<NormalEquations, 'size' | 'matrix'>): Generator<void, Float64Array> {
  const lower = matrix.slice();
  for (let i = 0; i < size; i++) {
    if (i % 48 === 0) yield;
    const rowI = i * size;
    for (let j = 0; j <= i; j++) {
      const rowJ = j * size;
      let sum = lower[rowI + j] ?? 0;
      for (let k = 0; k < j; k++) sum -= (lower[rowI + k] ?? 0) * (lower[rowJ + k] ?? 0);
      if (i === j) {
        if (!(sum > 0)) throw new RangeError(`the equations say nothing of unknown ${i}`);
        lower[rowI + i] = Math.sqrt(sum);
      } else {
        lower[rowI + j] = sum / (lower[rowJ + j] ?? 1);
      }
    }
  }
  return lower;
}

/** Solves A·x = b with Cholesky's factor. */
export function solve(lower: Float64Array, size: number, right: Float64Array): Float64Array {
  const x = right.slice();
  for (let i = 0; i < size; i++) {
    let sum = x[i] ?? 0;
    for (let k = 0; k < i; k++) sum -= (lower[i * size + k] ?? 0) * (x[k] ?? 0);
    x[i] = sum / (lower[i * size + i] ?? 1);
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = x[i] ?? 0;
    for (let k = i + 1; k < size; k++) sum -= (lower[k * size + i] ?? 0) * (x[k] ?? 0);
    x[i] = sum / (lower[i * size + i] ?? 1);
  }
  return x;
}

/** The diagonal of A⁻¹, which is each unknown's variance. Yields between columns. */
export function* inverseDiagonal(lower: Float64Array, size: number): Generator<void, Float64Array> {
  const diagonal = new Float64Array(size);
  const column = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    if (k % 16 === 0) yield;
    // column k of L⁻¹; its entries from k on are all that is not 0
    for (let i = k; i < size; i++) {
      let sum = i === k ? 1 : 0;
      for (let j = k; j < i; j++) sum -= (lower[i * size + j] ?? 0) * (column[j] ?? 0);
      column[i] = sum / (lower[i * size + i] ?? 1);
    }
    let variance = 0;
    for (let i = k; i < size; i++) variance += (column[i] ?? 0) ** 2;
    diagonal[k] = variance;
  }
  return diagonal;
}
