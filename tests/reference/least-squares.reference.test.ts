import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import {
  addReading,
  emptyEquations,
  factor,
  inverseDiagonal,
  solve,
} from '../../src/calc/fuelling/normal-equations.ts';
import { chanceFrom } from '../support/random.ts';

/** Runs a sum that may stop on the way, to its end. */
function whole<Result>(sum: Generator<void, Result>): Result {
  for (let step = sum.next(); ; step = sum.next()) if (step.done === true) return step.value;
}

/** Readings of a table of `size` cells, each between two neighbours, with noise; the same for the same seed. */
function readingsOf(size: number, seed: number) {
  const chance = chanceFrom(seed);
  const random = (): number => chance.below(1_000_000) / 1_000_000;
  const equations = emptyEquations(size);
  const rows: number[][] = [];
  const values: number[] = [];
  for (let reading = 0; reading < size * 12; reading++) {
    const cell = reading % (size - 1);
    const share = random();
    const value = 1 + 0.1 * Math.sin(cell) + 0.02 * (random() - 0.5);
    const weight = 0.2 + random();
    addReading(equations, Int32Array.of(cell, cell + 1), Float64Array.of(1 - share, share), 2, value, weight);
    const row = new Array<number>(size).fill(0);
    row[cell] = Math.sqrt(weight) * (1 - share);
    row[cell + 1] = Math.sqrt(weight) * share;
    rows.push(row);
    values.push(Math.sqrt(weight) * value);
  }
  return { equations, x: new Matrix(rows), y: Matrix.columnVector(values) };
}

/** Held against ml-matrix 6.15.1, a linear algebra library of another make, on the same readings. */
describe('the normal equations of a fuel table', () => {
  it.each([3, 16, 64, 144])('give the solution and the variances of the library, for %i cells', (size) => {
    const { equations, x, y } = readingsOf(size, size);
    const normal = x.transpose().mmul(x);
    const decomposition = new CholeskyDecomposition(normal);
    const theirs = decomposition.solve(x.transpose().mmul(y)).to1DArray();
    const inverse = decomposition.solve(Matrix.eye(size));
    const lower = whole(factor(equations));
    const ours = solve(lower, size, equations.right);
    const variances = whole(inverseDiagonal(lower, size));
    for (let cell = 0; cell < size; cell++) {
      expect(ours[cell]).toBeCloseTo(theirs[cell] ?? Number.NaN, 9);
      expect(variances[cell]).toBeCloseTo(inverse.get(cell, cell), 9);
    }
  });

  it('are refused where nothing speaks of a cell', () => {
    expect(() => whole(factor(emptyEquations(2)))).toThrow('the equations say nothing of unknown 0');
  });
});
