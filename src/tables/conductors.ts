import { z } from 'zod';
import conductorTable from '../../data/electrics/conductors.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';

const Conductor = z
  .strictObject({
    area_mm2: z.number().positive().max(1000),
    plain_ohm_per_km: z.number().positive().max(100),
    tinned_ohm_per_km: z.number().positive().max(100),
    source: z.array(z.string().min(2)).min(1),
  })
  .refine((row) => row.plain_ohm_per_km < row.tinned_ohm_per_km, 'tinned copper is the worse of the two')
  .transform((row) => ({
    areaMm2: row.area_mm2,
    plainOhmPerKm: row.plain_ohm_per_km,
    tinnedOhmPerKm: row.tinned_ohm_per_km,
    source: row.source,
  }));

/** Flexible copper conductors of IEC 60228 class 5, thin ones first. */
export const conductors = readTable(
  'electrics/conductors.json',
  z.object({ conductors: z.array(Conductor).min(1) }),
  conductorTable,
).conductors.toSorted((one, other) => one.areaMm2 - other.areaMm2);

refuseTwins(
  'electrics/conductors.json',
  conductors.map(({ areaMm2 }) => `${areaMm2} mm²`),
);
