import type { Cell } from './cells.ts';

/** How far a table was off before and is now, over the cells that both drives speak of. */
export interface Comparison {
  readonly cells: number;
  /** Root mean square of what was and is still to be changed, as shares. */
  readonly beforeRatio: number;
  readonly afterRatio: number;
  readonly nearer: number;
  readonly further: number;
  /** No more different than the two are uncertain. */
  readonly alike: number;
}

/** Undefined when the two drives have no cell in common. */
export function compareDrives(
  before: readonly (readonly Cell[])[],
  after: readonly (readonly Cell[])[],
): Comparison | undefined {
  let [cells, was, is, nearer, further] = [0, 0, 0, 0, 0];
  after.forEach((row, i) => {
    row.forEach((cell, j) => {
      const [then, now] = [before[i]?.[j]?.fullMultiplierRatio, cell.fullMultiplierRatio];
      if (then === undefined || now === undefined) return;
      const [offThen, offNow] = [Math.abs(then - 1), Math.abs(now - 1)];
      const unsure = Math.hypot(before[i]?.[j]?.uncertaintyRatio ?? 0, cell.uncertaintyRatio ?? 0);
      cells++;
      was += offThen ** 2;
      is += offNow ** 2;
      if (offThen - offNow > unsure) nearer++;
      else if (offNow - offThen > unsure) further++;
    });
  });
  if (cells === 0) return undefined;
  return {
    cells,
    beforeRatio: Math.sqrt(was / cells),
    afterRatio: Math.sqrt(is / cells),
    nearer,
    further,
    alike: cells - nearer - further,
  };
}
