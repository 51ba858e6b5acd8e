import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import { stageOfKey } from './pass-stage.ts';
import type { Condition, Stage, StageCondition } from './stage.ts';

interface Done<Value> {
  readonly value: Value;
  readonly said: string;
}

/** Puts a stage of the crew's own in behind another; first of all when `after` is null. */
export function addStage(
  record: TeamRecord,
  buildId: number,
  name: string,
  after: string | null,
): Done<Stage> {
  const stages = record.stages.takeOver(buildId);
  const key = keyOf(name, stages);
  const at = placeBehind(stages, after);
  for (const stage of stages) if (stage.rank >= at) record.stages.rewrite({ ...stage, rank: stage.rank + 1 });
  record.stages.add({ buildId, key, name, rank: at });
  const stage = stageOfKey({ stages: record.stages.ofBuild(buildId) }, key);
  record.stages.addCondition(stage.id, { kind: 'jobs' });
  record.stages.addCondition(stage.id, { kind: 'measures' });
  return { value: again(record, stage), said: `stage ${name} added` };
}

/** Puts a stage behind another one. */
export function moveStage(
  record: TeamRecord,
  buildId: number,
  key: string,
  after: string | null,
): Done<Stage> {
  const stages = record.stages.takeOver(buildId);
  const stage = stageOfKey({ stages }, key);
  if (after === key)
    throw new UserError('bad-input', `${stage.name} cannot stand behind itself. Nothing was changed.`);
  const others = stages.filter((one) => one.key !== key);
  const at = after === null ? 0 : others.findIndex((one) => one.key === after) + 1;
  const ordered = [...others.slice(0, at), stage, ...others.slice(at)];
  for (const [rank, one] of ordered.entries()) if (one.rank !== rank) record.stages.rewrite({ ...one, rank });
  const behind = at === 0 ? 'to the front' : `behind ${others[at - 1]?.name ?? ''}`;
  return { value: again(record, stage), said: `stage ${stage.name} moved ${behind}` };
}

export function renameStage(record: TeamRecord, buildId: number, key: string, name: string): Done<Stage> {
  const stage = stageOfKey({ stages: record.stages.takeOver(buildId) }, key);
  record.stages.rewrite({ ...stage, name });
  return { value: again(record, stage), said: `stage ${stage.name} is now called ${name}` };
}

/**
 * Takes a stage off the list.
 *
 * @throws UserError 'not-now' when it was passed, or when something temporary or a job names it.
 */
export function removeStage(record: TeamRecord, buildId: number, key: string): Done<Stage> {
  const stage = stageOfKey({ stages: record.stages.takeOver(buildId) }, key);
  if (stage.passes.length > 0)
    throw new UserError('not-now', `${stage.name} has been passed, and that stays. Nothing was changed.`);
  const jobs = record.jobs.ofBuild(buildId).filter((job) => job.stage === key && !job.dropped);
  const measures = record.measures
    .ofBuild(buildId)
    .filter(
      ({ requiredAt, undoneBefore, undoneOn }) =>
        undoneOn === null && [requiredAt, undoneBefore].includes(key),
    );
  const named = [...jobs.map(({ name }) => name), ...measures.map(({ what }) => what)];
  if (named.length > 0) {
    throw new UserError(
      'not-now',
      `${stage.name} is named by ${named.slice(0, 3).join(', ')}${named.length > 3 ? ` and ${named.length - 3} more` : ''}. Nothing was changed. Give those another stage first.`,
    );
  }
  record.stages.remove(stage.id);
  return { value: stage, said: `stage ${stage.name} taken off the list` };
}

/** Asks for one more thing at a stage; a reading of the same kind and states takes the place of the one before. */
export function askFor(record: TeamRecord, buildId: number, key: string, condition: Condition): Done<Stage> {
  const stage = stageOfKey({ stages: record.stages.takeOver(buildId) }, key);
  for (const old of stage.conditions)
    if (sameThing(old.condition, condition)) record.stages.dropCondition(buildId, old.id);
  record.stages.addCondition(stage.id, condition);
  return { value: again(record, stage), said: `stage ${stage.name} asks for one thing more` };
}

/** Leaves a condition out. */
export function leaveOut(
  record: TeamRecord,
  buildId: number,
  conditionId: number,
  words: string,
): Done<Stage> {
  const stage = stageAsking(record.stages.takeOver(buildId), conditionId);
  record.stages.dropCondition(buildId, conditionId);
  return { value: again(record, stage), said: `stage ${stage.name} no longer asks: ${words}` };
}

/** A person's yes, or that it no longer holds. */
export function sayYes(
  record: TeamRecord,
  buildId: number,
  { id, condition }: StageCondition,
  { yes, by, on }: { readonly yes: boolean; readonly by: string; readonly on: Day },
): Done<Stage> {
  if (condition.kind !== 'said') {
    throw new UserError(
      'bad-input',
      'That is not for a person to say; the record shows it. Nothing was changed.',
    );
  }
  const stage = stageAsking(record.stages.ofBuild(buildId), id);
  if (yes) record.stages.say({ buildId, conditionId: id, saidOn: on, byName: by });
  else record.stages.lapse(buildId, id, `${by} took it back`);
  return { value: stage, said: `${yes ? '' : 'no longer: '}${condition.what}` };
}

/** @throws UserError 'stale-message' when the condition was left out since its button was made. */
function stageAsking(stages: readonly Stage[], conditionId: number): Stage {
  const stage = stages.find(({ conditions }) => conditions.some(({ id }) => id === conditionId));
  if (stage !== undefined) return stage;
  throw new UserError('stale-message', 'That has been left out since. Nothing was changed.');
}

const again = (record: TeamRecord, { buildId, key }: Stage): Stage =>
  stageOfKey({ stages: record.stages.ofBuild(buildId) }, key);

function placeBehind(stages: readonly Stage[], after: string | null): number {
  if (after === null) return stages[0]?.rank ?? 0;
  return stageOfKey({ stages }, after).rank + 1;
}

/** A key of a stage's own: its name in small letters and dashes. @throws UserError when the name is taken. */
function keyOf(name: string, stages: readonly Stage[]): string {
  const key = plain(name)
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40);
  if (key === '')
    throw new UserError('bad-input', 'name: it needs a letter or a figure. Nothing was changed.');
  const taken = stages.find((stage) => stage.key === key || plain(stage.name) === plain(name));
  if (taken === undefined) return key;
  throw new UserError('already-done', `There is a stage called ${taken.name} already. Nothing was changed.`);
}

function sameThing(a: Condition, b: Condition): boolean {
  if (a.kind === 'reading' && b.kind === 'reading')
    return (
      a.reading === b.reading &&
      a.states.toSorted().join() === b.states.toSorted().join() &&
      a.proof === b.proof
    );
  return JSON.stringify(a) === JSON.stringify(b);
}
