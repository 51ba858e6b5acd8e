import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Ceiling, RunInPlan, RunInStep, Snooze } from './run-in.ts';

const origin = z.enum(['common practice', 'builder']);
const some = z.number().nullable();
const words = z.string().nullable();
const DueRow = { due_km: some, due_h: some, due_days: some };
const dueOf = (row: { due_km: number | null; due_h: number | null; due_days: number | null }) => ({
  km: row.due_km,
  h: row.due_h,
  days: row.due_days,
});

const SnoozeRow = z
  .object({
    id: z.int(),
    step_id: z.int(),
    ...DueRow,
    reason: z.string(),
    on_day: z.string(),
    by_name: z.string(),
  })
  .transform((row): Snooze & { stepId: number } => ({
    id: row.id,
    stepId: row.step_id,
    due: dueOf(row),
    reason: row.reason,
    onDay: row.on_day,
    byName: row.by_name,
  }));

const StepRow = z
  .object({
    id: z.int(),
    plan_id: z.int(),
    what: z.string(),
    hint: words,
    origin,
    ...DueRow,
    done_on: words,
    done_by_name: words,
    done_km: some,
    done_h: some,
    found: words,
    link: words,
    dropped: z.int(),
  })
  .transform(
    (row): Omit<RunInStep, 'snoozes'> => ({
      id: row.id,
      planId: row.plan_id,
      what: row.what,
      hint: row.hint,
      origin: row.origin,
      due: dueOf(row),
      doneOn: row.done_on,
      doneByName: row.done_by_name,
      doneKm: row.done_km,
      doneH: row.done_h,
      found: row.found,
      link: row.link,
      dropped: row.dropped === 1,
    }),
  );

const CeilingRow = z
  .object({
    id: z.int(),
    at: z.number(),
    speed_ratio: some,
    speed_rpm: some,
    boost_ratio: some,
    load: z.string(),
  })
  .transform(
    ({ speed_ratio: speedRatio, speed_rpm: speedRpm, boost_ratio: boostRatio, ...same }): Ceiling => ({
      ...same,
      speedRatio,
      speedRpm,
      boostRatio,
    }),
  );

const PlanRow = z.object({
  id: z.int(),
  build_id: z.int(),
  name: z.string(),
  origin,
  measure: z.enum(['km', 'h', 'days']),
  started_on: z.string(),
  start_km: z.number(),
  start_h: z.number(),
  limit_rpm: some,
  boost_kpa: some,
});

export type PlanFacts = Omit<RunInPlan, 'id' | 'steps' | 'ceilings'>;
export type StepFacts = Pick<RunInStep, 'what' | 'hint' | 'origin' | 'due'>;

export interface RunInStore {
  begin(plan: PlanFacts): number;
  changePlan(plan: Pick<RunInPlan, 'id'> & PlanFacts): void;
  /** Takes a plan off with its steps and ceilings. */
  remove(planId: number): void;
  addStep(planId: number, step: StepFacts): number;
  rewriteStep(step: RunInStep): void;
  snooze(stepId: number, snooze: Omit<Snooze, 'id'>): void;
  addCeiling(planId: number, ceiling: Omit<Ceiling, 'id'>): void;
  removeCeilings(planId: number): void;
  ofBuild(buildId: number): RunInPlan | undefined;
}

export function openRunInStore(db: Database): RunInStore {
  const insertPlan = db.prepare(
    `INSERT INTO run_in_plan (build_id, name, origin, measure, started_on, start_km, start_h, limit_rpm, boost_kpa)
     VALUES (@buildId, @name, @origin, @measure, @startedOn, @startKm, @startH, @limitRpm, @boostKPa) RETURNING id`,
  );
  const updatePlan = db.prepare(
    `UPDATE run_in_plan SET name = @name, origin = @origin, measure = @measure, started_on = @startedOn,
       start_km = @startKm, start_h = @startH, limit_rpm = @limitRpm, boost_kpa = @boostKPa WHERE id = @id`,
  );
  const removePlan = db.prepare('DELETE FROM run_in_plan WHERE id = ?');
  const removeSnoozes = db.prepare(
    'DELETE FROM run_in_snooze WHERE step_id IN (SELECT id FROM run_in_step WHERE plan_id = ?)',
  );
  const removeSteps = db.prepare('DELETE FROM run_in_step WHERE plan_id = ?');
  const removeCeilings = db.prepare('DELETE FROM run_in_ceiling WHERE plan_id = ?');
  const insertStep = db.prepare(
    `INSERT INTO run_in_step (plan_id, what, hint, origin, due_km, due_h, due_days)
     VALUES (@planId, @what, @hint, @origin, @km, @h, @days) RETURNING id`,
  );
  const updateStep = db.prepare(
    `UPDATE run_in_step SET what = @what, hint = @hint, origin = @origin, due_km = @km, due_h = @h, due_days = @days,
       done_on = @doneOn, done_by_name = @doneByName, done_km = @doneKm, done_h = @doneH, found = @found,
       link = @link, dropped = @dropped WHERE id = @id`,
  );
  const insertSnooze = db.prepare(
    `INSERT INTO run_in_snooze (step_id, due_km, due_h, due_days, reason, on_day, by_name)
     VALUES (@stepId, @km, @h, @days, @reason, @onDay, @byName)`,
  );
  const insertCeiling = db.prepare(
    `INSERT INTO run_in_ceiling (plan_id, at, speed_ratio, speed_rpm, boost_ratio, load)
     VALUES (@planId, @at, @speedRatio, @speedRpm, @boostRatio, @load)`,
  );
  const planOf = db.prepare('SELECT * FROM run_in_plan WHERE build_id = ?');
  const stepsOf = db.prepare('SELECT * FROM run_in_step WHERE plan_id = ? ORDER BY id');
  const snoozesOf = db.prepare(
    'SELECT * FROM run_in_snooze WHERE step_id IN (SELECT id FROM run_in_step WHERE plan_id = ?) ORDER BY id',
  );
  const ceilingsOf = db.prepare('SELECT * FROM run_in_ceiling WHERE plan_id = ? ORDER BY at');
  const Id = z.object({ id: z.int() });
  return {
    begin: (plan) => Id.parse(insertPlan.get(plan)).id,
    changePlan: (plan) => void updatePlan.run(plan),
    remove(planId) {
      removeSnoozes.run(planId);
      removeSteps.run(planId);
      removeCeilings.run(planId);
      removePlan.run(planId);
    },
    addStep: (planId, { due, ...step }) => Id.parse(insertStep.get({ planId, ...step, ...due })).id,
    rewriteStep({ due, snoozes: _kept, planId: _same, dropped, ...step }) {
      updateStep.run({ ...step, ...due, dropped: dropped ? 1 : 0 });
    },
    snooze: (stepId, { due, ...snooze }) => void insertSnooze.run({ stepId, ...snooze, ...due }),
    addCeiling: (planId, ceiling) => void insertCeiling.run({ planId, ...ceiling }),
    removeCeilings: (planId) => void removeCeilings.run(planId),
    ofBuild(buildId) {
      const row = PlanRow.optional().parse(planOf.get(buildId));
      if (row === undefined) return undefined;
      const snoozes = z.array(SnoozeRow).parse(snoozesOf.all(row.id));
      return {
        id: row.id,
        buildId: row.build_id,
        name: row.name,
        origin: row.origin,
        measure: row.measure,
        startedOn: row.started_on,
        startKm: row.start_km,
        startH: row.start_h,
        limitRpm: row.limit_rpm,
        boostKPa: row.boost_kpa,
        steps: z
          .array(StepRow)
          .parse(stepsOf.all(row.id))
          .map((step) => ({ ...step, snoozes: snoozes.filter(({ stepId }) => stepId === step.id) })),
        ceilings: z.array(CeilingRow).parse(ceilingsOf.all(row.id)),
      };
    },
  };
}
