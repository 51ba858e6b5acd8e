import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { PlanRow } from '../../tables/running-in.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Progress } from './progress.ts';
import type { Ceiling, Mark, RunInPlan, RunInStep } from './run-in.ts';
import type { PlanFacts } from './run-in-store.ts';
import { sayMark } from './say-run-in.ts';

type Changed<Value> = { readonly value: Value; readonly said: string };

/** @throws UserError 'not-found' when the build has no plan. */
export function planOf(record: TeamRecord, buildId: number | undefined): RunInPlan {
  const plan = buildId === undefined ? undefined : record.runIn.ofBuild(buildId);
  if (plan) return plan;
  throw new UserError(
    'not-found',
    'No running-in plan is chosen for this build yet. /runin plan choose:"road by distance" starts one; choose:own starts your own.',
  );
}

/** Starts a plan: one of common practice, or the builder's own without steps. A plan that was there gives way. */
export function beginPlan(
  record: TeamRecord,
  facts: PlanFacts,
  row: PlanRow | undefined,
): Changed<RunInPlan> {
  const before = record.runIn.ofBuild(facts.buildId);
  if (before !== undefined) record.runIn.remove(before.id);
  const id = record.runIn.begin(facts);
  for (const { what, hint, due } of row?.steps ?? []) {
    record.runIn.addStep(id, { what, hint, due, origin: 'common practice' });
  }
  for (const ceiling of row?.ceilings ?? []) record.runIn.addCeiling(id, ceiling);
  const was = before === undefined ? '' : `, instead of "${before.name}"`;
  return { value: planOf(record, facts.buildId), said: `running-in plan "${facts.name}" begun${was}` };
}

/** Changes what a plan rests on; its steps stay as they are. */
export function changePlan(
  record: TeamRecord,
  plan: RunInPlan,
  facts: Partial<PlanFacts>,
): Changed<RunInPlan> {
  const { steps: _steps, ceilings: _ceilings, ...now } = plan;
  record.runIn.changePlan({ ...now, ...facts });
  return { value: planOf(record, plan.buildId), said: `running-in plan "${plan.name}" changed` };
}

/** What somebody says of a step that is done. */
export interface Doing {
  readonly found: string | undefined;
  readonly link: string | undefined;
  readonly byName: string;
}

/** @throws UserError 'already-done' for a step that is behind. */
export function doStep(
  record: TeamRecord,
  step: RunInStep,
  { found, link, byName }: Doing,
  progress: Progress,
): Changed<RunInStep> {
  requireOpen(step);
  const done: RunInStep = {
    ...step,
    doneOn: progress.today,
    doneByName: byName,
    doneKm: progress.km.run,
    doneH: progress.h.run,
    found: found ?? null,
    link: link ?? null,
  };
  record.runIn.rewriteStep(done);
  return {
    value: done,
    said: `running-in: ${step.what}, done${found === undefined ? '' : `; found: ${found}`}`,
  };
}

/** Puts a step off. @throws UserError 'already-done' for a step that is behind, 'out-of-range' where it would be due at once. */
export function putOff(
  record: TeamRecord,
  plan: Pick<RunInPlan, 'buildId'>,
  step: RunInStep,
  to: { readonly due: Mark; readonly reason: string; readonly onDay: Day; readonly byName: string },
  progress: Progress,
): Changed<RunInStep> {
  requireOpen(step);
  const { due } = to;
  const over =
    reached(due.km, progress.km.run) || reached(due.h, progress.h.run) || reached(due.days, progress.days);
  if (over) {
    throw new UserError(
      'out-of-range',
      `${sayMark(due)} is reached already, so it would be due at once. Nothing was changed. Put it off further.`,
    );
  }
  record.runIn.snooze(step.id, to);
  const now = planOf(record, plan.buildId).steps.find(({ id }) => id === step.id) ?? step;
  return {
    value: now,
    said: `running-in: ${step.what}, put off to ${sayMark(due)}: ${to.reason}`,
  };
}

const reached = (mark: number | null, run: number | null): boolean =>
  mark !== null && run !== null && mark <= run;

function requireOpen({ doneOn, doneByName, what, dropped }: RunInStep): void {
  if (doneOn !== null) {
    throw new UserError(
      'already-done',
      `“${what}” was done on ${doneOn}, noted by ${doneByName ?? ''}. /undo takes that back if it is wrong.`,
    );
  }
  if (dropped)
    throw new UserError(
      'already-done',
      `“${what}” was left out of this plan. /undo takes that back if it is wrong.`,
    );
}

const MOST_STEPS = 40;

/** Adds a step of the builder's own. @throws UserError when there are too many. */
export function addStep(
  record: TeamRecord,
  plan: RunInPlan,
  step: { readonly what: string; readonly hint: string | null; readonly due: Mark },
): Changed<RunInPlan> {
  if (plan.steps.length >= MOST_STEPS) {
    throw new UserError(
      'not-now',
      `A plan holds ${MOST_STEPS} steps, and this one has them. Leave one out first: /runin step what:… remove:True.`,
    );
  }
  record.runIn.addStep(plan.id, { ...step, origin: 'builder' });
  return {
    value: planOf(record, plan.buildId),
    said: `running-in step added: ${step.what}, due at ${sayMark(step.due)}`,
  };
}

/** Gives a step another mark or words; it counts as the builder's own from then on. */
export function changeStep(
  record: TeamRecord,
  step: RunInStep,
  now: { readonly due?: Mark | undefined; readonly hint?: string | undefined },
): Changed<RunInStep> {
  const changed: RunInStep = {
    ...step,
    due: now.due ?? step.due,
    hint: now.hint ?? step.hint,
    origin: 'builder',
  };
  record.runIn.rewriteStep(changed);
  return {
    value: changed,
    said: `running-in step “${step.what}” changed: due at ${sayMark(changed.due)}, was ${sayMark(step.due)}`,
  };
}

/** Leaves a step out. @throws UserError 'already-done' for one that is behind. */
export function leaveOut(record: TeamRecord, step: RunInStep): Changed<RunInStep> {
  requireOpen(step);
  const changed = { ...step, dropped: true };
  record.runIn.rewriteStep(changed);
  return { value: changed, said: `running-in step left out: ${step.what}` };
}

/** Puts a ceiling down; one at the same point gives way. */
export function setCeiling(
  record: TeamRecord,
  plan: RunInPlan,
  ceiling: Omit<Ceiling, 'id'>,
): Changed<RunInPlan> {
  const others = plan.ceilings.filter(({ at }) => at !== ceiling.at);
  record.runIn.removeCeilings(plan.id);
  for (const { id: _id, ...kept } of others) record.runIn.addCeiling(plan.id, kept);
  record.runIn.addCeiling(plan.id, ceiling);
  return {
    value: planOf(record, plan.buildId),
    said: `running-in ceiling set at ${ceiling.at} ${plan.measure}`,
  };
}
