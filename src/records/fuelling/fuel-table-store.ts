import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { FuelTable } from './fuel-table.ts';

const Axis = z.array(z.number()).nullable();
const axisIn = (text: string | null): readonly number[] | null =>
  Axis.parse(text === null ? null : JSON.parse(text));

const TableRow = z
  .object({
    build_id: z.int(),
    load_axis_kpa: z.string().nullable(),
    speed_axis_rpm: z.string().nullable(),
    target: z.string().nullable(),
    cap_ratio: z.number().nullable(),
    fuel: z.string().nullable(),
    scale: z.enum(['petrol', 'fuel']).nullable(),
  })
  .transform(
    (row): FuelTable => ({
      buildId: row.build_id,
      loadAxisKPa: axisIn(row.load_axis_kpa),
      speedAxisRpm: axisIn(row.speed_axis_rpm),
      target: row.target,
      capRatio: row.cap_ratio,
      fuel: row.fuel,
      scale: row.scale,
    }),
  );

export interface FuelTableStore {
  ofBuild(buildId: number): FuelTable | undefined;
  /** Keeps what is known of a build's table, in place of what was before. */
  keep(table: FuelTable): void;
}

export function openFuelTableStore(db: Database): FuelTableStore {
  const columns = '@buildId, @loadAxis, @speedAxis, @target, @capRatio, @fuel, @scale';
  const insert = db.prepare(
    `INSERT INTO fuel_table (build_id, load_axis_kpa, speed_axis_rpm, target, cap_ratio, fuel, scale)
     VALUES (${columns})`,
  );
  const update = db.prepare(
    `UPDATE fuel_table SET load_axis_kpa = @loadAxis, speed_axis_rpm = @speedAxis, target = @target,
       cap_ratio = @capRatio, fuel = @fuel, scale = @scale WHERE build_id = @buildId`,
  );
  const byBuild = db.prepare('SELECT * FROM fuel_table WHERE build_id = ?');
  const ofBuild = (buildId: number) => TableRow.optional().parse(byBuild.get(buildId));
  return {
    ofBuild,
    keep(table) {
      const { buildId, loadAxisKPa, speedAxisRpm, target, capRatio, fuel, scale } = table;
      const text = (axis: readonly number[] | null) => (axis === null ? null : JSON.stringify(axis));
      const row = {
        buildId,
        loadAxis: text(loadAxisKPa),
        speedAxis: text(speedAxisRpm),
        target,
        capRatio,
        fuel,
        scale,
      };
      (ofBuild(buildId) === undefined ? insert : update).run(row);
    },
  };
}
