import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import threadCommand, { threadReply } from '../../commands/thread.ts';
import cases from '../../data/reference/threads/identify-cases.json' with { type: 'json' };

/** The data outside checks read. */
const Data = z.object({
  candidates: z.array(
    z.object({
      designation: z.string(),
      probability: z.number(),
      fittings: z.array(z.string()),
      stands: z.boolean(),
    }),
  ),
  noneProbability: z.number(),
  ambiguous: z.boolean(),
});

const Case = z.object({
  id: z.string(),
  kind: z.enum(['external', 'internal']),
  measured_diameter_mm: z.number(),
  diameter_uncertainty_mm: z.number(),
  pitch_mm: z.number().optional(),
  tpi: z.number().optional(),
  span: z.object({ pitches: z.number(), length_mm: z.number() }).optional(),
  taper: z.enum(['unknown', 'parallel', 'tapered']),
  form_angle_deg: z.number().optional(),
  seat: z.string().optional(),
  expected: z.array(z.string()),
  expected_fittings: z.array(z.string()).optional(),
  fittings_sharing_thread: z.array(z.string()).optional(),
  expected_primary: z.string(),
  ambiguous: z.boolean(),
});
const read = z.array(Case).parse(cases);

type Row = z.output<typeof Case>;

const inches = (mm: number) => `${(mm / 25.4).toFixed(4)}in`;

/** The ways people write the same readings. */
const spellings: Readonly<Record<string, (row: Row) => string>> = {
  plain: (row) => `${row.measured_diameter_mm} x ${pitchOf(row)}`,
  units: ({ measured_diameter_mm: across, span, tpi, pitch_mm }) =>
    `${across}mm, ${span === undefined ? (tpi === undefined ? `${pitch_mm}mm` : `${tpi} tpi`) : `${span.length_mm}mm over ${span.pitches}`}`,
  comma: (row) => `${row.measured_diameter_mm} x ${pitchOf(row)}`.replaceAll('.', ','),
  inches: ({ measured_diameter_mm: across, span, tpi, pitch_mm }) =>
    `${inches(across)} x ${span === undefined ? (tpi === undefined ? `${pitch_mm}mm` : `${tpi}tpi`) : `${inches(span.length_mm)}/${span.pitches}`}`,
  'pitch first': (row) => `${pitchOf(row)} ${row.measured_diameter_mm} mm`,
};

function pitchOf({ span, tpi, pitch_mm }: Row): string {
  if (span !== undefined) return `${span.length_mm.toFixed(2)}/${span.pitches}`;
  return tpi === undefined ? `${pitch_mm}` : `${tpi}tpi`;
}

/** Only the readings are given; how far out a pitch could be is the method's own idea. */
function identify(row: Row, size = `${row.measured_diameter_mm} x ${pitchOf(row)}`): z.output<typeof Data> {
  const seat = seatOf(row.seat);
  const reply = threadReply({
    size,
    side: row.kind === 'external' ? 'male' : 'female',
    within: row.diameter_uncertainty_mm,
    ...(row.taper === 'unknown' ? {} : { taper: row.taper }),
    ...(row.form_angle_deg === undefined ? {} : { angle: row.form_angle_deg === 55 ? '55' : '60' }),
    ...(seat === undefined ? {} : { seat }),
  });
  return Data.parse(reply.data);
}

function seatOf(seen: string | undefined) {
  if (seen === undefined) return undefined;
  if (seen.includes('cone 37')) return 'cone37';
  if (seen.includes('cone 45')) return 'cone45';
  if (seen === 'O-ring on end face') return 'face-oring';
  if (seen === 'port with O-ring chamfer') return 'boss-oring';
  if (seen.startsWith('flat face')) return 'washer';
  throw new Error(`no such seat: ${seen}`);
}

describe('the 65 readings made up inside published limits', () => {
  it('are all there', () => {
    expect(read).toHaveLength(65);
    expect(threadCommand.description).not.toBe('');
  });

  it.each(read)('$id finds $expected', (row) => {
    const found = identify(row);
    const standing = found.candidates.filter(({ stands }) => stands).map(({ designation }) => designation);
    expect([...standing].sort()).toEqual([...row.expected].sort());
    expect(found.ambiguous).toBe(row.ambiguous);
    if (!row.ambiguous) expect(found.candidates[0]?.designation).toBe(row.expected_primary);
  });

  it.each(Object.entries(spellings))('give the same answer in the spelling "%s"', (_, spell) => {
    for (const row of read) {
      const found = identify(row, spell(row));
      const standing = found.candidates.filter(({ stands }) => stands).map(({ designation }) => designation);
      expect([...standing].sort(), `${row.id} as ${spell(row)}`).toEqual([...row.expected].sort());
    }
  });

  it.each(read.filter(({ expected_fittings }) => expected_fittings !== undefined))(
    '$id names the fitting by its seat: $expected_fittings',
    (row) => {
      const [best] = identify(row).candidates;
      expect([...(best?.fittings ?? [])].sort()).toEqual([...(row.expected_fittings ?? [])].sort());
    },
  );

  it.each(read.filter(({ fittings_sharing_thread }) => fittings_sharing_thread !== undefined))(
    '$id lists every fitting that shares the thread',
    (row) => {
      const mate = identify(row).candidates.find(({ designation }) => designation === row.expected_primary);
      expect(mate?.fittings).toEqual(expect.arrayContaining(row.fittings_sharing_thread ?? []));
    },
  );
});
