import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import type { OilSheet } from './oil-viscosity.ts';

/** L and H of ASTM D2270 by viscosity at 100 °C, thin ones first. */
export interface IndexRow {
  readonly at100Mm2S: number;
  readonly l: number;
  readonly h: number;
}

/** Up to here the standard's parabolas are known, mm²/s at 100 °C. */
export const INDEXED_TO_MM2_S = 70;

/**
 * Viscosity index: up to 100 VI = 100·(L − U)/(L − H), above it VI = (10^N − 1)/0.00715 + 100, N = lg(H/U)/lg Y;
 * L and H by straight lines in the table, and above it by the parabolas of the same standard.
 *
 * Source: ASTM D2270 (key D2270); the parabolas' coefficients from memory, checked where they meet the table and each other.
 * Valid: 2 to 70 mm²/s at 100 °C. Printed to whole numbers.
 * @throws UserError 'out-of-range' outside it.
 */
export function viscosityIndex(
  { at40Mm2S, at100Mm2S }: OilSheet,
  table: readonly IndexRow[],
): Calculation<{ readonly index: number; readonly l: number; readonly h: number }> {
  requireRange(
    { what: 'The viscosity at 100 °C', value: at100Mm2S, min: 2, max: INDEXED_TO_MM2_S, unit: 'mm²/s' },
    { what: 'The viscosity at 40 °C', value: at40Mm2S, min: at100Mm2S, max: 50_000, unit: 'mm²/s' },
  );
  const tabled = at100Mm2S <= (table.at(-1)?.at100Mm2S ?? 0);
  const { l, h } = tabled ? limits(at100Mm2S, table) : parabolas(at100Mm2S);
  const low = (100 * (l - at40Mm2S)) / (l - h);
  const n = Math.log10(h / at40Mm2S) / Math.log10(at100Mm2S);
  return {
    value: { l, h, index: low <= 100 ? low : (10 ** n - 1) / 0.00715 + 100 },
    assumptions: tabled ? [] : ['L and H above the table by the parabolas of ASTM D2270, from memory'],
    sources: ['D2270'],
    caveats: [],
  };
}

/** L = a·Y² + b·Y + c and H = d·Y² + e·Y + f up to a viscosity at 100 °C (key D2270, from memory). */
const PARABOLAS = [
  { upTo: 22, l: [0.97256, 5.25, -0.98], h: [0.24504, 7.416, -16.73] },
  { upTo: 28, l: [0.91413, 7.4759, -21.82], h: [0.20323, 9.1267, -34.23] },
  { upTo: 40, l: [0.87031, 9.7157, -50.77], h: [0.18411, 10.1015, -46.75] },
  { upTo: 55, l: [0.84703, 12.6752, -133.31], h: [0.17029, 11.4866, -80.62] },
  { upTo: INDEXED_TO_MM2_S, l: [0.85921, 11.1009, -83.19], h: [0.1713, 11.368, -76.94] },
] as const;

function parabolas(y: number): { readonly l: number; readonly h: number } {
  const row = PARABOLAS.find(({ upTo }) => y <= upTo);
  if (row === undefined) throw new RangeError(`no parabola of L and H reaches ${y}`);
  const at = ([square, linear, fixed]: readonly [number, number, number]) =>
    square * y ** 2 + linear * y + fixed;
  return { l: at(row.l), h: at(row.h) };
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
  range: '2 to 70 mm²/s at 100 °C; above 21 by the parabolas of the standard',
};
