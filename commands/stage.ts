import { z } from 'zod';
import { action, defineCommand, subcommand } from '../src/bot/command.ts';
import { openBuildHere } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { turned, turnedPage } from '../src/bot/turned.ts';
import { blank, line } from '../src/bot/typed.ts';
import { PAGE_ARG } from '../src/core/pages.ts';
import type { Answer } from '../src/core/reply.ts';
import { addStage, askFor, moveStage, removeStage, renameStage } from '../src/records/stages/edit-stages.ts';
import { findStage } from '../src/records/stages/find-stage.ts';
import type { Stage } from '../src/records/stages/stage.ts';
import { plain } from '../src/records/suppliers/supplier.ts';
import { placeHere } from '../src/tasks/orders/place-here.ts';
import { conditionTyped } from '../src/tasks/stages/stage-asks.ts';
import {
  conditionMeant,
  dropHere,
  passHere,
  reportStage,
  saidPressed,
  saidTyped,
  withUndo,
} from '../src/tasks/stages/stage-deeds.ts';
import { partOrderForm, readForm } from '../src/tasks/stages/stage-forms.ts';
import { NONE, stageFactsHere, stagesHere } from '../src/tasks/stages/stage-names.ts';
import {
  FIRST,
  offerAll,
  offerBehind,
  offerCases,
  offerJobs,
  offerKinds,
  offerParts,
  offerSaid,
  offerStages,
} from '../src/tasks/stages/stage-offers.ts';
import { listStages, showConditions, showSteps, stageHere } from '../src/tasks/stages/stages.ts';

const stageName = line(80);
const stage = line(80).describe('The stage: first start, mapping');
const next = line(80).optional().describe('The stage; the next one that is not passed if left out');
const behind = line(80).describe('The stage it comes behind; first to put it in front');
const words = line(150);
const limit = line(60);
const reason = line(200);
const condition = z.coerce.number().int();

export default defineCommand({
  description: 'The stages of the build: what each asks for, how it is gone through, and passing it',
  subcommands: {
    list: subcommand({
      description: 'Every stage with where it stands',
      example: '/stage list',
      input: z.object({}),
      run: (_input, hand) => listStages(hand),
    }),
    steps: subcommand({
      description: 'How a stage is gone through: what to watch, figures, when to stop',
      example: '/stage steps stage:"first start"',
      input: z.object({ stage: next }),
      suggest: { stage: offerStages },
      run: (input, hand) => showSteps(hand, input.stage, 1),
    }),
    pass: subcommand({
      description: 'Pass a stage: who, when and against what is written down',
      example: '/stage pass stage:assembly reason:"checked another way"',
      input: z.object({
        stage: next,
        reason: reason.optional().describe('Why, when something is open: it stays visible'),
      }),
      suggest: { stage: offerStages },
      run: (input, hand) => passHere(hand, input.stage, input.reason),
    }),
    said: subcommand({
      description: 'Say yes to something that only a person can say',
      example: '/stage said what:"turned over by hand"',
      input: z.object({
        what: words.describe('Words of what is asked'),
        answer: z.enum(['yes', 'no']).default('yes').describe('Yes, or that it no longer holds'),
      }),
      suggest: { what: offerSaid },
      run: (input, hand) => saidTyped(hand, input.what, input.answer === 'yes'),
    }),
    show: subcommand({
      description: 'What a stage asks for, each with a button to leave it out',
      example: '/stage show stage:"first start"',
      input: z.object({ stage: next }),
      suggest: { stage: offerStages },
      run: (input, hand) => showConditions(hand, input.stage, 1),
    }),
    ask: subcommand({
      description: 'Ask for one thing more at a stage',
      example: '/stage ask stage:"road fuelling" said:"brake lights seen from behind"',
      input: z.object({
        stage,
        said: words.optional().describe('Something a person says yes to'),
        job: line(200).optional().describe('A job that must be done'),
        part: line(200).optional().describe('A part that must be here or fitted'),
        fluid: line(80).optional().describe('A case that must be filled'),
        reading: line(60).optional().describe('A reading: oil pressure, coolant temperature'),
        temporary: words.optional().describe('Something that must be in place for now: no spark'),
        min: limit.optional().describe('Of a reading: at least'),
        max: limit.optional().describe('Of a reading: at most'),
        states: limit.optional().describe('Of a reading: hot, idle; cranking; at rest'),
        fresh_days: z.int().min(1).max(365).default(14).describe('Of a reading: no older than'),
        undo_before: line(80).optional().describe('Of something temporary: undone before this stage'),
        proof: z.boolean().default(false).describe('Shown by going through the stage, not before it'),
      }),
      suggest: {
        stage: offerStages,
        job: offerJobs,
        part: offerParts,
        fluid: offerCases,
        reading: offerKinds,
        undo_before: offerStages,
      },
      run: ({ stage: typed, ...asked }, hand) => {
        const { key } = stageTyped(hand, typed);
        const wanted = conditionTyped(hand, asked);
        return reportStage(
          hand,
          hand.change((record) => askFor(record, openBuildHere(record, hand).id, key, wanted)),
        );
      },
    }),
    drop: subcommand({
      description: 'No longer ask for something at a stage',
      input: z.object({ condition: words.describe('Words of it'), stage: next }),
      suggest: { condition: offerAll, stage: offerStages },
      run: (input, hand) => dropTyped(hand, input.condition, input.stage),
    }),
    add: subcommand({
      description: 'Put in a stage of your own',
      example: '/stage add name:"Brake test" after:"warm-up"',
      input: z.object({ name: stageName.describe('What it is called'), after: behind }),
      suggest: { after: offerBehind },
      run: (input, hand) => {
        const after = afterTyped(hand, input.after);
        return reportStage(
          hand,
          hand.change((record) => addStage(record, openBuildHere(record, hand).id, input.name, after)),
        );
      },
    }),
    move: subcommand({
      description: 'Put a stage behind another one',
      input: z.object({ stage, after: behind }),
      suggest: { stage: offerStages, after: offerBehind },
      run: (input, hand) => {
        const { key } = stageTyped(hand, input.stage);
        const after = afterTyped(hand, input.after);
        return listAfter(hand, (record, buildId) => moveStage(record, buildId, key, after));
      },
    }),
    rename: subcommand({
      description: 'Call a stage by another name',
      input: z.object({ stage, name: stageName.describe('What it is to be called') }),
      suggest: { stage: offerStages },
      run: (input, hand) => {
        const { key } = stageTyped(hand, input.stage);
        return listAfter(hand, (record, buildId) => renameStage(record, buildId, key, input.name));
      },
    }),
    remove: subcommand({
      description: 'Take a stage off the list that was never passed',
      input: z.object({ stage }),
      suggest: { stage: offerStages },
      run: (input, hand) => {
        const { key } = stageTyped(hand, input.stage);
        return listAfter(hand, (record, buildId) => removeStage(record, buildId, key));
      },
    }),
  },
  actions: {
    list: action({ input: z.object({}), run: (_input, hand) => listStages(hand) }),
    steps: action({
      input: z.object({ stage: line(80), [PAGE_ARG]: turnedPage }),
      run: (input, hand) => turned(hand, input[PAGE_ARG], (page) => showSteps(hand, input.stage, page)),
    }),
    pass: action({
      input: z.object({ stage: line(80), reason: blank }),
      run: (input, hand) => passHere(hand, input.stage, input.reason),
    }),
    said: action({
      input: z.object({ condition }),
      run: (input, hand) => saidPressed(hand, input.condition),
    }),
    drop: action({ input: z.object({ condition }), run: (input, hand) => dropHere(hand, input.condition) }),
    conditions: action({
      input: z.object({ stage: line(80), [PAGE_ARG]: turnedPage }),
      run: (input, hand) => turned(hand, input[PAGE_ARG], (page) => showConditions(hand, input.stage, page)),
    }),
    read: action({ input: z.object({ condition }), run: (input, hand) => readForm(hand, input.condition) }),
    order: action({
      input: z.object({ condition }),
      run: (input, hand) => partOrderForm(hand, input.condition),
    }),
    'order-done': action({
      input: z.object({
        what: line(200),
        supplier: line(80),
        due: blank,
        quantity: z.coerce.number('how many must be a number').int().min(1).max(10_000),
      }),
      run: (input, hand) => placeHere(hand, input),
    }),
  },
});

const stageTyped = (hand: Hand, typed: string): Stage => findStage(stagesHere(hand), typed);

/** The stage to stand behind; null for the front. */
function afterTyped(hand: Hand, typed: string): string | null {
  return [FIRST, NONE].includes(plain(typed)) ? null : findStage(stagesHere(hand), typed, 'after').key;
}

type StageWork = (
  record: Parameters<Parameters<Hand['change']>[0]>[0],
  buildId: number,
) => {
  readonly value: Stage;
  readonly said: string;
};

/** Changes the list of stages and shows it. */
function listAfter(hand: Hand, work: StageWork): Answer {
  const changed = hand.change((record) => work(record, openBuildHere(record, hand).id));
  return withUndo(listStages(hand), changed);
}

function dropTyped(hand: Hand, typed: string, stageTypedIn: string | undefined): Answer {
  const facts = stageFactsHere(hand);
  const among =
    stageTypedIn === undefined
      ? facts.stages.flatMap(({ conditions }) => conditions)
      : stageHere(facts, stageTypedIn).conditions;
  return dropHere(hand, conditionMeant(hand, among, typed, 'condition').id);
}
