import type { Axes } from './axes.ts';
import type { Cell } from './cells.ts';

/** Cells beside each other that need a change of the same kind. */
export interface Region {
  readonly direction: 'richer' | 'leaner';
  readonly cells: number;
  readonly seconds: number;
  /** Smallest and largest change, as shares without sign. */
  readonly fromRatio: number;
  readonly toRatio: number;
  readonly loadKPa: readonly [number, number];
  readonly speedRpm: readonly [number, number];
}

/** Changes that are smaller than this, or than they are known, are not worth anybody's time. */
const WORTH_RATIO = 0.015;

export const isWorthwhile = ({ fullMultiplierRatio, uncertaintyRatio = 0 }: Cell): boolean =>
  fullMultiplierRatio !== undefined &&
  Math.abs(fullMultiplierRatio - 1) > Math.max(WORTH_RATIO, uncertaintyRatio);

/** Where the table is to be changed, the weightiest first: cells, how far off, how long they were driven, load counting double. */
export function regionsOf(cells: readonly (readonly Cell[])[], axes: Axes): readonly Region[] {
  const speeds = axes.speedRpm.length;
  const kindOf = (i: number, j: number): -1 | 0 | 1 => {
    const cell = cells[i]?.[j];
    if (cell === undefined || !isWorthwhile(cell)) return 0;
    return (cell.fullMultiplierRatio ?? 1) > 1 ? 1 : -1;
  };
  const seen = new Set<number>();
  const found: { readonly region: Region; readonly weight: number }[] = [];
  cells.forEach((row, i) => {
    row.forEach((_, j) => {
      const kind = kindOf(i, j);
      if (kind === 0 || seen.has(i * speeds + j)) return;
      const members: (readonly [number, number])[] = [];
      const waiting: (readonly [number, number])[] = [[i, j]];
      seen.add(i * speeds + j);
      for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
        members.push(next);
        const [a, b] = next;
        for (const [c, d] of [
          [a - 1, b],
          [a + 1, b],
          [a, b - 1],
          [a, b + 1],
        ] as const) {
          const mark = c * speeds + d;
          if (d < 0 || d >= speeds || seen.has(mark) || kindOf(c, d) !== kind) continue;
          seen.add(mark);
          waiting.push([c, d]);
        }
      }
      found.push(regionOf(members, kind, cells, axes));
    });
  });
  return found.sort((a, b) => b.weight - a.weight).map(({ region }) => region);
}

function regionOf(
  members: readonly (readonly [number, number])[],
  kind: 1 | -1,
  cells: readonly (readonly Cell[])[],
  axes: Axes,
): { readonly region: Region; readonly weight: number } {
  const changes = members.map(([i, j]) => Math.abs((cells[i]?.[j]?.fullMultiplierRatio ?? 1) - 1));
  const loads = members.map(([i]) => axes.loadKPa[i] ?? 0);
  const rpms = members.map(([, j]) => axes.speedRpm[j] ?? 0);
  const seconds = members.reduce((sum, [i, j]) => sum + (cells[i]?.[j]?.seconds ?? 0), 0);
  const weight = members.reduce((sum, [i], index) => {
    const load = axes.loadKPa[i] ?? 0;
    const underLoad = kind > 0 && load >= 100 ? 4 : 1;
    return (
      sum + (changes[index] ?? 0) * underLoad * Math.sqrt(cells[i]?.[members[index]?.[1] ?? 0]?.seconds ?? 0)
    );
  }, 0);
  return {
    weight,
    region: {
      direction: kind > 0 ? 'richer' : 'leaner',
      cells: members.length,
      seconds,
      fromRatio: Math.min(...changes),
      toRatio: Math.max(...changes),
      loadKPa: [Math.min(...loads), Math.max(...loads)],
      speedRpm: [Math.min(...rpms), Math.max(...rpms)],
    },
  };
}
