import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import type { OilSheet } from './oil-viscosity.ts';

/** L and H of ASTM D2270 by viscosity at 100 °C, thin ones first. */
export interface IndexRow {
  readonly at100Mm2S: number;
  readonly l: number;
  readonly h: number;
}

/**
 * Viscosity index: up to 100 VI = 100·(L − U)/(L − H), above it VI = (10^N − 1)/0.00715 + 100, N = lg(H/U)/lg Y;
 * L and H by straight lines in the table.
 *
 * Source: ASTM D2270 (key D2270). Valid: 2 to 21 mm²/s at 100 °C, as far as the table was read. Printed to whole numbers.
 * @throws UserError 'out-of-range' outside it.
 */
export function viscosityIndex(
  { at40Mm2S, at100Mm2S }: OilSheet,
  table: readonly IndexRow[],
): Calculation<{ readonly index: number; readonly l: number; readonly h: number }> {
  requireRange(
    { what: 'The viscosity at 100 °C', value: at100Mm2S, min: 2, max: 21, unit: 'mm²/s' },
    { what: 'The viscosity at 40 °C', value: at40Mm2S, min: at100Mm2S, max: 50_000, unit: 'mm²/s' },
  );
  const { l, h } = limits(at100Mm2S, table);
  const low = (100 * (l - at40Mm2S)) / (l - h);
  const n = Math.log10(h / at40Mm2S) / Math.log10(at100Mm2S);
  return {
    value: { l, h, index: low <= 100 ? low : (10 ** n - 1) / 0.00715 + 100 },
    assumptions: [],
    sources: ['D2270'],
    caveats: [],
  };
}

function limits(y: number, table: readonly IndexRow[]): { readonly l: number; readonly h: number } {
  const next = table.findIndex(({ at100Mm2S }) => at100Mm2S >= y);
  const [low, high] = [table[Math.max(next, 1) - 1], table[Math.max(next, 1)]];
  if (low === undefined || high === undefined) throw new RangeError(`the table of L and H ends before ${y}`);
  const part = (y - low.at100Mm2S) / (high.at100Mm2S - low.at100Mm2S);
  return { l: low.l + part * (high.l - low.l), h: low.h + part * (high.h - low.h) };
}

export const viscosityIndexSheet: SumSheet = {
  title: 'Viscosity index',
  formula: 'VI = 100·(L − U)/(L − H) up to 100; VI = (10^N − 1)/0.00715 + 100, N = lg(H/U)/lg Y above',
  symbols: { 'U, Y': 'viscosity at 40 and 100 °C, mm²/s', 'L, H': 'of the table at Y, mm²/s' },
  sources: ['D2270'],
  range: '2 to 21 mm²/s at 100 °C',
};
