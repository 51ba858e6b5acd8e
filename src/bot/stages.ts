import type { Answer, Form } from '../core/reply.ts';
import { UserError } from '../core/user-error.ts';
import { conditionItem, conditionsAnswer } from '../records/stages/conditions-answer.ts';
import { leaveOut, sayYes } from '../records/stages/edit-stages.ts';
import { sayLimits } from '../records/stages/find-readings.ts';
import { findStage } from '../records/stages/find-stage.ts';
import { passStage, sayThings } from '../records/stages/pass-stage.ts';
import { readiness } from '../records/stages/readiness.ts';
import { sayCondition } from '../records/stages/say-condition.ts';
import type { Pass, Stage, StageCondition } from '../records/stages/stage.ts';
import { readyAnswer, stageList, thingsOf } from '../records/stages/stage-answer.ts';
import type { StageFacts } from '../records/stages/stage-facts.ts';
import { procedureOf, stepItem, stepsAnswer } from '../records/stages/steps-answer.ts';
import { plain } from '../records/suppliers/supplier.ts';
import { whichOne } from '../records/which-one.ts';
import { openBuildHere } from './crew.ts';
import type { Changed, Hand } from './hand.ts';
import { namedHere } from './measures.ts';
import { pageOf } from './pages.ts';
import { nextStage, stageFactsHere } from './stage-names.ts';
import { undoButton } from './undo-button.ts';

/** Things, conditions and steps on one page of a phone. */
const PAGE_SIZE = 6;
const STEPS_A_PAGE = 4;

/** The stage typed, or the next one that is not passed. */
export function stageHere(facts: StageFacts, typed: string | undefined): Stage {
  return typed === undefined ? nextStage(facts) : findStage(facts.stages, typed);
}

/** "Are we ready?" */
export function askReady(hand: Hand, typed: string | undefined, page: number): Answer {
  const facts = stageFactsHere(hand);
  const stage = stageHere(facts, typed);
  const found = readiness(stage, facts);
  const things = thingsOf(found.missing);
  const does = { command: 'ready', action: 'show', args: { stage: stage.key } };
  const { things: shown, buttons, where } = pageOf(things, page, does, PAGE_SIZE);
  return readyAnswer({
    readiness: found,
    facts,
    shown,
    count: things.length,
    pageButtons: buttons,
    where,
  });
}

export const listStages = (hand: Hand): Answer => stageList(stageFactsHere(hand));

/** What a stage asks for. */
export function showConditions(hand: Hand, typed: string | undefined, page: number, said?: string): Answer {
  const facts = stageFactsHere(hand);
  const stage = stageHere(facts, typed);
  const does = { command: 'stage', action: 'conditions', args: { stage: stage.key } };
  const { things, buttons, where } = pageOf(stage.conditions, page, does, PAGE_SIZE);
  return conditionsAnswer({
    stage,
    items: things.map((one) => conditionItem(one, stage, facts)),
    where,
    buttons,
    facts,
    ...(said === undefined ? {} : { said }),
  });
}

/** How a stage is gone through, a few steps at a time. */
export function showSteps(hand: Hand, typed: string | undefined, page: number): Answer {
  const stage = stageHere(stageFactsHere(hand), typed);
  const procedure = procedureOf(stage);
  if (procedure === undefined) {
    throw new UserError(
      'not-found',
      `${stage.name} is a stage of your own: no procedure is kept for it. /stage show lists what it asks for.`,
    );
  }
  const does = { command: 'stage', action: 'steps', args: { stage: stage.key } };
  const numbered = procedure.steps.map((step, at) => ({ step, number: at + 1 }));
  const { things, buttons, where } = pageOf(numbered, page, does, STEPS_A_PAGE);
  return stepsAnswer({
    stage,
    procedure,
    items: things.map(({ step, number }) => stepItem(step, number)),
    where,
    buttons: [
      ...buttons,
      { label: 'Are we ready?', does: { command: 'ready', action: 'show', args: { stage: stage.key } } },
    ],
  });
}

/** Passes a stage. */
export function passHere(hand: Hand, typed: string | undefined, reason: string | undefined): Answer {
  const facts = stageFactsHere(hand);
  const { key } = stageHere(facts, typed);
  const changed = hand.change((record) =>
    passStage(record, {
      buildId: openBuildHere(record, hand).id,
      key,
      by: hand.who.name,
      on: facts.today,
      reason,
    }),
  );
  return passedAnswer(hand, changed);
}

function passedAnswer(
  hand: Hand,
  { value: { stage, pass }, said, changeId }: Changed<{ readonly stage: Stage; readonly pass: Pass }>,
): Answer {
  const facts = stageFactsHere(hand);
  const next = facts.stages.find(({ rank }) => rank > stage.rank);
  const open = pass.against.filter((line) => /^(?:Open|In doubt): /.test(line));
  return {
    kind: 'answer',
    subject: 'Stage',
    result: `${stage.name} is passed`,
    tone: pass.reason === null ? 'done' : 'soon',
    ...(pass.reason === null
      ? { certainty: `Against ${sayThings(pass.against.length)}, all of them met.` }
      : {
          certainty: `With ${sayThings(open.length)} open: “${pass.reason}”. It stays visible at every later stage.`,
        }),
    working: [...open, ...pass.against.filter((line) => !open.includes(line))],
    buttons: [
      ...(next === undefined
        ? []
        : [
            {
              label: `${next.name}?`.slice(0, 34),
              does: { command: 'ready', action: 'show', args: { stage: next.key } },
            },
          ]),
      undoButton({ value: null, said, changeId }),
    ],
    audience: 'crew',
    data: {
      kind: 'stage-pass',
      stage: stage.key,
      pass: pass.id,
      passedOn: pass.passedOn,
      by: pass.byName,
      reason: pass.reason,
      against: [...pass.against],
      said,
      change: changeId,
    },
  };
}

/** A person's yes to something that only a person can say, named by a button. */
export function saidPressed(hand: Hand, conditionId: number): Answer {
  const { condition } = namedHere(hand, conditionId);
  return saidHere(hand, condition, true);
}

/** The same, named by its words. */
export function saidTyped(hand: Hand, what: string, yes: boolean): Answer {
  return saidHere(hand, saidNamed(stageFactsHere(hand), what), yes);
}

function saidHere(hand: Hand, condition: StageCondition, yes: boolean): Answer {
  const { today } = stageFactsHere(hand);
  const changed = hand.change((record) =>
    sayYes(record, openBuildHere(record, hand).id, condition, { yes, by: hand.who.name, on: today }),
  );
  return withUndo(askReady(hand, changed.value.key, 1), changed);
}

/** Everything that is for a person to say, of stages still to come first. */
export function saidConditions({ stages }: StageFacts): readonly StageCondition[] {
  return stages.flatMap(({ conditions }) => conditions.filter(({ condition }) => condition.kind === 'said'));
}

function saidNamed(facts: StageFacts, typed: string): StageCondition {
  return conditionMeant(saidConditions(facts), typed, 'what', facts);
}

/**
 * The condition meant by `#12` or by words of it.
 *
 * @throws UserError 'which-one' about `field` when several fit, 'not-found' when none does.
 */
export function conditionMeant(
  conditions: readonly StageCondition[],
  typed: string,
  field: string,
  facts: StageFacts,
): StageCondition {
  const numbered = conditions.find(({ id }) => `#${id}` === typed.trim());
  if (numbered !== undefined) return numbered;
  const words = plain(typed)
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word.length > 2);
  const fitting = conditions.filter(({ condition }) => {
    const said = plain(sayCondition(condition, facts));
    return said.includes(plain(typed)) || (words.length > 0 && words.every((word) => said.includes(word)));
  });
  const [only, another] = fitting;
  if (only !== undefined && another === undefined) return only;
  if (only === undefined) {
    throw new UserError(
      'not-found',
      `Nothing that is asked for fits "${typed}". Nothing was changed. /stage show lists what a stage asks for.`,
    );
  }
  throw whichOne(
    `Several things fit "${typed}". Which one?`,
    fitting.map(({ id, condition }) => ({
      label: sayCondition(condition, facts).slice(0, 80),
      value: `#${id}`,
    })),
    field,
  );
}

/** Leaves a condition out, and shows what is left. */
export function dropHere(hand: Hand, conditionId: number): Answer {
  const { condition } = namedHere(hand, conditionId);
  const words = sayCondition(condition.condition, stageFactsHere(hand));
  const changed = hand.change((record) =>
    leaveOut(record, openBuildHere(record, hand).id, condition.id, words),
  );
  return reportStage(hand, changed);
}

/** A stage's conditions after a change of them, with the undo of it. */
export function reportStage(hand: Hand, changed: Changed<Stage>): Answer {
  const last = Math.ceil(changed.value.conditions.length / PAGE_SIZE);
  return withUndo(showConditions(hand, changed.value.key, last, changed.said), changed);
}

export function withUndo(answer: Answer, changed: Changed<unknown>): Answer {
  const { said, changeId: change } = changed;
  return {
    ...answer,
    buttons: [...(answer.buttons ?? []), undoButton(changed)],
    data: { ...answer.data, said, change },
  };
}

/** Asks for the reading that a stage wants, begun for whoever types it. */
export function readForm(hand: Hand, conditionId: number): Form {
  const { condition } = namedHere(hand, conditionId);
  const wanted = condition.condition;
  if (wanted.kind !== 'reading')
    throw new UserError('stale-message', 'That is no longer a reading. /ready shows what is asked for now.');
  return {
    kind: 'form',
    title: 'Log the reading',
    does: { command: 'reading', action: 'log', args: { what: wanted.reading } },
    fields: [
      {
        name: 'value',
        label: wanted.reading.slice(0, 45),
        hint: sayLimits(wanted.reading, wanted, stageFactsHere(hand).say).slice(0, 100),
      },
      { name: 'conditions', label: 'Read when', value: wanted.states.join(', '), required: false },
    ],
  };
}

/** Asks what an order of a part that nobody has noted yet still lacks. */
export function partOrderForm(hand: Hand, conditionId: number): Form {
  const { condition } = namedHere(hand, conditionId);
  const name = condition.condition.kind === 'part' ? condition.condition.name : '';
  return {
    kind: 'form',
    title: 'Order this part',
    does: { command: 'stage', action: 'order-done', args: {} },
    fields: [
      { name: 'what', label: 'What is ordered', value: name },
      { name: 'supplier', label: 'Who does it come from?' },
      { name: 'due', label: 'When will it come?', hint: 'Type it as you say it: 12 Dec, next Tuesday' },
      { name: 'quantity', label: 'How many', value: '1' },
    ],
  };
}
