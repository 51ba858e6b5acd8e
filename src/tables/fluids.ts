import { z } from 'zod';
import brakeTable from '../../data/fluids/brake-fluids.json' with { type: 'json' };
import glycolTable from '../../data/fluids/glycol.json' with { type: 'json' };
import gradeTable from '../../data/fluids/oil-grades.json' with { type: 'json' };
import indexTable from '../../data/fluids/viscosity-index.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';

const source = z.array(z.string().min(2)).min(1);
const celsius = z.number().min(-80).max(300);
const viscosity = z.number().positive().max(100_000);

const Curve = z
  .strictObject({
    basis: z.enum(['mass', 'volume']),
    points: z.array(z.tuple([z.number().min(0).max(1), celsius])).min(2),
    source,
  })
  .refine(
    ({ points }) => points.every(([share], at) => at === 0 || share > (points[at - 1]?.[0] ?? 1)),
    'the shares do not rise',
  )
  .transform(({ points, ...curve }) => ({
    ...curve,
    points: points.map(([shareRatio, temperatureC]) => ({ shareRatio, temperatureC })),
  }));

const GlycolRow = z
  .strictObject({
    id: z.enum(['ethylene', 'propylene']),
    name: z.string().min(5),
    density_kg_m3: z.number().min(900).max(1200),
    freezing: Curve,
    boiling: Curve,
  })
  .transform(({ density_kg_m3, ...row }) => ({ ...row, densityKgM3: density_kg_m3 }));

const Standard = z
  .strictObject({ name: z.string(), freezing_most_c: celsius, boiling_least_c: celsius, source })
  .transform((row) => ({
    name: row.name,
    freezingMostC: row.freezing_most_c,
    boilingLeastC: row.boiling_least_c,
    source: row.source,
  }));

const HotRow = z
  .strictObject({
    grade: z.number().int(),
    least_mm2_s: viscosity,
    below_mm2_s: viscosity,
    least_high_shear_mpa_s: viscosity,
    least_high_shear_with_thick_mpa_s: viscosity,
    source,
  })
  .refine((row) => row.least_mm2_s < row.below_mm2_s, 'the span is empty')
  .transform((row) => ({
    grade: row.grade,
    leastMm2S: row.least_mm2_s,
    belowMm2S: row.below_mm2_s,
    leastHighShearMpaS: row.least_high_shear_mpa_s,
    leastHighShearWithThickMpaS: row.least_high_shear_with_thick_mpa_s,
  }));

const ColdRow = z
  .strictObject({
    grade: z.number().int(),
    cranking_mpa_s: viscosity,
    cranking_c: celsius,
    pumping_mpa_s: viscosity,
    pumping_c: celsius,
    least_mm2_s: viscosity,
    source,
  })
  .transform((row) => ({
    grade: row.grade,
    crankingMpaS: row.cranking_mpa_s,
    crankingC: row.cranking_c,
    pumpingMpaS: row.pumping_mpa_s,
    pumpingC: row.pumping_c,
    leastMm2S: row.least_mm2_s,
  }));

const BrakeRow = z
  .strictObject({ id: z.string().min(4), dry_c: celsius, wet_c: celsius, source })
  .refine((row) => row.wet_c < row.dry_c, 'wet fluid boils sooner')
  .transform((row) => ({ id: row.id, dryC: row.dry_c, wetC: row.wet_c }));

const coolants = readTable(
  'fluids/glycol.json',
  z.object({ standard: Standard, glycols: z.array(GlycolRow).min(1) }),
  glycolTable,
);

/** Glycols that coolant is made from. */
export const glycols = coolants.glycols;
/** What the standard asks of engine coolant at half and half. */
export const coolantStandard = coolants.standard;

/** SAE J300: winter grades and hot grades, thin ones first. */
export const oilGrades = readTable(
  'fluids/oil-grades.json',
  z.object({ cold: z.array(ColdRow).min(1), hot: z.array(HotRow).min(1) }),
  gradeTable,
);

/** ASTM D2270 table 1, thin oils first. */
export const indexRows = readTable(
  'fluids/viscosity-index.json',
  z.object({ rows: z.array(z.tuple([viscosity, viscosity, viscosity])).min(2) }),
  indexTable,
).rows.map(([at100Mm2S, l, h]) => ({ at100Mm2S, l, h }));

/** Brake fluids by grade. */
export const brakeFluids = readTable(
  'fluids/brake-fluids.json',
  z.object({ fluids: z.array(BrakeRow).min(1) }),
  brakeTable,
).fluids;

refuseTwins(
  'fluids/glycol.json',
  glycols.map(({ id }) => id),
);
refuseTwins(
  'fluids/brake-fluids.json',
  brakeFluids.map(({ id }) => id),
);
