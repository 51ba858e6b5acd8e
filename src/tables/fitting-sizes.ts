import { z } from 'zod';
import dashTable from '../../data/fittings/dash-sizes.json' with { type: 'json' };
import sealTable from '../../data/fittings/seal-sizes.json' with { type: 'json' };
import { fittings } from './fittings.ts';
import { readTable, refuseTwins } from './read-table.ts';

const source = z.array(z.string().min(2)).min(1);
const mm = z.number().positive().max(100);
const inch = z.number().positive().max(4);

const Seals = z.object({
  o_rings: z.array(z.strictObject({ fitting: z.string(), o_ring: z.string().min(3), source })),
  sealing_rings: z.array(
    z.strictObject({
      thread: z.string(),
      rings: z
        .array(
          z
            .strictObject({ bore_mm: mm, outside_mm: mm, thickness_mm: mm })
            .refine((ring) => ring.bore_mm < ring.outside_mm, 'the bore is not inside the outside'),
        )
        .min(1),
      source,
    }),
  ),
});

const Dash = z.object({
  source,
  sizes: z.array(
    z
      .strictObject({ dash: z.int().min(2).max(32), by_bore_in: inch, by_tube_in: inch.optional() })
      .transform((row) => ({ dash: row.dash, byBoreIn: row.by_bore_in, byTubeIn: row.by_tube_in })),
  ),
});

const seals = readTable('fittings/seal-sizes.json', Seals, sealTable);
const dash = readTable('fittings/dash-sizes.json', Dash, dashTable);

/** O-rings by fitting, where the fitting tables have none. */
export const oRings: ReadonlyMap<string, { readonly name: string; readonly source: readonly string[] }> =
  new Map(seals.o_rings.map((row) => [row.fitting, { name: row.o_ring, source: row.source }]));

/** Sealing rings by thread, beside those of the hollow bolts. */
export const sealingRings: ReadonlyMap<
  string,
  {
    readonly rings: readonly {
      readonly boreMm: number;
      readonly outsideMm: number;
      readonly thicknessMm: number;
    }[];
    readonly source: readonly string[];
  }
> = new Map(
  seals.sealing_rings.map(({ thread, rings, source: keys }) => [
    thread,
    {
      rings: rings.map((ring) => ({
        boreMm: ring.bore_mm,
        outsideMm: ring.outside_mm,
        thicknessMm: ring.thickness_mm,
      })),
      source: keys,
    },
  ]),
);

export const dashSizes = dash.sizes;
export const dashSource: readonly string[] = dash.source;

refuseTwins('fittings/seal-sizes.json', [
  ...seals.o_rings.map((row) => row.fitting),
  ...seals.sealing_rings.map((row) => row.thread),
]);
refuseTwins(
  'fittings/dash-sizes.json',
  dash.sizes.map((row) => String(row.dash)),
);
const known = new Set(fittings.map(({ id }) => id));
for (const id of oRings.keys()) {
  if (!known.has(id)) throw new Error(`data/fittings/seal-sizes.json: no such fitting: ${id}`);
}
