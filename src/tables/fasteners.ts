import { z } from 'zod';
import classTable from '../../data/fasteners/classes.json' with { type: 'json' };
import frictionTable from '../../data/fasteners/frictions.json' with { type: 'json' };
import headTable from '../../data/fasteners/heads.json' with { type: 'json' };
import areaTable from '../../data/fasteners/stress-areas.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';

/** 1 ksi in MPa, exact to what is printed: 1000 lbf over a square inch. */
const MPA_PER_KSI = 6.894757293168361;
const MM2_PER_IN2 = 645.16;

const source = z.array(z.string().min(2)).min(1);
const stress = z.number().positive().max(2000);

const ClassRow = z
  .strictObject({
    id: z.string().min(2),
    standard: z.string().min(5),
    over_mm: z.number().min(0).max(100),
    to_mm: z.number().positive().max(100),
    unit: z.enum(['MPa', 'ksi']),
    tensile: stress,
    yield: stress,
    proof: stress.nullable(),
    source,
  })
  .refine((row) => row.over_mm < row.to_mm, 'the span of diameters is empty')
  .refine(
    (row) => row.yield < row.tensile && (row.proof ?? 0) < row.yield,
    'proof, yield and tensile strength are out of order',
  )
  .transform((row) => {
    const factor = row.unit === 'ksi' ? MPA_PER_KSI : 1;
    return {
      id: row.id,
      standard: row.standard,
      overMm: row.over_mm,
      toMm: row.to_mm,
      tensileMpa: row.tensile * factor,
      yieldMpa: row.yield * factor,
      proofMpa: row.proof === null ? undefined : row.proof * factor,
      source: row.source,
    };
  });

const FrictionRow = z
  .strictObject({
    id: z.enum(['dry-black', 'dry', 'oiled', 'cadmium', 'moly']),
    nut_factor: z.number().min(0.05).max(0.5),
    name: z.string().min(3),
    source,
  })
  .transform(({ nut_factor, ...row }) => ({ ...row, nutFactor: nut_factor }));

const HeadRow = z
  .strictObject({ nominal_mm: z.number(), face_mm: z.number(), hole_mm: z.number(), source })
  .refine((row) => row.nominal_mm < row.hole_mm && row.hole_mm < row.face_mm, 'the hole does not lie between')
  .transform((row) => ({ nominalMm: row.nominal_mm, meanMm: (row.face_mm + row.hole_mm) / 2 }));

const Areas = z
  .object({
    unified: z.array(z.strictObject({ thread: z.string(), area_in2: z.number().positive(), source })),
    metric: z.array(z.strictObject({ thread: z.string(), area_mm2: z.number().positive(), source })),
  })
  .transform(({ unified, metric }) => [
    ...metric.map((row) => ({ threadId: row.thread, areaMm2: row.area_mm2 })),
    ...unified.map((row) => ({ threadId: row.thread, areaMm2: row.area_in2 * MM2_PER_IN2 })),
  ]);

/** Classes and grades of bolts; one with several rows changes at a diameter. */
export const boltClasses = readTable(
  'fasteners/classes.json',
  z.object({ classes: z.array(ClassRow).min(1) }),
  classTable,
).classes;

/** Nut factors by state of the thread. */
export const frictions = readTable(
  'fasteners/frictions.json',
  z.object({ frictions: z.array(FrictionRow).min(1) }),
  frictionTable,
).frictions;

/** Published stress areas by thread, to hold the computed ones against. */
export const publishedAreas: ReadonlyMap<string, number> = new Map(
  readTable('fasteners/stress-areas.json', Areas, areaTable).map(({ threadId, areaMm2 }) => [
    threadId,
    areaMm2,
  ]),
);

/** Mean diameter on which a hexagon head rubs, by nominal diameter. */
export const headMeans: ReadonlyMap<number, number> = new Map(
  readTable('fasteners/heads.json', z.object({ heads: z.array(HeadRow).min(1) }), headTable).heads.map(
    ({ nominalMm, meanMm }) => [nominalMm, meanMm],
  ),
);

refuseTwins(
  'fasteners/classes.json',
  boltClasses.map(({ id, overMm }) => `${id} over ${overMm} mm`),
);
refuseTwins(
  'fasteners/frictions.json',
  frictions.map(({ id }) => id),
);
