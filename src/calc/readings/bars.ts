import { fromBase } from '../units/convert.ts';
import { sayNumber } from '../units/say.ts';
import { dimensions, type UnitId, units } from '../units/table.ts';
import type { Standing } from './limit.ts';

/** What is drawn as a bar for each cylinder or place, in the base unit of its dimension. */
export interface BarsInWords {
  /** What is measured: "Compression". */
  readonly what: string;
  /** The unit it is shown in. */
  readonly unit: UnitId;
  readonly values: readonly number[];
  readonly standings: readonly Standing[];
  /** What stands before each bar; cylinders count from 1 without it. */
  readonly labels?: readonly string[];
  readonly seconds?: readonly number[] | undefined;
  readonly secondCalled?: string;
  readonly limit?: { readonly value: number; readonly words: string };
}

/** One bar as it is drawn, its words without their unit. */
export interface Bar {
  readonly label: string;
  readonly value: number;
  readonly words: string;
  readonly standing: Standing;
  readonly second?: { readonly value: number; readonly words: string };
}

/** Decimals that tell neighbouring readings apart: one in twenty of the largest, to its third figure. */
const FIGURES = 3;

/** The bars in the unit they are shown in, all to the same decimal. */
export function barsOf(given: BarsInWords): {
  readonly axis: string;
  readonly bars: readonly Bar[];
  readonly limit?: { readonly value: number; readonly words: string };
} {
  const { what, unit, values, seconds, secondCalled, standings, labels, limit } = given;
  const shown = (base: number): number => fromBase(base, unit);
  const largest = Math.max(...values.map((each) => Math.abs(shown(each))));
  const decimals = Math.max(0, FIGURES - 1 - Math.floor(Math.log10(largest || 1)));
  const words = (base: number): string => sayNumber(Number(shown(base).toFixed(decimals)), 12, decimals);
  const { sign, dimension } = units[unit];
  return {
    axis: `${what}, ${sign === '' ? dimensions[dimension].called : sign}`,
    bars: values.map((value, index) => {
      const second = seconds?.[index];
      return {
        label: labels?.[index] ?? `${index + 1}`,
        value: shown(value),
        words: words(value),
        standing: standings[index] ?? 'ok',
        ...(second === undefined
          ? {}
          : { second: { value: shown(second), words: `${secondCalled ?? ''} ${words(second)}`.trim() } }),
      };
    }),
    ...(limit === undefined ? {} : { limit: { value: shown(limit.value), words: limit.words } }),
  };
}
