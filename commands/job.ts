import { z } from 'zod';
import { action, defineCommand, type Suggest, subcommand } from '../src/bot/command.ts';
import { buildHere } from '../src/bot/crew.ts';
import { line } from '../src/bot/typed.ts';
import { DEBRIS } from '../src/records/jobs/choose.ts';
import { dropJob } from '../src/records/jobs/moves.ts';
import { suggestParts } from '../src/records/parts/find-part.ts';
import { CAME } from '../src/records/parts/part-moves.ts';
import {
  addHere,
  editHere,
  listHere,
  needsHere,
  renewHere,
  reopenHere,
} from '../src/tasks/jobs/job-changes.ts';
import { DEBRIS_NAME, offerSet, takeFromSet } from '../src/tasks/jobs/job-sets.ts';
import {
  finishHere,
  moveJob,
  showJob,
  suggestClosedJobs,
  suggestJobsHere,
  suggestOpenJobs,
  suggestStagesHere,
} from '../src/tasks/jobs/jobs-here.ts';

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
      run: addHere,
    }),
    list: subcommand({
      description: 'Every job by stage, or those of one stage',
      example: '/job list',
      input: z.object({
        stage: stage.optional().describe('Only this stage'),
        page: page.optional().describe('Which page of a long list'),
      }),
      suggest: { stage: suggestStage },
      run: listHere,
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
      run: needsHere,
    }),
    edit: subcommand({
      description: 'Change what is said of a job',
      example: '/job edit job:"refit the sump" minutes:"2 h" people:2',
      input: z.object({ job, name: line(120).optional().describe('A new name'), ...optional }),
      suggest: { job: suggestJob, stage: suggestStage },
      run: editHere,
    }),
    done: subcommand({
      description: 'A job is done; parts it fits count as fitted',
      example: '/job done job:"refit the sump"',
      input: z.object({
        job,
        came: came.optional().describe('A part not in hand: it came of its order, or was here anyway'),
      }),
      suggest: { job: suggestOpenJobs },
      run: (input, hand) => finishHere(hand, input.job, input.came),
    }),
    reopen: subcommand({
      description: 'Take a job up again; what it used once is to be renewed',
      example: '/job reopen job:"refit the sump"',
      input: z.object({ job }),
      suggest: { job: suggestClosedJobs },
      run: (input, hand) => reopenHere(hand, input.job),
    }),
    drop: subcommand({
      description: 'Give a job up: it blocks nothing any more',
      example: '/job drop job:"refit the sump"',
      input: z.object({ job }),
      suggest: { job: suggestOpenJobs },
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
      run: (input, hand) => ({ ...listHere(input, hand), inPlace: hand.pressedInPlace }),
    }),
    done: action({
      input: z.object({ ...pressed, came: came.optional() }),
      run: (input, hand) => finishHere(hand, input.job, input.came),
    }),
    reopen: action({ input: z.object(pressed), run: (input, hand) => reopenHere(hand, input.job) }),
    drop: action({ input: z.object(pressed), run: (input, hand) => moveJob(hand, input.job, dropJob) }),
    renew: action({ input: z.object({ ...pressed, part: line(120) }), run: renewHere }),
    'from-set': action({
      input: z.object({ set: line(60), page: page.optional() }),
      run: (input, hand) => ({
        ...offerSet(hand, input.set, input.page ?? 1),
        inPlace: hand.pressedInPlace && input.page !== undefined,
      }),
    }),
    take: action({
      input: z.object({ set: line(60), key: line(60), page: page.optional() }),
      run: ({ set, key, page: at }, hand) => takeFromSet(hand, set, key, at),
    }),
  },
});
