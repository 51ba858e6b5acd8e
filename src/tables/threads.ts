import { z } from 'zod';
import isoMetric from '../../data/threads/iso-metric.json' with { type: 'json' };
import iso7 from '../../data/threads/iso7.json' with { type: 'json' };
import iso228 from '../../data/threads/iso228.json' with { type: 'json' };
import iso965 from '../../data/threads/iso965-tolerances.json' with { type: 'json' };
import npt from '../../data/threads/npt.json' with { type: 'json' };
import unified from '../../data/threads/unified.json' with { type: 'json' };
import whitworth from '../../data/threads/whitworth.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';

const mm = z.number().positive().max(200);
const inch = z.number().positive().max(8);
const um = z.number().int().positive().max(2000);
const tpi = z.number().min(3).max(80);
const id = z.string().min(2);
const source = z.array(z.string().min(2)).min(1);

const IsoMetricRow = z
  .strictObject({ id, nominal_mm: mm, pitch_mm: mm, series: z.enum(['coarse', 'fine']), source })
  .refine((row) => row.id === `M${row.nominal_mm}x${row.pitch_mm}`, 'the name does not match size and pitch')
  .transform((row) => ({
    id: row.id,
    nominalMm: row.nominal_mm,
    pitchMm: row.pitch_mm,
    series: row.series,
    source: row.source,
  }));

const CrestRow = z
  .strictObject({ pitch_mm: mm, es_um: um, td_um: um, td1_um: um })
  .transform((row) => ({ pitchMm: row.pitch_mm, esUm: row.es_um, tdUm: row.td_um, td1Um: row.td1_um }));

const PitchDiameterRow = z
  .strictObject({ over_mm: mm, to_mm: mm, pitch_mm: mm, td2_um: um, female_td2_um: um })
  .transform((row) => ({
    overMm: row.over_mm,
    toMm: row.to_mm,
    pitchMm: row.pitch_mm,
    td2Um: row.td2_um,
    femaleTd2Um: row.female_td2_um,
  }));

const InchRow = z
  .strictObject({ id, nominal: z.string().min(1), major_in: inch, tpi, series: z.string().min(2), source })
  .refine(
    (row) => row.id === `${row.nominal}-${row.tpi} ${row.series}`,
    'the name does not match size and pitch',
  )
  .transform(({ major_in, ...row }) => ({ ...row, majorIn: major_in }));

const Iso228Row = z
  .strictObject({
    id,
    nominal: z.string().min(1),
    tpi,
    major_mm: mm,
    pitch_diameter_mm: mm,
    minor_mm: mm,
    major_tolerance_mm: mm,
    pitch_tolerance_a_mm: mm,
    pitch_tolerance_b_mm: mm,
    minor_tolerance_mm: mm,
    same_as: z.array(id),
  })
  .transform((row) => ({
    id: row.id,
    nominal: row.nominal,
    tpi: row.tpi,
    majorMm: row.major_mm,
    pitchDiameterMm: row.pitch_diameter_mm,
    minorMm: row.minor_mm,
    majorToleranceMm: row.major_tolerance_mm,
    pitchToleranceAMm: row.pitch_tolerance_a_mm,
    pitchToleranceBMm: row.pitch_tolerance_b_mm,
    minorToleranceMm: row.minor_tolerance_mm,
    sameAs: row.same_as,
  }));

const Iso7Row = z
  .strictObject({
    id,
    nominal: z.string().min(1),
    tpi,
    gauge_major_mm: mm,
    gauge_length_mm: mm,
    gauge_tolerance_mm: mm,
    beyond_gauge_mm: mm,
    useful_length_mm: mm,
    same_as: z.array(id),
  })
  .transform((row) => ({
    id: row.id,
    nominal: row.nominal,
    tpi: row.tpi,
    gaugeMajorMm: row.gauge_major_mm,
    gaugeLengthMm: row.gauge_length_mm,
    gaugeToleranceMm: row.gauge_tolerance_mm,
    beyondGaugeMm: row.beyond_gauge_mm,
    usefulLengthMm: row.useful_length_mm,
    sameAs: row.same_as,
  }));

const NptRow = z
  .strictObject({
    id,
    nominal: z.string().min(1),
    tpi,
    pipe_od_in: inch,
    e0_in: inch,
    e1_in: inch,
    l1_in: inch,
    l2_in: inch,
  })
  .transform((row) => ({
    id: row.id,
    nominal: row.nominal,
    tpi: row.tpi,
    pipeOdIn: row.pipe_od_in,
    e0In: row.e0_in,
    e1In: row.e1_in,
    l1In: row.l1_in,
    l2In: row.l2_in,
  }));

const rows = <Row extends z.ZodType>(row: Row) => z.object({ threads: z.array(row).min(1) });

/** The published thread tables of data/threads, checked when the program starts. */
export const threadTables = {
  isoMetric: readTable('threads/iso-metric.json', rows(IsoMetricRow), isoMetric).threads,
  iso965: (({ crest, pitch_diameter }) => ({ crest, pitchDiameter: pitch_diameter }))(
    readTable(
      'threads/iso965-tolerances.json',
      z.object({ crest: z.array(CrestRow).min(1), pitch_diameter: z.array(PitchDiameterRow).min(1) }),
      iso965,
    ),
  ),
  unified: readTable('threads/unified.json', rows(InchRow), unified).threads,
  iso228: readTable('threads/iso228.json', rows(Iso228Row), iso228).threads,
  iso7: readTable('threads/iso7.json', rows(Iso7Row), iso7).threads,
  npt: readTable('threads/npt.json', rows(NptRow), npt).threads,
  whitworth: readTable('threads/whitworth.json', rows(InchRow), whitworth).threads,
} as const;

refuseTwins(
  'threads',
  [
    ...threadTables.isoMetric,
    ...threadTables.unified,
    ...threadTables.iso228,
    ...threadTables.iso7,
    ...threadTables.npt,
    ...threadTables.whitworth,
  ].map((row) => row.id),
);
