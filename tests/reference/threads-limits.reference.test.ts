import { describe, expect, it } from 'vitest';
import basics from '../../data/reference/threads/basic-diameters.json' with { type: 'json' };
import limits from '../../data/reference/threads/limits.json' with { type: 'json' };
import { threadCatalogue } from '../../src/calc/threads/catalogue.ts';
import type { Range, Thread } from '../../src/calc/threads/thread.ts';
import { unifiedLimits } from '../../src/calc/threads/unified.ts';
import { whitworthLimits } from '../../src/calc/threads/whitworth.ts';
import { threadTables } from '../../src/tables/threads.ts';

const threads = new Map(threadCatalogue(threadTables).map((thread) => [thread.id, thread]));

function named(id: string): Thread {
  const thread = threads.get(id);
  if (thread === undefined) throw new Error(`${id} is not in the tables`);
  return thread;
}

/** "M22" is written for the coarse pitch. */
const isoId = (d: number, p: number) => `M${d}x${p}`;

describe('basic diameters agree with the published tables', () => {
  it('has the tables to check against', () => {
    expect(basics.parallel_and_gauge_plane.length).toBeGreaterThan(230);
    expect(basics.npt).toHaveLength(10);
  });

  // Published to 0.001 mm; ISO 228 and ISO 7 print their own rounding of the Whitworth form, up to 0.001 mm off it.
  it.each(basics.parallel_and_gauge_plane)('$id ($source)', (row) => {
    const { basic } = named(row.id);
    expect(Math.abs(basic.majorMm - row.major_mm)).toBeLessThanOrEqual(0.00051);
    expect(Math.abs(basic.pitchDiameterMm - row.pitch_diameter_mm)).toBeLessThanOrEqual(0.0011);
    expect(Math.abs(basic.minorMm - row.minor_mm)).toBeLessThanOrEqual(0.0011);
  });

  // Printed to 0.01 mm.
  it.each(basics.npt)('$id small end and face ($source)', (row) => {
    const thread = named(row.id);
    expect(Math.abs(thread.limits.major.minMm - row.small_end_major_mm)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(thread.crest.male.above.toMm - row.major_at_l2_mm)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(thread.basic.minorMm - row.minor_at_face_mm)).toBeLessThanOrEqual(0.0051);
  });
});

describe('ISO 965-1 limits agree with the published 6g and 6H table', () => {
  it('has 35 sizes to check', () => expect(limits.iso965).toHaveLength(35));

  it.each(limits.iso965)('$designation outside, 6g', (row) => {
    const { limits: ours } = named(isoId(row.d_mm, row.P_mm));
    const published = row.external_6g_published;
    const within = published.decimals_in_source === 3 ? 0.00051 : 0.0051;
    expect(Math.abs(ours.major.maxMm - published.major_max)).toBeLessThanOrEqual(
      tolerated(row, 'major_max', within),
    );
    expect(Math.abs(ours.major.minMm - published.major_min)).toBeLessThanOrEqual(
      tolerated(row, 'major_min', within),
    );
    expect(Math.abs(rangeOf(ours.malePitch).maxMm - published.pitch_max)).toBeLessThanOrEqual(
      tolerated(row, 'external pitch_max', within),
    );
    expect(Math.abs(rangeOf(ours.malePitch).minMm - published.pitch_min)).toBeLessThanOrEqual(
      tolerated(row, 'external pitch_min', within),
    );
  });

  it.each(limits.iso965)('$designation inside, 6H', (row) => {
    const { limits: ours } = named(isoId(row.d_mm, row.P_mm));
    expect(Math.abs(ours.minor.minMm - row.internal_6H.minor_min)).toBeLessThanOrEqual(0.00051);
    expect(Math.abs(ours.minor.maxMm - row.internal_6H.minor_max)).toBeLessThanOrEqual(0.00051);
    expect(Math.abs(rangeOf(ours.femalePitch).minMm - row.internal_6H.pitch_min)).toBeLessThanOrEqual(
      0.00051,
    );
    if (row.disputed.length > 0) return; // M14x1.25: two tables against the rule of their own neighbours
    expect(Math.abs(rangeOf(ours.femalePitch).maxMm - row.internal_6H.pitch_max)).toBeLessThanOrEqual(0.0011);
  });

  it('leaves out one disputed figure and no more', () => {
    expect(
      limits.iso965.filter(({ disputed }) => disputed.length > 0).map(({ designation }) => designation),
    ).toEqual(['M14x1.25']);
  });
});

describe('ASME B1.1 formulas agree with the published 2A and 2B limits within 0.0001 in', () => {
  it('has 28 threads to check', () => expect(limits.asme_b1_1).toHaveLength(28));

  it.each(limits.asme_b1_1)('$designation', (row) => {
    const series = row.designation.split(' ')[1] ?? '';
    const ours = unifiedLimits({ majorIn: row.major_basic_in, tpi: row.tpi, series });
    const near = (value: number, printed: number, within = 0.000151) =>
      expect(Math.abs(value - printed)).toBeLessThanOrEqual(within);
    near(ours.majorMax, row.class_2A_in.major_max);
    near(ours.majorMin, row.class_2A_in.major_min);
    near(ours.malePitchMax, row.class_2A_in.pitch_max);
    near(ours.malePitchMin, row.class_2A_in.pitch_min);
    near(ours.femalePitchMin, row.class_2B_in.pitch_min);
    near(ours.femalePitchMax, row.class_2B_in.pitch_max);
    // From 1/4 in up the standard prints the minor diameter to 0.001 in.
    const printedTo = row.major_basic_in >= 0.25 ? 0.00061 : 0.000151;
    near(ours.minorMin, row.class_2B_in.minor_min, printedTo);
    near(ours.minorMax, row.class_2B_in.minor_max, printedTo);
  });
});

describe('pipe threads agree with ISO 228-1 and the taper ranges', () => {
  it.each(limits.iso228)('$designation', (row) => {
    const { limits: ours } = named(row.designation);
    expect(ours.major.maxMm).toBeCloseTo(row.external.major_max, 3);
    expect(ours.major.minMm).toBeCloseTo(row.external.major_min, 3);
    expect(rangeOf(ours.malePitch).minMm).toBeCloseTo(row.external.pitch_min_class_B, 3);
    expect(ours.minor.minMm).toBeCloseTo(row.internal.minor_min, 3);
    expect(ours.minor.maxMm).toBeCloseTo(row.internal.minor_max, 3);
    expect(rangeOf(ours.femalePitch).maxMm).toBeCloseTo(row.internal.pitch_max, 3);
  });

  it.each(limits.taper_caliper_ranges)('$designation along the thread', (row) => {
    const { limits: ours, basic } = named(row.designation);
    const [small, large] = row.external_major_range_mm;
    expect(Math.abs(ours.major.minMm - (small ?? 0))).toBeLessThanOrEqual(0.0056);
    expect(Math.abs(ours.major.maxMm - (large ?? 0))).toBeLessThanOrEqual(0.0056);
    expect(Math.abs(basic.minorMm - row.internal_minor_at_face_mm)).toBeLessThanOrEqual(0.0056);
  });
});

describe('Whitworth limits', () => {
  // BS 84 free class by formula, from memory; the ranges are those of the identify cases ic-048 to ic-050, in mm.
  it.each([
    { where: '1/2-12 BSW', majorIn: 0.5, tpi: 12, least: 12.43 },
    { where: '3/8-20 BSF', majorIn: 0.375, tpi: 20, least: 9.301 },
    { where: '1/2-26 brass thread', majorIn: 0.5, tpi: 26, least: 12.472 },
  ])('$where least major diameter', ({ majorIn, tpi, least }) => {
    expect(whitworthLimits({ majorIn, tpi }).major[0] * 25.4).toBeCloseTo(least, 2);
  });
});

function rangeOf(range: Range | undefined): Range {
  if (range === undefined) throw new Error('no pitch-diameter limits');
  return range;
}

/** Where the published table and the tabulated deviations disagree the row says which figure; there 0.011 mm is let pass. */
function tolerated(row: (typeof limits.iso965)[number], field: string, within: number): number {
  return row.disagreement.some((text) => text.includes(field)) ? 0.011 : within;
}
