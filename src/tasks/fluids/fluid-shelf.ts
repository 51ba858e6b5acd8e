import { crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { readFluidText } from '../../phrases/fluid-text.ts';
import { plainGrade } from '../../records/fluids/fluid.ts';
import { sayShelf } from '../../records/fluids/fluid-answer.ts';
import { buy } from '../../records/fluids/move-fluid.ts';
import { litresOf } from '../../records/fluids/say-fluid.ts';
import { casesHere, gradeMeant, litres, shelfHere, shelfLeft, spelled, upper } from './fluids.ts';

/** More in one line is a slip. */
const MOST_BOTTLES = 50;

export interface BoughtTyped {
  readonly what: string;
  readonly volume?: string | undefined;
  readonly grade?: string | undefined;
}

/** "2 x 5 L 10W-40": bottles onto the shelf. */
export function boughtFluid(hand: Hand, typed: BoughtTyped): Answer {
  const text = readFluidText(typed.what);
  const grade = typed.grade ?? text.grade;
  const volume = typed.volume ?? text.volume;
  if (volume === undefined)
    throw new UserError(
      'bad-input',
      `what: how much is in a bottle? Nothing was noted. Type e.g. 2 x 5 L 10W-40.`,
    );
  if (grade === undefined)
    throw new UserError(
      'bad-input',
      `what: which grade? Nothing was noted. Type e.g. ${typed.what.trim()} 10W-40.`,
    );
  const sizeL = litres('volume', volume);
  if (sizeL <= 0) throw new UserError('out-of-range', 'volume: a bottle holds something. Nothing was noted.');
  if (text.count < 1 || text.count > MOST_BOTTLES)
    throw new UserError(
      'out-of-range',
      `what: from 1 to ${MOST_BOTTLES} bottles at a time. Nothing was noted.`,
    );
  const known = typed.grade === undefined ? gradeMeant(hand, grade) : spelled(hand, grade);
  const { today } = crewOf(hand);
  const changed = hand.change((record) =>
    buy(record, {
      buildId: openBuildHere(record, hand).id,
      count: text.count,
      sizeL,
      grade: known,
      on: today,
    }),
  );
  const bottles = shelfHere(hand).filter((one) => plainGrade(one.grade) === plainGrade(known));
  const takers = casesHere(hand).filter((one) => plainGrade(one.grade) === plainGrade(known));
  return {
    kind: 'answer',
    subject: 'Fluid',
    result: `${text.count} × ${litresOf(hand.record)(sizeL)} ${known} on the shelf`,
    certainty: [
      `${sayShelf(bottles, litresOf(hand.record))} in all.`,
      takers.length === 0 ? 'No case takes it yet.' : `For ${takers.map(({ name }) => name).join(', ')}.`,
    ].join(' '),
    buttons: [undoButton(changed)],
    audience: 'crew',
    data: {
      kind: 'bottles',
      bottles: changed.value.map(({ id }) => id),
      grade: known,
      sizeL,
      shelfL: bottles.reduce((sum, { leftL }) => sum + leftL, 0),
      said: changed.said,
      change: changed.changeId,
    },
  };
}

/** What is left in a bottle, when some was spilt or lent. */
export function bottleLeft(hand: Hand, gradeTyped: string, leftTyped: string): Answer {
  const grade = gradeMeant(hand, gradeTyped);
  const leftL = litres('left', leftTyped);
  const bottle = shelfHere(hand).find((one) => plainGrade(one.grade) === plainGrade(grade));
  if (bottle === undefined) {
    throw new UserError(
      'not-found',
      `Nothing of ${grade} is on the shelf by the record. Nothing was changed. /fluid bought notes bottles.`,
    );
  }
  if (leftL > bottle.sizeL) {
    throw new UserError(
      'out-of-range',
      `left: the bottle of ${grade} holds ${litresOf(hand.record)(bottle.sizeL)}, so ${litresOf(hand.record)(leftL)} cannot be left in it. Nothing was changed.`,
    );
  }
  const { today } = crewOf(hand);
  const changed = hand.change((record) => {
    record.fluids.take(bottle.id, leftL, today);
    return { value: null, said: `${litresOf(hand.record)(leftL)} left in a bottle of ${grade}` };
  });
  return {
    kind: 'answer',
    subject: 'Fluid',
    result: `${upper(shelfLeft(hand, grade))}`,
    certainty: `It was ${litresOf(hand.record)(bottle.leftL)} in that bottle.`,
    buttons: [undoButton(changed)],
    audience: 'crew',
    data: {
      kind: 'bottles',
      bottles: [bottle.id],
      grade,
      leftL,
      said: changed.said,
      change: changed.changeId,
    },
  };
}
