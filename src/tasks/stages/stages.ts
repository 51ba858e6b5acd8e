import type { Hand } from '../../bot/hand.ts';
import { pageOf } from '../../core/pages.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { conditionItem, conditionsAnswer } from '../../records/stages/conditions-answer.ts';
import { findStage } from '../../records/stages/find-stage.ts';
import { readiness } from '../../records/stages/readiness.ts';
import type { Stage } from '../../records/stages/stage.ts';
import { readyAnswer, stageList, thingsOf } from '../../records/stages/stage-answer.ts';
import type { StageFacts } from '../../records/stages/stage-facts.ts';
import { procedureOf, stepItem, stepsAnswer } from '../../records/stages/steps-answer.ts';
import { nextStage, stageFactsHere } from './stage-names.ts';

/** Things, conditions and steps on one page of a phone. */
export const PAGE_SIZE = 6;
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
