import { z } from 'zod';
import banjo from '../../data/threads/fittings-banjo.json' with { type: 'json' };
import flare from '../../data/threads/fittings-flare.json' with { type: 'json' };
import oRing from '../../data/threads/fittings-oring.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';
import { threadTables } from './threads.ts';

const source = z.array(z.string().min(2)).min(1);
const mm = z.number().positive().max(200);
const KindName = z.enum(['jic37', 'an37', 'sae45', 'orb', 'iso6149', 'orfs', 'banjo']);
const Kind = z.strictObject({
  kind: KindName,
  name: z.string().min(2),
  standard: z.string().min(2),
  seat: z.enum(['cone37', 'cone45', 'face-oring', 'boss-oring', 'washer']),
});

const Fitting = z
  .strictObject({
    id: z.string().min(3),
    thread: z.string().min(2),
    kind: KindName,
    source,
    dash: z.number().int().min(2).max(32).optional(),
    tube_od_in: mm.optional(),
    o_ring: z.string().optional(),
    washers: z.array(z.strictObject({ bore_mm: mm, outside_mm: mm, thickness_mm: mm })).optional(),
    washer_source: source.optional(),
    spanner_mm: mm.optional(),
    cross_hole_mm: mm.optional(),
    bore_mm: mm.optional(),
  })
  .transform((row) => ({
    id: row.id,
    threadId: row.thread,
    kind: row.kind,
    dash: row.dash,
    tubeOdIn: row.tube_od_in,
    oRing: row.o_ring,
    washers: (row.washers ?? []).map((ring) => ({
      boreMm: ring.bore_mm,
      outsideMm: ring.outside_mm,
      thicknessMm: ring.thickness_mm,
    })),
    spannerMm: row.spanner_mm,
    source: row.source,
    washerSource: row.washer_source ?? [],
  }));

const Table = z.object({ kinds: z.array(Kind).min(1), fittings: z.array(Fitting).min(1) });

const files = [
  readTable('threads/fittings-flare.json', Table, flare),
  readTable('threads/fittings-oring.json', Table, oRing),
  readTable('threads/fittings-banjo.json', Table, banjo),
];

export type FittingKind = z.output<typeof Kind>;
export type Fitting = z.output<typeof Fitting>;

export const fittingKinds: ReadonlyMap<string, FittingKind> = new Map(
  files.flatMap(({ kinds }) => kinds.map((kind) => [kind.kind, kind] as const)),
);

/** Tube ends, ports and hollow bolts, each with the thread it uses. */
export const fittings: readonly Fitting[] = files.flatMap((file) => file.fittings);

refuseTwins(
  'threads/fittings',
  fittings.map(({ id }) => id),
);
const threadIds = new Set([...threadTables.isoMetric, ...threadTables.unified].map(({ id }): string => id));
for (const { id, threadId, kind } of fittings) {
  if (!threadIds.has(threadId))
    throw new Error(`data/threads/fittings: ${id} names a thread of no table: ${threadId}`);
  if (!fittingKinds.has(kind)) throw new Error(`data/threads/fittings: ${id} is of an unknown kind: ${kind}`);
}
