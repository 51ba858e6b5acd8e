import { openBuildHere } from '../../bot/crew.ts';
import type { Changed, Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { leaveOut, sayYes } from '../../records/stages/edit-stages.ts';
import { passStage, sayThings } from '../../records/stages/pass-stage.ts';
import { sayCondition } from '../../records/stages/say-condition.ts';
import type { Pass, Stage, StageCondition } from '../../records/stages/stage.ts';
import type { StageFacts } from '../../records/stages/stage-facts.ts';
import { plain } from '../../records/suppliers/supplier.ts';
import { whichOne } from '../../records/which-one.ts';
import { conditionHere, stageFactsHere } from './stage-names.ts';
import { askReady, PAGE_SIZE, showConditions, stageHere } from './stages.ts';

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
  const { condition } = conditionHere(hand, conditionId);
  return saidHere(hand, condition, true);
}

/** The same, named by its words. */
export function saidTyped(hand: Hand, what: string, yes: boolean): Answer {
  return saidHere(hand, saidNamed(hand, what), yes);
}

function saidHere(hand: Hand, condition: StageCondition, yes: boolean): Answer {
  const { today } = stageFactsHere(hand);
  const changed = hand.change((record) =>
    sayYes(record, openBuildHere(record, hand).id, condition, { yes, by: hand.who.name, on: today }),
  );
  return withUndo(askReady(hand, changed.value.key, 1), changed);
}

/** Everything that is for a person to say, what nobody has said yet first. */
export function saidConditions({ stages, said }: StageFacts): readonly StageCondition[] {
  const all = stages.flatMap(({ conditions }) =>
    conditions.filter(({ condition }) => condition.kind === 'said'),
  );
  const isSaid = ({ id }: StageCondition): boolean => said.some(({ conditionId }) => conditionId === id);
  return [...all.filter((one) => !isSaid(one)), ...all.filter(isSaid)];
}

function saidNamed(hand: Hand, typed: string): StageCondition {
  return conditionMeant(hand, saidConditions(stageFactsHere(hand)), typed, 'what');
}

/**
 * The condition meant by `#12` or by words of it.
 *
 * @throws UserError 'which-one' about `field` when several fit, 'not-found' when none does.
 */
export function conditionMeant(
  hand: Hand,
  conditions: readonly StageCondition[],
  typed: string,
  field: string,
): StageCondition {
  const number = /^\s*#(-?\d{1,9})\s*$/.exec(typed)?.[1];
  if (number !== undefined) return conditionHere(hand, Number(number)).condition;
  const facts = stageFactsHere(hand);
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
  const { condition } = conditionHere(hand, conditionId);
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
