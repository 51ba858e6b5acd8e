import { z } from 'zod';
import kindTable from '../../data/readings/kinds.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';

const bounds = z
  .tuple([z.number(), z.number()])
  .readonly()
  .refine(([min, max]) => min < max, 'the least must be below the most');

const Row = z.strictObject({
  name: z.string().regex(/^[a-z-]+(?: [a-z-]+)*$/),
  /** What people call it; a word may stand with several kinds, which its unit tells apart. */
  words: z.array(z.string().min(1)).min(1),
  /** How its value is typed. */
  field: z.enum([
    'pressure',
    'temperature',
    'voltage',
    'current',
    'speed',
    'length',
    'distance',
    'time',
    'ratio',
    'percent',
  ]),
  /** What it is kept in. */
  unit: z.enum(['kPa', 'degC', '1', 'lambda', 'V', 'A', 'rpm', 'mm', 'km', 'h']),
  /** What it is shown in unless it was typed in something else. */
  shown: z.enum(['bar', 'kPa', 'inHg', 'degC', 'percent', 'lambda', 'V', 'mA', 'rpm', 'mm', 'km', 'h']),
  /** In `shown`: beyond it a number is refused. */
  possible: bounds,
  /** In `shown`: beyond it a number is asked about once. */
  usual: bounds,
  /** What it belongs to one of, and is therefore named with a number. */
  place: z.enum(['cylinder', 'bearing', 'valve']).exactOptional(),
  /** It only grows, as a counter does. */
  grows: z.literal(true).exactOptional(),
  /** A fall is bad news even within limits. */
  falling: z.literal(true).exactOptional(),
  /** On which side of a common limit it is wrong, and not merely to be looked into. */
  grave: z.array(z.enum(['low', 'high'])).default([]),
  /** The name its common limits stand under, where it is another one. */
  common: z.string().exactOptional(),
  /** What to do before anything else when it is too low or too high. */
  first: z.strictObject({
    low: z.string().min(1),
    high: z.string().min(1),
    /** When it falls, and is still within its limits. */
    falling: z.string().min(1).exactOptional(),
  }),
});

/** A kind of reading that everybody knows. */
export type ReadingKind = Readonly<z.output<typeof Row>>;

const Table = z.object({ title: z.string(), note: z.string(), kinds: z.array(Row).min(1) });

/** Every built-in kind. */
export const readingKinds: readonly ReadingKind[] = readTable('readings/kinds.json', Table, kindTable).kinds;
refuseTwins(
  'readings/kinds.json',
  readingKinds.map(({ name }) => name),
);
