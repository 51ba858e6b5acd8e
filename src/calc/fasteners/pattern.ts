import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';

export type Layout = 'circle' | 'rows';

/** Shares of the full torque, one round of the pattern each; common practice. */
export const STAGES: readonly number[] = [0.3, 0.7, 1];

/**
 * Order in which to tighten: across and across on a circle, from the middle outwards on two rows.
 *
 * Bolts on a circle are numbered round it; on two rows 1 to n/2 along the near row, then n/2 + 1 to n along the far one.
 * Source: common practice (key COMMON). Valid: 2 to 40 bolts, an even number on two rows.
 * @throws UserError 'out-of-range' outside it.
 */
export function tighteningOrder(joint: {
  readonly bolts: number;
  readonly layout: Layout;
}): Calculation<{ readonly order: readonly number[] }> {
  const { bolts, layout } = joint;
  requireRange({ what: 'The number of bolts', value: bolts, min: 2, max: 40, unit: '' });
  if (layout === 'rows' && bolts % 2 !== 0) {
    throw new UserError(
      'out-of-range',
      `Two rows take an even number of bolts, and ${bolts} is odd. Give ${bolts - 1} or ${bolts + 1}, or layout:circle; an odd bolt is tightened where its maker says.`,
    );
  }
  return {
    value: { order: layout === 'circle' ? aroundCircle(bolts) : alongRows(bolts / 2) },
    assumptions: [],
    sources: ['COMMON'],
    caveats: [],
  };
}

/** Pairs across, each next pair as far from those done as can be; with an odd number nearly across each time. */
function aroundCircle(bolts: number): readonly number[] {
  if (bolts % 2 === 1) {
    return Array.from({ length: bolts }, (_, turn) => ((turn * ((bolts - 1) / 2)) % bolts) + 1);
  }
  const half = bolts / 2;
  const done: number[] = [0];
  while (done.length < half) {
    const left = Array.from({ length: half }, (_, at) => at).filter((at) => !done.includes(at));
    // pairs repeat every half turn, so that the way round is counted both ways within it
    const gap = (at: number) =>
      Math.min(...done.map((other) => Math.min(Math.abs(at - other), half - Math.abs(at - other))));
    done.push(left.reduce((best, at) => (gap(at) > gap(best) ? at : best)));
  }
  return done.flatMap((at) => [at + 1, at + 1 + half]);
}

/** From the middle outwards, crossing over at each step. */
function alongRows(perRow: number): readonly number[] {
  const middle = (perRow - 1) / 2;
  const columns = Array.from({ length: perRow }, (_, at) => at).toSorted(
    (one, other) => Math.abs(one - middle) - Math.abs(other - middle) || one - other,
  );
  const rings = Map.groupBy(columns, (at) => Math.abs(at - middle));
  return [...rings.values()].flatMap(([left = 0, right = left]) =>
    left === right
      ? [left + 1, left + 1 + perRow]
      : [left + 1, right + 1 + perRow, right + 1, left + 1 + perRow],
  );
}

export const tighteningOrderSheet: SumSheet = {
  title: 'Tightening order and stages',
  formula: '30 %, 70 % and 100 % of the torque; across on a circle, from the middle outwards on two rows',
  symbols: { 'bolt 1': 'any on a circle; the left end of the near row on two rows' },
  sources: ['COMMON'],
  range: '2 to 40 bolts',
};
