import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Day } from '../../core/time.ts';
import { ConditionForm } from '../../tables/stages.ts';
import type { Condition, Pass, Said, Stage, StageCondition } from './stage.ts';
import { type StartingCondition, startingStagesOf } from './starting-stages.ts';

const RestsForm = z.object({
  conditionIds: z.array(z.int()),
  except: z.array(z.string()),
  readingIds: z.array(z.int()),
});

const StageRow = z.object({
  id: z.int(),
  build_id: z.int(),
  key: z.string(),
  name: z.string(),
  rank: z.int(),
});
const ConditionRow = z
  .object({ id: z.int(), stage_id: z.int(), body: z.string(), starting_number: z.int().nullable() })
  .transform(({ id, stage_id: stageId, body, starting_number: number }) => ({
    stageId,
    held: { id: number === null ? id : -number, condition: ConditionForm.parse(JSON.parse(body)) },
  }));
const PassRow = z
  .object({
    id: z.int(),
    stage: z.string(),
    passed_on: z.string(),
    by_name: z.string(),
    reason: z.string().nullable(),
    against: z.string(),
    rests_on: z.string(),
    reopened_on: z.string().nullable(),
    reopened_by: z.string().nullable(),
  })
  .transform(({ stage, ...row }) => ({
    stage,
    pass: {
      id: row.id,
      passedOn: row.passed_on,
      byName: row.by_name,
      reason: row.reason,
      against: z.array(z.string()).parse(JSON.parse(row.against)),
      restsOn: RestsForm.parse(JSON.parse(row.rests_on)),
      reopenedOn: row.reopened_on,
      reopenedBy: row.reopened_by,
    } satisfies Pass,
  }));
const SaidRow = z
  .object({
    id: z.int(),
    condition: z.int(),
    said_on: z.string(),
    by_name: z.string(),
    lapsed: z.string().nullable(),
  })
  .transform(
    ({ condition: conditionId, said_on: saidOn, by_name: byName, ...same }): Said => ({
      ...same,
      conditionId,
      saidOn,
      byName,
    }),
  );

export interface StageStore {
  /** The stages of a build in their order; those of the starting set while nothing of them is written down. */
  ofBuild(buildId: number): readonly Stage[];
  /** Writes the starting set down as the build's own, if that has not been done. */
  takeOver(buildId: number): readonly Stage[];
  add(stage: {
    readonly buildId: number;
    readonly key: string;
    readonly name: string;
    readonly rank: number;
  }): void;
  rewrite(stage: Pick<Stage, 'id' | 'name' | 'rank'>): void;
  /** Takes a stage off the build that was never passed. */
  remove(stageId: number): void;
  addCondition(stageId: number, condition: Condition): StageCondition;
  /** Leaves a condition of a build's written stages out; what people said to it is kept. */
  dropCondition(buildId: number, conditionId: number): void;
  pass(buildId: number, stage: string, pass: Omit<Pass, 'id' | 'reopenedOn' | 'reopenedBy'>): Pass;
  /** Whether any pass of the build has not been reopened. */
  anyStanding(buildId: number): boolean;
  reopen(passId: number, why: { readonly on: Day; readonly by: string }): void;
  say(said: {
    readonly buildId: number;
    readonly conditionId: number;
    readonly saidOn: Day;
    readonly byName: string;
  }): void;
  /** What was said to a condition no longer counts. */
  lapse(buildId: number, conditionId: number, why: string): void;
  /** Every yes that counts, by build. */
  saidIn(buildId: number): readonly Said[];
}

export function openStageStore(db: Database): StageStore {
  const stages = db.prepare('SELECT * FROM stage WHERE build_id = ? ORDER BY rank, id');
  const conditions = db.prepare(
    `SELECT stage_condition.* FROM stage_condition JOIN stage ON stage.id = stage_id
     WHERE build_id = ? AND dropped = 0 ORDER BY stage_condition.id`,
  );
  const passes = db.prepare('SELECT * FROM stage_pass WHERE build_id = ? ORDER BY id');
  const insertStage = db.prepare(
    'INSERT INTO stage (build_id, key, name, rank) VALUES (@buildId, @key, @name, @rank)',
  );
  const rewrite = db.prepare('UPDATE stage SET name = @name, rank = @rank WHERE id = @id');
  const removeConditions = db.prepare('DELETE FROM stage_condition WHERE stage_id = ?');
  const remove = db.prepare('DELETE FROM stage WHERE id = ?');
  const insertCondition = db.prepare(
    'INSERT INTO stage_condition (stage_id, body, starting_number) VALUES (@stageId, @body, @number)',
  );
  const dropCondition = db.prepare(
    `UPDATE stage_condition SET dropped = 1 WHERE (id = @id OR starting_number = -@id)
       AND stage_id IN (SELECT id FROM stage WHERE build_id = @buildId)`,
  );
  const insertPass = db.prepare(
    `INSERT INTO stage_pass (build_id, stage, passed_on, by_name, reason, against, rests_on)
     VALUES (@buildId, @stage, @passedOn, @byName, @reason, @against, @restsOn) RETURNING *`,
  );
  const anyStanding = db
    .prepare<[number], number>(
      'SELECT EXISTS (SELECT 1 FROM stage_pass WHERE build_id = ? AND reopened_on IS NULL)',
    )
    .pluck();
  const reopen = db.prepare('UPDATE stage_pass SET reopened_on = @on, reopened_by = @by WHERE id = @passId');
  const say = db.prepare(
    `INSERT INTO stage_said (build_id, condition, said_on, by_name)
     VALUES (@buildId, @conditionId, @saidOn, @byName)`,
  );
  const lapse = db.prepare(
    'UPDATE stage_said SET lapsed = @why WHERE build_id = @buildId AND condition = @conditionId AND lapsed IS NULL',
  );
  const saidIn = db.prepare('SELECT * FROM stage_said WHERE build_id = ? AND lapsed IS NULL ORDER BY id');

  const addCondition = (stageId: number, { condition, number }: StartingCondition): StageCondition => ({
    id: Number(insertCondition.run({ stageId, body: JSON.stringify(condition), number }).lastInsertRowid),
    condition,
  });

  /** Written down or not, with what was passed. */
  const ofBuild = (buildId: number): readonly Stage[] => {
    const passed = Map.groupBy(z.array(PassRow).parse(passes.all(buildId)), ({ stage }) => stage);
    const withPasses = (stage: Omit<Stage, 'passes'>): Stage => ({
      ...stage,
      passes: (passed.get(stage.key) ?? []).map(({ pass }) => pass),
    });
    const rows = z.array(StageRow).parse(stages.all(buildId));
    if (rows.length === 0) return startingStagesOf(buildId).map(({ stage }) => withPasses(stage));
    const held = Map.groupBy(z.array(ConditionRow).parse(conditions.all(buildId)), ({ stageId }) => stageId);
    return rows.map(({ build_id, ...stage }) =>
      withPasses({
        ...stage,
        buildId: build_id,
        conditions: (held.get(stage.id) ?? []).map((one) => one.held),
      }),
    );
  };

  return {
    ofBuild,
    takeOver(buildId) {
      if (z.array(StageRow).parse(stages.all(buildId)).length === 0) {
        for (const { stage, conditions: starting } of startingStagesOf(buildId)) {
          const stageId = Number(insertStage.run(stage).lastInsertRowid);
          for (const one of starting) addCondition(stageId, one);
        }
      }
      return ofBuild(buildId);
    },
    add: (stage) => void insertStage.run(stage),
    rewrite: ({ id, name, rank }) => void rewrite.run({ id, name, rank }),
    remove(stageId) {
      removeConditions.run(stageId);
      remove.run(stageId);
    },
    addCondition: (stageId, condition) => addCondition(stageId, { condition, number: null }),
    dropCondition: (buildId, id) => void dropCondition.run({ buildId, id }),
    pass(buildId, stage, { against, restsOn, ...how }) {
      const row = {
        ...how,
        buildId,
        stage,
        against: JSON.stringify(against),
        restsOn: JSON.stringify(restsOn),
      };
      return PassRow.parse(insertPass.get(row)).pass;
    },
    anyStanding: (buildId) => anyStanding.get(buildId) === 1,
    reopen: (passId, { on, by }) => void reopen.run({ passId, on, by }),
    say: (said) => void say.run(said),
    lapse: (buildId, conditionId, why) => void lapse.run({ buildId, conditionId, why }),
    saidIn: (buildId) => z.array(SaidRow).parse(saidIn.all(buildId)),
  };
}
