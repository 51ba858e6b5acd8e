import { type Iso965Table, type IsoMetricRow, isoMetricThread } from './iso-metric.ts';
import { type Iso7Row, type Iso228Row, iso7Thread, iso228Thread, type NptRow, nptThread } from './pipe.ts';
import type { Thread } from './thread.ts';
import { type UnifiedRow, unifiedThread } from './unified.ts';
import { type WhitworthRow, whitworthThread } from './whitworth.ts';

/** The published tables, one list per standard. */
export interface ThreadTables {
  readonly isoMetric: readonly IsoMetricRow[];
  readonly iso965: Iso965Table;
  readonly unified: readonly UnifiedRow[];
  readonly iso228: readonly Iso228Row[];
  readonly iso7: readonly Iso7Row[];
  readonly npt: readonly NptRow[];
  readonly whitworth: readonly WhitworthRow[];
}

/** Every thread of the tables with its dimensions worked out. */
export function threadCatalogue(tables: ThreadTables): readonly Thread[] {
  return [
    ...tables.isoMetric.map((row) => isoMetricThread(row, tables.iso965)),
    ...tables.unified.map(unifiedThread),
    ...tables.iso228.map(iso228Thread),
    ...tables.iso7.map(iso7Thread),
    ...tables.npt.map(nptThread),
    ...tables.whitworth.map(whitworthThread),
  ];
}
