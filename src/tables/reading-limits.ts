import { z } from 'zod';
import limitTable from '../../data/readings/limits.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';

/** Units the trade says these in, by the names they have in the table of units. */
const UNITS = [
  ...(['1', 'percent', 'lambda', 'mm', 'kg/m3', 'rpm', 'degC'] as const),
  ...(['psi', 'bar', 'kPa', 'inHg', 'V', 'mA'] as const),
] as const;

const figure = z.number().exactOptional();
const words = z.string().min(3);

const Row = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9-]+$/),
    /** What is read: `oil pressure`, `leak-down`. */
    kind: words,
    item: words,
    /** Where sound readings lie, limits included; from where on something is wrong; or a mark to tell readings apart by. */
    rule: z.enum(['between', 'warns', 'marks']),
    /** Conditions it holds under; none for all. */
    states: z
      .array(words)
      .default([])
      .refine((states) => states.toSorted().join() === states.join(), 'states go by the alphabet'),
    intake: z.enum(['natural', 'boosted', 'high boost']).exactOptional(),
    piston: z.enum(['cast', '4032', '2618']).exactOptional(),
    place: words.exactOptional(),
    /** What the figure is counted for. */
    per: z.literal('1000 rpm').exactOptional(),
    /** Over which a fall is counted. */
    minutes: z.number().positive().exactOptional(),
    min: figure,
    max: figure,
    at: figure,
    unit: z.enum(UNITS),
    source: z.array(z.string().min(2)).min(1),
    note: words.exactOptional(),
  })
  .refine(({ min, max, at }) => (min ?? max ?? at) !== undefined, 'it says no figure')
  .refine(({ min, max }) => min === undefined || max === undefined || min < max, 'min must be below max')
  .refine(({ rule, min, max }) => rule !== 'warns' || (min === undefined) !== (max === undefined), {
    message: 'a warning has one figure',
  });

/** What an engine's readings usually lie between; common practice where its source says so. */
export type ReadingLimit = Readonly<z.output<typeof Row>>;

const Table = z.object({ title: z.string(), note: z.string(), rows: z.array(Row).min(1) });

/** Every limit there is, in the units the trade says them in. */
export const readingLimits: readonly ReadingLimit[] = readTable(
  'readings/limits.json',
  Table,
  limitTable,
).rows;
refuseTwins(
  'readings/limits.json',
  readingLimits.map(({ id }) => id),
);

/** @throws Error for an id that is not in the table: a slip of ours. */
export function readingLimit(id: string): ReadingLimit {
  const found = readingLimits.find((row) => row.id === id);
  if (found === undefined) throw new Error(`data/readings/limits.json has no ${id}`);
  return found;
}
