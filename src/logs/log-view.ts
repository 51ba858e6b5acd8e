import type { Comparison } from '../calc/fuelling/compare.ts';
import type { Analysed } from './analyse.ts';

/** A log and what came of it, to be put into words and data. */
export interface LogView {
  readonly name: string;
  readonly analysed: Analysed;
  readonly capRatio: number;
  readonly comparison?: Comparison | undefined;
  readonly comparedWith?: string;
}
