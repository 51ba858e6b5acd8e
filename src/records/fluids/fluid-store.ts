import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Day } from '../../core/time.ts';
import type { Bottle, FluidCase, FluidMove } from './fluid.ts';

const CaseRow = z
  .object({
    id: z.int(),
    build_id: z.int(),
    name: z.string(),
    grade: z.string(),
    capacity_l: z.number(),
    in_l: z.number(),
    filled_on: z.string().nullable(),
    note: z.string().nullable(),
  })
  .transform(
    ({ build_id: buildId, capacity_l: capacityL, in_l: inL, filled_on: filledOn, ...same }): FluidCase => ({
      ...same,
      buildId,
      capacityL,
      inL,
      filledOn,
    }),
  );

const BottleRow = z
  .object({
    id: z.int(),
    build_id: z.int(),
    grade: z.string(),
    size_l: z.number(),
    left_l: z.number(),
    bought_on: z.string(),
    opened_on: z.string().nullable(),
  })
  .transform(
    (row): Bottle => ({
      id: row.id,
      buildId: row.build_id,
      grade: row.grade,
      sizeL: row.size_l,
      leftL: row.left_l,
      boughtOn: row.bought_on,
      openedOn: row.opened_on,
    }),
  );

const MoveRow = z
  .object({
    id: z.int(),
    case_id: z.int(),
    kind: z.enum(['poured', 'drained']),
    grade: z.string(),
    volume_l: z.number(),
    from_shelf_l: z.number(),
    in_after_l: z.number(),
    moved_on: z.string(),
    by_name: z.string(),
    distance_km: z.number().nullable(),
    note: z.string().nullable(),
  })
  .transform(
    (row): FluidMove => ({
      id: row.id,
      caseId: row.case_id,
      kind: row.kind,
      grade: row.grade,
      volumeL: row.volume_l,
      fromShelfL: row.from_shelf_l,
      inAfterL: row.in_after_l,
      movedOn: row.moved_on,
      byName: row.by_name,
      distanceKm: row.distance_km,
      note: row.note,
    }),
  );

export interface FluidStore {
  addCase(fluidCase: Omit<FluidCase, 'id' | 'inL' | 'filledOn'>): FluidCase;
  correctCase(fluidCase: FluidCase): void;
  /** Takes a case off the build that nothing was ever poured into. */
  removeCase(id: number): void;
  findCase(id: number): FluidCase | undefined;
  /** Every case of a build, by name, with what is in it. */
  casesOf(buildId: number): readonly FluidCase[];
  addBottle(bottle: Omit<Bottle, 'id' | 'leftL' | 'openedOn'>): Bottle;
  /** Sets what is left in a bottle, and the day it was opened on if it was not before. */
  take(bottleId: number, leftL: number, on: Day): void;
  findBottle(id: number): Bottle | undefined;
  /** Bottles with something in them, opened ones first, the oldest first. */
  shelf(buildId: number): readonly Bottle[];
  move(move: Omit<FluidMove, 'id'>): FluidMove;
  /** Everything poured into a case and drained out of it, the oldest first: what drain intervals are read from. */
  movesOf(caseId: number): readonly FluidMove[];
}

export function openFluidStore(db: Database): FluidStore {
  const insertCase = db.prepare(
    `INSERT INTO fluid_case (build_id, name, grade, capacity_l, note)
     VALUES (@buildId, @name, @grade, @capacityL, @note)`,
  );
  const correctCase = db.prepare(
    `UPDATE fluid_case SET name = @name, grade = @grade, capacity_l = @capacityL, note = @note WHERE id = @id`,
  );
  const removeCase = db.prepare('DELETE FROM fluid_case WHERE id = ?');
  // it was filled when it was first poured into after the last time that most of it came out
  const cases = `SELECT fluid_case.*,
      coalesce((SELECT in_after_l FROM fluid_move WHERE case_id = fluid_case.id ORDER BY id DESC LIMIT 1), 0.0) AS in_l,
      (SELECT min(moved_on) FROM fluid_move WHERE case_id = fluid_case.id AND kind = 'poured' AND id >
        coalesce((SELECT max(id) FROM fluid_move WHERE case_id = fluid_case.id AND kind = 'drained'
          AND in_after_l < volume_l), 0)) AS filled_on
    FROM fluid_case`;
  const caseById = db.prepare(`${cases} WHERE id = ?`);
  const casesOf = db.prepare(`${cases} WHERE build_id = ? ORDER BY name COLLATE NOCASE, id`);
  const insertBottle = db.prepare(
    `INSERT INTO bottle (build_id, grade, size_l, left_l, bought_on)
     VALUES (@buildId, @grade, @sizeL, @sizeL, @boughtOn) RETURNING *`,
  );
  const take = db.prepare(
    'UPDATE bottle SET left_l = @leftL, opened_on = coalesce(opened_on, @on) WHERE id = @bottleId',
  );
  const bottleById = db.prepare('SELECT * FROM bottle WHERE id = ?');
  const shelf = db.prepare(
    `SELECT * FROM bottle WHERE build_id = ? AND left_l > 0
     ORDER BY opened_on IS NULL, opened_on, left_l, id`,
  );
  const insertMove = db.prepare(
    `INSERT INTO fluid_move (case_id, kind, grade, volume_l, from_shelf_l, in_after_l, moved_on, by_name,
       distance_km, note)
     VALUES (@caseId, @kind, @grade, @volumeL, @fromShelfL, @inAfterL, @movedOn, @byName, @distanceKm, @note)
     RETURNING *`,
  );
  const movesOf = db.prepare('SELECT * FROM fluid_move WHERE case_id = ? ORDER BY id');
  return {
    addCase: (one) => CaseRow.parse(caseById.get(insertCase.run(one).lastInsertRowid)),
    correctCase: (one) => void correctCase.run(one),
    removeCase: (id) => void removeCase.run(id),
    findCase: (id) => CaseRow.optional().parse(caseById.get(id)),
    casesOf: (buildId) => z.array(CaseRow).parse(casesOf.all(buildId)),
    addBottle: (bottle) => BottleRow.parse(insertBottle.get(bottle)),
    take: (bottleId, leftL, on) => void take.run({ bottleId, leftL, on }),
    findBottle: (id) => BottleRow.optional().parse(bottleById.get(id)),
    shelf: (buildId) => z.array(BottleRow).parse(shelf.all(buildId)),
    move: (move) => MoveRow.parse(insertMove.get(move)),
    movesOf: (caseId) => z.array(MoveRow).parse(movesOf.all(caseId)),
  };
}
