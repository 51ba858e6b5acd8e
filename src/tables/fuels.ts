import { z } from 'zod';
import table from '../../data/fuels/fuels.json' with { type: 'json' };
import { readTable, refuseTwins } from './read-table.ts';

const source = z.array(z.string().min(2)).min(1);
const identity = {
  id: z.string().min(2),
  name: z.string().min(2),
  aliases: z.array(z.string().min(2)),
  source,
};
const atoms = z.number().min(0).max(100);

const Fuel = z
  .strictObject({
    ...identity,
    carbon: atoms,
    hydrogen: atoms,
    oxygen: atoms,
    nitrogen: atoms,
    density_kg_m3: z.number().min(50).max(1300),
    calorific_kj_per_kg: z.number().min(10_000).max(130_000),
    viscosity_mm2_s: z.number().min(0.1).max(10).optional(),
    alcohol: z.boolean(),
    liquid: z.boolean(),
    printed_afr: z.number().min(0.5).max(40).optional(),
    printed_afr_source: source.optional(),
    note: z.string().min(3).optional(),
  })
  .refine(
    (row) => (row.printed_afr === undefined) === (row.printed_afr_source === undefined),
    'a printed ratio needs its source',
  );
const BlendRow = z.strictObject({
  ...identity,
  parts: z.array(z.strictObject({ fuel: z.string(), volume_ratio: z.number().gt(0).max(1) })).min(2),
  note: z.string().min(3).optional(),
});
const Fuels = z.strictObject({ notes: z.string(), fuels: z.array(Fuel), blends: z.array(BlendRow) });

const read = readTable('fuels/fuels.json', Fuels, table);
refuseTwins(
  'fuels/fuels.json',
  [...read.fuels, ...read.blends].flatMap(({ id, aliases }) => [id, ...aliases]),
);

export type FuelRow = z.output<typeof Fuel>;

/** The pure fuels by id; petrol and diesel count as pure. Petrol's density is a middle of what key EN228 allows. */
export const fuelRows: ReadonlyMap<string, FuelRow> = new Map(read.fuels.map((row) => [row.id, row]));

export interface FuelShare {
  readonly id: string;
  readonly volumeRatio: number;
}

/** A name as it is typed, in small letters, to the parts that it stands for. */
export const fuelNames: ReadonlyMap<string, readonly FuelShare[]> = new Map<string, readonly FuelShare[]>([
  ...read.fuels.flatMap(({ id, name, aliases }) => byName([id, name, ...aliases], [{ id, volumeRatio: 1 }])),
  ...read.blends.flatMap(({ id, aliases, parts }) =>
    byName(
      [id, ...aliases],
      parts.map(({ fuel, volume_ratio }) => ({ id: fuel, volumeRatio: volume_ratio })),
    ),
  ),
]);

function byName(names: readonly string[], parts: readonly FuelShare[]): [string, readonly FuelShare[]][] {
  return names.map((name) => [name.toLowerCase(), parts]);
}
