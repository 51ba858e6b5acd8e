import { z } from 'zod';
import { action, defineCommand, type Suggest, subcommand } from '../src/bot/command.ts';
import { buildHere, crewOf, openBuildHere } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { DEBRIS_NAME, offerSet, takeFromSet } from '../src/bot/job-sets.ts';
import {
  buildWithJobs,
  byHand,
  finishHere,
  jobBookHere,
  moveJob,
  reportJob,
  showJob,
  suggestJobsHere,
  suggestStagesHere,
} from '../src/bot/jobs-here.ts';
import { pageOf } from '../src/bot/pages.ts';
import { readMinutes } from '../src/bot/read-minutes.ts';
import type { Answer } from '../src/core/reply.ts';
import { UserError } from '../src/core/user-error.ts';
import { DEBRIS } from '../src/records/jobs/choose.ts';
import { byStage, jobList } from '../src/records/jobs/job-list.ts';
import { addJob, dropJob, editJob, reopenJob } from '../src/records/jobs/moves.ts';
import { readNeeds } from '../src/records/jobs/need-words.ts';
import { addNeeds, openNeedGiver, refuseStageLoop, removeNeeds } from '../src/records/jobs/needs.ts';
import { readJobBook } from '../src/records/jobs/read-facts.ts';
import { renewalsFor } from '../src/records/jobs/single-use.ts';
import { suggestParts } from '../src/records/parts/find-part.ts';
import { CAME } from '../src/records/parts/part-moves.ts';
import { findStage } from '../src/records/stages/find-stage.ts';

/** One line of text, however it was pasted. */
const line = (most: number) =>
  z
    .string()
    .min(1)
    .max(most)
    .transform((text) => text.replace(/\s+/g, ' ').trim())
    .refine((text) => text !== '', 'nothing was typed');

const PAGE_SIZE = 8;

const job = line(120).describe('Its number, or its name');
const stage = line(60);
const minutes = line(60);
const people = z.int().min(1).max(20);
const tools = line(200);
const note = line(300);
const needs = line(400);
const page = z.coerce.number().int().min(1).max(10_000);
const came = z.enum(CAME);
const pressed = { job: z.string().max(20) };

const optional = {
  stage: stage.optional().describe('The stage it belongs to: it cannot be passed while the job is open'),
  minutes: minutes.optional().describe('How long: 90 min, or 1-2 h, likely 90 min'),
  people: people.optional().describe('How many people it takes'),
  tools: tools.optional().describe('Tools it takes, with commas between'),
  system: line(40).optional().describe('Lubrication, cooling, fuel: your own word'),
  note: note.optional().describe('Anything worth remembering'),
};

const suggestJob: Suggest = suggestJobsHere;
const suggestStage: Suggest = suggestStagesHere;
/** Offers what the last thing of the list could be, the ones before it kept. */
const suggestNeeds: Suggest = (typed, hand) => {
  const kept = typed.replace(/[^,;]*$/, '');
  const last = typed.slice(kept.length).trim();
  const build = buildHere(hand);
  const parts = build ? suggestParts(hand.record, build.id, last) : [];
  return [
    ...suggestJobsHere(last, hand).map(({ label, value }) => ({ label, value: `job:${value}` })),
    ...parts,
  ]
    .map(({ label, value }) => ({
      label: `${kept}${label}`.slice(0, 100),
      value: `${kept}${kept === '' ? '' : ' '}${value}`,
    }))
    .filter(({ value }) => value.length <= 100);
};
const suggestSet: Suggest = (typed, hand) => [
  ...[{ label: DEBRIS_NAME, value: DEBRIS }].filter(({ label }) =>
    label.toLowerCase().includes(typed.toLowerCase()),
  ),
  ...suggestStagesHere(typed, hand),
];

export default defineCommand({
  description: 'Jobs: what is to be done, what each needs, and what is done',
  subcommands: {
    add: subcommand({
      description: 'Write a job down; what is renewed when its joint is opened is offered',
      example: '/job add name:"refit the sump" stage:assembly minutes:"1-2 h, likely 90 min"',
      input: z.object({
        name: line(120).describe('What is to be done: refit the sump'),
        needs: needs
          .optional()
          .describe('Parts, jobs, fluids, stages it waits for: 2 x crush washer, job #3'),
        ...optional,
      }),
      suggest: { stage: suggestStage, needs: suggestNeeds },
      run: add,
    }),
    list: subcommand({
      description: 'Every job by stage, or those of one stage',
      example: '/job list',
      input: z.object({
        stage: stage.optional().describe('Only this stage'),
        page: page.optional().describe('Which page of a long list'),
      }),
      suggest: { stage: suggestStage },
      run: list,
    }),
    show: subcommand({
      description: 'One job: what it needs and what it waits for',
      example: '/job show job:sump',
      input: z.object({ job }),
      suggest: { job: suggestJob },
      run: (input, hand) => showJob(hand, input.job),
    }),
    needs: subcommand({
      description: 'Add to what a job waits for, or take off',
      example: '/job needs job:"refit the sump" add:"part:+sump gasket"',
      input: z.object({
        job,
        add: needs.optional().describe('What it needs: sump gasket, 2 x washer, job #3, stage:first-start'),
        remove: needs.optional().describe('What it does not need after all'),
      }),
      suggest: { job: suggestJob, add: suggestNeeds, remove: suggestNeeds },
      run: changeNeeds,
    }),
    edit: subcommand({
      description: 'Change what is said of a job',
      example: '/job edit job:"refit the sump" minutes:"2 h" people:2',
      input: z.object({ job, name: line(120).optional().describe('A new name'), ...optional }),
      suggest: { job: suggestJob, stage: suggestStage },
      run: edit,
    }),
    done: subcommand({
      description: 'A job is done; parts it fits count as fitted',
      example: '/job done job:"refit the sump"',
      input: z.object({
        job,
        came: came.optional().describe('A part not in hand: it came of its order, or was here anyway'),
      }),
      suggest: { job: suggestJob },
      run: (input, hand) => finishHere(hand, input.job, input.came),
    }),
    reopen: subcommand({
      description: 'Take a job up again; what it used once is to be renewed',
      example: '/job reopen job:"refit the sump"',
      input: z.object({ job }),
      suggest: { job: suggestJob },
      run: (input, hand) => reopen(hand, input.job),
    }),
    drop: subcommand({
      description: 'Give a job up: it blocks nothing any more',
      example: '/job drop job:"refit the sump"',
      input: z.object({ job }),
      suggest: { job: suggestJob },
      run: (input, hand) => moveJob(hand, input.job, dropJob),
    }),
    'from-set': subcommand({
      description: 'Choose from a starting set by stage, or what a bearing failure asks for',
      example: '/job from-set set:"bearing failure"',
      input: z.object({
        set: line(60).describe('A stage, or: bearing failure'),
        page: page.optional().describe('Which page of a long list'),
      }),
      suggest: { set: suggestSet },
      run: (input, hand) => offerSet(hand, input.set, input.page ?? 1),
    }),
  },
  actions: {
    show: action({
      input: z.object(pressed),
      run: (input, hand) => showJob(hand, input.job),
    }),
    list: action({
      input: z.object({ stage: stage.optional(), page }),
      run: (input, hand) => ({ ...list(input, hand), inPlace: hand.pressedInPlace }),
    }),
    done: action({
      input: z.object({ ...pressed, came: came.optional() }),
      run: (input, hand) => finishHere(hand, input.job, input.came),
    }),
    reopen: action({ input: z.object(pressed), run: (input, hand) => reopen(hand, input.job) }),
    drop: action({ input: z.object(pressed), run: (input, hand) => moveJob(hand, input.job, dropJob) }),
    renew: action({ input: z.object({ ...pressed, part: line(120) }), run: renew }),
    'from-set': action({
      input: z.object({ set: line(60), page }),
      run: (input, hand) => ({ ...offerSet(hand, input.set, input.page), inPlace: hand.pressedInPlace }),
    }),
    take: action({
      input: z.object({ set: line(60), key: line(60), page: page.optional() }),
      run: ({ set, key, page: at }, hand) => takeFromSet(hand, set, key, at),
    }),
  },
});

interface Wanted {
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

function add(
  wanted: Wanted & { readonly name: string; readonly needs?: string | undefined },
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

function list(
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

function changeNeeds(
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

function edit(
  { job: typed, name, ...wanted }: Wanted & { readonly job: string; readonly name?: string | undefined },
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

const reopen = (hand: Hand, typed: string): Answer =>
  moveJob(hand, typed, (record, found) => reopenJob(record, found, byHand(hand)));

/** Gives a job what its joints use once: one part of it, or all. */
function renew({ job: typed, part }: { readonly job: string; readonly part: string }, hand: Hand): Answer {
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
