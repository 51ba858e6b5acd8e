import { crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { pageOf } from '../../core/pages.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { byStage, jobList } from '../../records/jobs/job-list.ts';
import { addJob, editJob, reopenJob } from '../../records/jobs/moves.ts';
import { readNeeds } from '../../records/jobs/need-words.ts';
import { addNeeds, openNeedGiver, refuseStageLoop, removeNeeds } from '../../records/jobs/needs.ts';
import { readJobBook } from '../../records/jobs/read-facts.ts';
import { renewalsFor } from '../../records/jobs/single-use.ts';
import { findStage } from '../../records/stages/find-stage.ts';
import { buildWithJobs, byHand, jobBookHere, moveJob, reportJob, showJob } from './jobs-here.ts';
import { readMinutes } from './read-minutes.ts';

const PAGE_SIZE = 8;

/** What may be said of a job, as typed. */
export interface JobWanted {
  readonly stage?: string | undefined;
  readonly minutes?: string | undefined;
  readonly people?: number | undefined;
  readonly tools?: string | undefined;
  readonly system?: string | undefined;
  readonly note?: string | undefined;
}

/** Tools as typed, one by one. */
const splitTools = (typed: string): readonly string[] =>
  typed
    .split(/[,;]/)
    .map((tool) => tool.trim())
    .filter(Boolean);

/** Writes a job down with what it needs; what its joint uses once is offered. */
export function addHere(
  wanted: JobWanted & { readonly name: string; readonly needs?: string | undefined },
  hand: Hand,
): Answer {
  const { today } = crewOf(hand);
  const read = wanted.minutes === undefined ? undefined : readMinutes(wanted.minutes, 'minutes');
  const { stagesWhole } = jobBookHere(hand);
  const stageKey = wanted.stage === undefined ? null : findStage(stagesWhole, wanted.stage).key;
  const changed = hand.change((record) => {
    const buildId = openBuildHere(record, hand).id;
    const { value: made, said } = addJob(record, {
      buildId,
      name: wanted.name,
      setKey: null,
      stage: stageKey,
      system: wanted.system ?? null,
      minutes: read?.minutes ?? null,
      people: wanted.people ?? 1,
      tools: wanted.tools === undefined ? [] : splitTools(wanted.tools),
      note: wanted.note ?? null,
    });
    if (wanted.needs === undefined) return { value: made, said };
    const book = readJobBook(record, buildId, today);
    const given = readNeeds(record, book, buildId, wanted.needs, 'needs');
    return { value: addNeeds(record, made, given, book.stages).value, said };
  });
  return reportJob(hand, changed, read === undefined ? {} : { certainty: read.readAs });
}

/** Jobs by stage, a page of them. */
export function listHere(
  { stage: typed, page: at = 1 }: { stage?: string | undefined; page?: number | undefined },
  hand: Hand,
): Answer {
  const book = jobBookHere(hand);
  const only = typed === undefined ? undefined : findStage(book.stagesWhole, typed);
  const all = byStage(
    only === undefined ? book.jobs : book.jobs.filter((one) => one.stage === only.key),
    book,
  );
  const does = {
    command: 'job',
    action: 'list',
    args: only === undefined ? {} : { stage: only.key },
  };
  const { things, buttons, where } = pageOf(all, at, does, PAGE_SIZE);
  const answer = jobList({
    shown: things,
    all,
    book,
    today: crewOf(hand).today,
    ...(only === undefined ? {} : { stage: only.name }),
    ...(where === undefined ? {} : { where }),
  });
  return { ...answer, buttons };
}

/** Adds to what a job waits for, takes off, or both in one change; shows it when neither is typed. */
export function needsHere(
  { job: typed, add: more, remove }: { job: string; add?: string | undefined; remove?: string | undefined },
  hand: Hand,
): Answer {
  if (more === undefined && remove === undefined) return showJob(hand, typed);
  const build = buildWithJobs(hand);
  const { today } = crewOf(hand);
  return moveJob(hand, typed, (record, found) => {
    const book = readJobBook(record, build.id, today);
    const gone =
      remove === undefined
        ? undefined
        : removeNeeds(record, found, readNeeds(record, book, build.id, remove, 'remove'));
    const now = gone?.value ?? found;
    if (more === undefined) return gone ?? { value: now, said: '' };
    const given = addNeeds(record, now, readNeeds(record, book, build.id, more, 'add'), book.stages);
    return { value: given.value, said: [gone?.said, given.said].filter(Boolean).join('; ') };
  });
}

/** Changes what is typed of a job and leaves the rest. */
export function editHere(
  { job: typed, name, ...wanted }: JobWanted & { readonly job: string; readonly name?: string | undefined },
  hand: Hand,
): Answer {
  const read = wanted.minutes === undefined ? undefined : readMinutes(wanted.minutes, 'minutes');
  const { stages, stagesWhole } = jobBookHere(hand);
  const stageKey = wanted.stage === undefined ? undefined : findStage(stagesWhole, wanted.stage).key;
  if (name === undefined && Object.values(wanted).every((value) => value === undefined)) {
    throw new UserError(
      'bad-input',
      'Nothing to change was typed. Name what is to change, e.g. minutes:"2 h" people:2.',
    );
  }
  return moveJob(
    hand,
    typed,
    (record, found) => {
      const changed = editJob(record, found, {
        ...(name === undefined ? {} : { name }),
        ...(stageKey === undefined ? {} : { stage: stageKey }),
        ...(read === undefined ? {} : { minutes: read.minutes }),
        ...(wanted.people === undefined ? {} : { people: wanted.people }),
        ...(wanted.tools === undefined ? {} : { tools: splitTools(wanted.tools) }),
        ...(wanted.system === undefined ? {} : { system: wanted.system }),
        ...(wanted.note === undefined ? {} : { note: wanted.note }),
      });
      refuseStageLoop(record, changed.value, stages);
      return changed;
    },
    read === undefined ? {} : { certainty: read.readAs },
  );
}

export const reopenHere = (hand: Hand, typed: string): Answer =>
  moveJob(hand, typed, (record, found) => reopenJob(record, found, byHand(hand)));

/** Gives a job what its joints use once: one part of it, or all. */
export function renewHere(
  { job: typed, part }: { readonly job: string; readonly part: string },
  hand: Hand,
): Answer {
  const { today } = crewOf(hand);
  return moveJob(hand, typed, (record, found) => {
    const book = readJobBook(record, found.buildId, today);
    const all = renewalsFor(found.name, found.needs, book.facts.parts);
    const chosen = part === '*' ? all : all.filter((one) => one.part === part);
    if (chosen.length === 0) {
      throw new UserError(
        'already-done',
        `#${found.id} ${found.name} needs that already. Nothing was changed.`,
      );
    }
    const words = chosen.map((one) => {
      const known = one.standing?.part;
      return known === undefined ? `part:${one.quantity} +${one.part}` : `part:${one.quantity} #${known.id}`;
    });
    const given = readNeeds(record, book, found.buildId, words.join(', '), 'part');
    for (const { need } of given) {
      const known = need.kind === 'part' ? record.parts.find(need.partId) : undefined;
      if (known !== undefined && !known.singleUse) record.parts.correct({ ...known, singleUse: true });
    }
    openNeedGiver(record, found.buildId, book.stages).give(found, given);
    const said = `job #${found.id} "${found.name}" needs ${given.map(({ name }) => name).join(', ')}`;
    return { value: record.jobs.find(found.id) ?? found, said };
  });
}
