import { buildHere, crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Changed, Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { readMeasure } from '../../phrases/measures/read-measure.ts';
import {
  changeMeasure,
  type MeasureChange,
  measureOf,
  putAgain,
  putMeasure,
  undoMeasure,
} from '../../records/measures/change-measure.ts';
import { findMeasure } from '../../records/measures/find-measure.ts';
import type { Measure } from '../../records/measures/measure.ts';
import { measureAnswer, measureData } from '../../records/measures/measure-answer.ts';
import type { ConditionOf, Stage } from '../../records/stages/stage.ts';
import type { StageFacts } from '../../records/stages/stage-facts.ts';
import { standingOf } from '../../records/stages/standing.ts';
import { plain } from '../../records/suppliers/supplier.ts';
import { conditionHere, isStageName, NONE, stageFactsHere, stageMeant } from '../stages/stage-names.ts';
import { beforeOf, countsAs, refuseTwin, requireInOrder, stageOf, undoerOf } from './measure-ties.ts';

/** What somebody says of a measure, all of it as typed. */
export interface MeasureTyped {
  readonly what: string;
  readonly until?: string | undefined;
  readonly undo_before?: string | undefined;
  readonly required_for?: string | undefined;
  readonly note?: string | undefined;
}

export const measuresHere = (hand: Hand): readonly Measure[] => {
  const build = buildHere(hand);
  return build === undefined ? [] : hand.record.measures.ofBuild(build.id);
};

export const measureHere = (hand: Hand, typed: string): Measure => findMeasure(measuresHere(hand), typed);

/**
 * Puts a measure in, as its sentence and the options say.
 *
 * @throws UserError 'which-one' for what undoes it or a stage where the words leave a doubt.
 */
export function putTemporary(hand: Hand, typed: MeasureTyped): Answer {
  const facts = stageFactsHere(hand);
  const sentence = readMeasure(typed.what, (words) => isStageName(facts.stages, words));
  if (sentence.what === '')
    throw new UserError(
      'bad-input',
      'what: say what was done, e.g. blanked the turbo drain. Nothing was written down.',
    );
  refuseTwin(sentence.what, facts);
  const until = typed.until ?? sentence.until;
  const undoer = undoerOf(until, typed.until === undefined ? sentence.untilIs : undefined, hand);
  const required = stageOf(typed.required_for ?? sentence.during, 'required_for', facts);
  const before = beforeOf(typed.undo_before, sentence.before, facts);
  const counts = countsAs(sentence.what, required, facts);
  const tied = {
    ...undoer,
    answers: counts.words,
    requiredAt: (required ?? counts.stage)?.key ?? null,
    undoneBefore: before === undefined ? counts.undoneBefore : (before?.key ?? null),
  };
  requireInOrder(tied, facts.stages);
  const { today } = crewOf(hand);
  return report(
    hand,
    hand.change((record) =>
      putMeasure(record, {
        ...tied,
        buildId: openBuildHere(record, hand).id,
        what: sentence.what,
        putOn: today,
        putByName: hand.who.name,
        note: typed.note ?? null,
      }),
    ),
  );
}

/** What is to be corrected of which measure. */
export interface MeasureCorrection extends Omit<MeasureTyped, 'what'> {
  readonly measure: string;
  readonly what?: string | undefined;
}

/** Corrects what is given of a measure; `none` clears. */
export function changeTemporary(hand: Hand, { measure: typed, ...given }: MeasureCorrection): Answer {
  const found = measureHere(hand, typed);
  const facts = stageFactsHere(hand);
  const required = stageOf(given.required_for, 'required_for', facts);
  const before = stageOf(given.undo_before, 'undo_before', facts);
  const change: MeasureChange = {
    ...(given.what === undefined ? {} : { what: given.what }),
    ...(given.until === undefined ? {} : undoerOf(given.until, undefined, hand)),
    ...(required === undefined ? {} : { requiredAt: required?.key ?? null, answers: [] }),
    ...(required === undefined || required === null
      ? {}
      : { answers: countsAs(given.what ?? found.what, required, facts).words }),
    ...(before === undefined ? {} : { undoneBefore: before?.key ?? null }),
    ...(given.note === undefined ? {} : { note: plain(given.note) === NONE ? null : given.note }),
  };
  if (Object.keys(change).length === 0) {
    throw new UserError(
      'bad-input',
      'Nothing to change was given: what, until, undo_before, required_for or note. Nothing was changed.',
    );
  }
  requireInOrder({ ...found, ...change }, facts.stages);
  return report(
    hand,
    hand.change((record) => changeMeasure(record, found.id, change)),
  );
}

/** Ties a measure to the stage that it must not outlive. */
export function tieBefore(hand: Hand, id: number, stageKey: string): Answer {
  const facts = stageFactsHere(hand);
  const stage = stageMeant(facts, stageKey, 'stage');
  requireInOrder({ ...here(hand, id), undoneBefore: stage?.key ?? null }, facts.stages);
  return report(
    hand,
    hand.change((record) => changeMeasure(record, id, { undoneBefore: stage?.key ?? null })),
  );
}

export function undoneTemporary(hand: Hand, id: number, note: string | undefined): Changed<Measure> {
  const { today } = crewOf(hand);
  here(hand, id);
  return hand.change((record) => undoMeasure(record, id, { by: hand.who.name, on: today, note }));
}

export function againTemporary(hand: Hand, id: number): Answer {
  here(hand, id);
  const { today } = crewOf(hand);
  return report(
    hand,
    hand.change((record) => putAgain(record, id, hand.who.name, today)),
  );
}

/** Puts in what a stage requires, in the stage's own words. */
export function putRequired(hand: Hand, conditionId: number): Answer {
  const { stage, condition } = requiredNamed(hand, conditionId);
  const { today } = crewOf(hand);
  refuseTwin(condition.word, stageFactsHere(hand));
  return report(
    hand,
    hand.change((record) =>
      putMeasure(record, {
        buildId: openBuildHere(record, hand).id,
        what: condition.word,
        putOn: today,
        putByName: hand.who.name,
        until: null,
        partId: null,
        jobId: null,
        answers: [condition.word],
        requiredAt: stage.key,
        undoneBefore: condition.undoneBefore,
        note: null,
      }),
    ),
  );
}

/** Says that a measure is what a stage requires. */
export function countAs(hand: Hand, id: number, conditionId: number): Answer {
  const { stage, condition } = requiredNamed(hand, conditionId);
  const measure = here(hand, id);
  const change = {
    answers: [...new Set([...measure.answers, condition.word])],
    requiredAt: measure.requiredAt ?? stage.key,
    undoneBefore: measure.undoneBefore ?? condition.undoneBefore,
  };
  return report(
    hand,
    hand.change((record) => changeMeasure(record, id, change)),
  );
}

/** A measure's card after a change, with its undo. */
export function report(hand: Hand, changed: Changed<Measure>): Answer {
  const facts = stageFactsHere(hand);
  const measure = changed.value;
  const card = measureAnswer({
    measure,
    stages: facts.stages,
    today: facts.today,
    said: changed.said,
    offered: measure.undoneBefore === null ? offeredStages(facts) : [],
    extraButtons: [undoButton(changed)],
  });
  return { ...card, data: { ...measureData(measure), said: changed.said, change: changed.changeId } };
}

/** Stages before which things are usually undone, as far as they are still to come. */
function offeredStages(facts: StageFacts): readonly Stage[] {
  const usual = ['oil-pressure', 'first-start', 'road-fuelling'];
  return facts.stages.filter(
    (stage) => usual.includes(stage.key) && standingOf(stage, facts).kind !== 'passed',
  );
}

/** @throws UserError 'stale-message' when it is not one of this build's. */
function here(hand: Hand, id: number): Measure {
  const found = measureOf(hand.record, id);
  if (found.buildId === buildHere(hand)?.id) return found;
  throw new UserError('not-found', 'That temporary measure belongs to another build. Nothing was changed.');
}

function requiredNamed(
  hand: Hand,
  conditionId: number,
): { readonly stage: Stage; readonly condition: ConditionOf<'measure'> } {
  const { stage, condition } = conditionHere(hand, conditionId);
  if (condition.condition.kind === 'measure') return { stage, condition: condition.condition };
  throw new UserError(
    'stale-message',
    'That stage no longer requires it. /ready shows what is asked for now.',
  );
}
