import { z } from 'zod';
import shapeTable from '../../data/fittings/adapter-shapes.json' with { type: 'json' };
import { readTable } from './read-table.ts';

const System = z.enum(['jic37', 'sae45', 'orb', 'iso6149', 'orfs', 'banjo', 'g', 'r', 'rc', 'npt', 'plain']);
const Seat = z.enum(['washer', 'cone60', 'taper']);

/** An end as the table writes it: `jic37 male`, `g female cone60`. */
const Pattern = z
  .string()
  .transform((text) => text.split(' '))
  .pipe(z.tuple([System, z.enum(['male', 'female'])], Seat))
  .transform(([system, gender, seat]) => ({ system, gender, seat }));

const Table = z.object({
  source: z.array(z.string().min(2)).min(1),
  ladder: z.array(z.int().positive()).min(2),
  metric_ports: z.array(z.strictObject({ thread: z.string(), dash: z.int().positive() })),
  shapes: z
    .array(z.strictObject({ name: z.string().min(3), a: Pattern, b: Pattern, apart: z.int().min(0).max(4) }))
    .min(1),
});

const table = readTable('fittings/adapter-shapes.json', Table, shapeTable);

/** Shapes in which the trade makes adapters. Common practice, no source. */
export const adapterTables = {
  shapes: table.shapes,
  ladder: table.ladder,
  metricPorts: new Map(table.metric_ports.map(({ thread, dash }) => [thread, dash])),
  source: table.source,
} as const;
