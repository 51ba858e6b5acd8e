import { UserError } from '../../core/user-error.ts';
import { debrisJobs, type SetJob, startingJobs } from '../../tables/jobs.ts';
import type { FluidCase } from '../fluids/fluid.ts';
import { openPart } from '../parts/open-part.ts';
import { plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import type { StageFact } from './facts.ts';
import type { Job, JobNeed } from './job.ts';
import type { Said } from './moves.ts';
import { partForSet } from './need-words.ts';
import { type NamedNeed, openNeedGiver } from './needs.ts';

/** What a crew chooses from: one stage of the starting set, or what is to be done after a bearing failure. */
export const DEBRIS = 'bearing-failure';

const WHOLE_SET: readonly SetJob[] = [...startingJobs, ...debrisJobs];

/** What is on offer: jobs of a set that are not on the build's list yet, and how many are. */
export interface Offer {
  readonly offered: readonly SetJob[];
  readonly there: number;
}

/** The jobs of a stage's part of the starting set, or of the set after a bearing failure; nothing is offered twice. */
export function offerOf(record: TeamRecord, buildId: number, set: string): Offer {
  const all = set === DEBRIS ? debrisJobs : startingJobs.filter(({ stage }) => stage === set);
  const keys = record.jobs.fromSet(buildId);
  const names = new Set(record.jobs.ofBuild(buildId).map(({ name }) => plain(name)));
  const offered = all.filter(({ key, name }) => !keys.has(key) && !names.has(plain(name)));
  return { offered, there: all.length - offered.length };
}

/**
 * Writes chosen jobs down with what they need. A job they wait for that was not chosen is not waited for, but what that one
 * waits for is; a part nobody has named yet is written down; a fluid is needed where the build has a case of that name.
 *
 * @throws UserError 'already-done' when all of them are on the list.
 */
export function choose(
  record: TeamRecord,
  buildId: number,
  chosen: readonly SetJob[],
  stages: readonly StageFact[],
): Said<readonly Job[]> {
  const keys = new Map(record.jobs.fromSet(buildId));
  const added: { readonly job: Job; readonly from: SetJob }[] = [];
  for (const from of chosen) {
    if (keys.has(from.key)) continue;
    const { name, system, minutes, people, tools, note, goesBack } = from;
    const stage = stages.some(({ key }) => key === from.stage) ? from.stage : null;
    const words = [note, goesBack === undefined ? undefined : `May it go back? ${goesBack}`].filter(Boolean);
    const job = record.jobs.add({
      buildId,
      name,
      setKey: from.key,
      stage,
      system,
      minutes,
      people,
      tools,
      note: words.length === 0 ? null : words.join(' '),
    });
    keys.set(from.key, job.id);
    added.push({ job, from });
  }
  if (added.length === 0) {
    throw new UserError(
      'already-done',
      'All of these are on the list already. Nothing was changed. /job list shows them.',
    );
  }
  const giver = openNeedGiver(record, buildId, stages);
  // what was chosen earlier and comes after one of these waits for it as well, and the other way round
  const fresh = new Set(added.map(({ from }) => from.key));
  for (const { job, from } of added) giver.give(job, needsOf(record, buildId, from, keys, stages));
  for (const [key, id] of keys) {
    const later = WHOLE_SET.find((one) => one.key === key);
    const job = record.jobs.find(id);
    if (later === undefined || job === undefined || job.doneOn !== null) continue;
    const before = WHOLE_SET.filter(
      (one) =>
        keys.has(one.key) &&
        (fresh.has(one.key) || fresh.has(key)) &&
        (one.before.includes(key) || comesAfter(later, keys).includes(one.key)),
    );
    giver.give(
      job,
      before.flatMap((one) => jobNeed(keys, one.key)),
    );
  }
  const value = added.flatMap(({ job }) => record.jobs.find(job.id) ?? []);
  const [first] = value;
  const said =
    value.length === 1 && first !== undefined
      ? `job "${first.name}" taken from the starting set`
      : `${value.length} jobs taken from the starting set`;
  return { value, said };
}

function needsOf(
  record: TeamRecord,
  buildId: number,
  from: SetJob,
  keys: ReadonlyMap<string, number>,
  stages: readonly StageFact[],
): readonly NamedNeed[] {
  const cases = record.fluids.casesOf(buildId);
  const fluids = from.fluids.flatMap(({ case: name, alsoCalled }): NamedNeed[] => {
    const found = caseCalled(cases, [name, ...alsoCalled]);
    return found === undefined ? [] : [{ need: { kind: 'fluid', caseId: found.id }, name: found.name }];
  });
  const passed = from.afterStages.flatMap((key): NamedNeed[] => {
    const stage = stages.find((one) => one.key === key);
    return stage === undefined ? [] : [{ need: { kind: 'stage', stage: key }, name: stage.name }];
  });
  const parts = from.parts.map(({ name, quantity, singleUse }): NamedNeed => {
    const { part, isNew } = openPart(record, buildId, partForSet(record, buildId, name), quantity);
    if (isNew) record.parts.correct({ ...part, singleUse, system: from.system });
    const need: JobNeed = { kind: 'part', partId: part.id, quantity };
    return { need, name: part.name };
  });
  const before = comesAfter(from, keys).flatMap((key) => jobNeed(keys, key));
  return [...before, ...passed, ...parts, ...fluids];
}

/** The case of one of these names, else the first whose name begins with one. */
function caseCalled(cases: readonly FluidCase[], names: readonly string[]): FluidCase | undefined {
  const known = names.map(plain);
  return (
    cases.find(({ name }) => known.includes(plain(name))) ??
    cases.find(({ name }) => known.some((one) => plain(name).startsWith(`${one} `)))
  );
}

/** What a job of a set comes after of what is on the list: where one is left out, what that one comes after. */
function comesAfter(job: SetJob, keys: ReadonlyMap<string, number>): readonly string[] {
  return job.after.flatMap((key) => {
    const before = WHOLE_SET.find((one) => one.key === key);
    return keys.has(key) || before === undefined ? [key] : comesAfter(before, keys);
  });
}

function jobNeed(keys: ReadonlyMap<string, number>, key: string): readonly NamedNeed[] {
  const jobId = keys.get(key);
  return jobId === undefined ? [] : [{ need: { kind: 'job', jobId }, name: key }];
}
