import { buildHere, crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Changed, Hand } from '../../bot/hand.ts';
import { readAs } from '../../bot/quantity-option.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { findCase } from '../../records/fluids/find-case.ts';
import { type Bottle, type FluidCase, plainGrade } from '../../records/fluids/fluid.ts';
import { caseAnswer, caseData, sayShelf } from '../../records/fluids/fluid-answer.ts';
import { caseOf } from '../../records/fluids/move-fluid.ts';
import { litresOf } from '../../records/fluids/say-fluid.ts';
import { plain } from '../../records/suppliers/supplier.ts';

export const casesHere = (hand: Hand): readonly FluidCase[] => {
  const build = buildHere(hand);
  return build === undefined ? [] : hand.record.fluids.casesOf(build.id);
};

export const shelfHere = (hand: Hand): readonly Bottle[] => {
  const build = buildHere(hand);
  return build === undefined ? [] : hand.record.fluids.shelf(build.id);
};

export const caseHere = (hand: Hand, typed: string, field = 'case'): FluidCase =>
  findCase(casesHere(hand), typed, field);

/** Grades that a case takes or a bottle holds, each once. */
export function gradesHere(hand: Hand): readonly string[] {
  const all = [...casesHere(hand), ...shelfHere(hand)].map(({ grade }) => grade);
  return all.filter((grade, at) => all.findIndex((one) => plainGrade(one) === plainGrade(grade)) === at);
}

export interface CaseTyped {
  readonly name: string;
  readonly grade?: string | undefined;
  readonly capacity?: string | undefined;
  readonly note?: string | undefined;
}

/** Notes a case or corrects it; with the name alone it is shown. */
export function noteCase(hand: Hand, { name, grade, capacity, note }: CaseTyped): Answer {
  const known = casesHere(hand).find((one) => plain(one.name) === plain(name));
  if (grade === undefined && capacity === undefined && note === undefined)
    return showCase(hand, known ?? caseHere(hand, name, 'name'));
  const capacityL = capacity === undefined ? known?.capacityL : litres('capacity', capacity);
  const inside = grade === undefined ? known?.grade : spelled(hand, grade);
  if (capacityL === undefined || inside === undefined) {
    throw new UserError(
      'bad-input',
      `${name} is new: say what goes in and how much, e.g. /fluid case name:"${name}" grade:10W-40 capacity:"5.6 L". Nothing was noted.`,
    );
  }
  const changed = hand.change((record) => {
    const buildId = openBuildHere(record, hand).id;
    const written = {
      name: known?.name ?? name,
      grade: inside,
      capacityL,
      note: note ?? known?.note ?? null,
    };
    const said = `${written.name} takes ${litresOf(hand.record)(capacityL)} ${inside}`;
    if (known === undefined) return { value: record.fluids.addCase({ ...written, buildId }), said };
    record.fluids.correctCase({ ...known, ...written });
    return { value: caseOf(record, known.id), said };
  });
  return reportCase(hand, changed);
}

export function removeCase(hand: Hand, typed: string): Answer {
  const found = caseHere(hand, typed);
  if (hand.record.fluids.movesOf(found.id).length > 0) {
    throw new UserError(
      'not-now',
      `${found.name} has been filled, and its record stays. Nothing was changed. /fluid case corrects what it takes.`,
    );
  }
  const job = hand.record.jobs
    .ofBuild(found.buildId)
    .find(({ needs }) => needs.some((need) => need.kind === 'fluid' && need.caseId === found.id));
  if (job !== undefined) {
    throw new UserError(
      'not-now',
      `"${job.name}" needs ${found.name}, so it stays. Nothing was changed. /job needs job:"#${job.id}" remove:"${found.name}" comes first.`,
    );
  }
  const changed = hand.change((record) => {
    record.fluids.removeCase(found.id);
    return { value: found, said: `${found.name} taken off the list of fluids` };
  });
  return {
    kind: 'answer',
    subject: 'Fluid',
    result: `${found.name} is off the list`,
    buttons: [undoButton(changed)],
    audience: 'crew',
    data: { kind: 'fluid', case: found.id, said: changed.said, change: changed.changeId },
  };
}

/** What is in it is all that it takes. */
export function caseIsFull(hand: Hand, caseId: number): Answer {
  const found = mine(hand, caseId);
  if (found.inL === 0)
    throw new UserError('not-now', `By the record ${found.name} is empty. Nothing was changed.`);
  const changed = hand.change((record) => {
    record.fluids.correctCase({ ...found, capacityL: found.inL });
    return { value: caseOf(record, caseId), said: `${found.name} takes ${litresOf(hand.record)(found.inL)}` };
  });
  return reportCase(hand, changed);
}

function showCase(hand: Hand, fluidCase: FluidCase): Answer {
  return caseAnswer({
    fluidCase,
    today: crewOf(hand).today,
    say: litresOf(hand.record),
    moves: hand.record.fluids.movesOf(fluidCase.id),
  });
}

export function reportCase(hand: Hand, changed: Changed<FluidCase>, certainty?: string): Answer {
  const card = caseAnswer({
    fluidCase: changed.value,
    today: crewOf(hand).today,
    say: litresOf(hand.record),
    moves: hand.record.fluids.movesOf(changed.value.id),
    said: changed.said,
    ...(certainty === undefined ? {} : { certainty }),
    extraButtons: [undoButton(changed)],
  });
  return { ...card, data: { ...caseData(changed.value), said: changed.said, change: changed.changeId } };
}

/** @throws UserError 'not-found' for a button of another channel's build. */
export function mine(hand: Hand, caseId: number): FluidCase {
  const found = caseOf(hand.record, caseId);
  if (found.buildId === buildHere(hand)?.id) return found;
  throw new UserError('not-found', 'That case belongs to another build. Nothing was changed.');
}

/** A grade in the spelling it is known by here. */
export function spelled(hand: Hand, grade: string): string {
  return gradesHere(hand).find((known) => plainGrade(known) === plainGrade(grade)) ?? grade;
}

/**
 * A grade as bought. One that says more or less than a known one may be the same.
 *
 * @throws UserError 'which-one' about `grade`.
 */
export function gradeMeant(hand: Hand, grade: string): string {
  const known = gradesHere(hand);
  const same = known.find((one) => plainGrade(one) === plainGrade(grade));
  if (same !== undefined) return same;
  const words = (text: string): readonly string[] => plain(text).split(/[\s,/]+/);
  const close = known.filter((one) => {
    const [a, b] = [words(one), words(grade)];
    return a.every((word) => b.includes(word)) || b.every((word) => a.includes(word));
  });
  if (close.length === 0) return grade;
  throw new UserError(
    'which-one',
    `“${grade}” is no grade here yet, but there is ${close.join(', ')}. Which is it?`,
    {
      field: 'grade',
      choices: [
        ...close.slice(0, 4).map((one) => ({ label: one.slice(0, 80), value: one })),
        { label: `Another one: ${grade}`.slice(0, 80), value: grade },
      ],
    },
  );
}

export function shelfLeft(hand: Hand, grade: string): string {
  const bottles = shelfHere(hand).filter((one) => plainGrade(one.grade) === plainGrade(grade));
  return bottles.length === 0
    ? `no ${grade} is left on the shelf`
    : `left of ${grade}: ${sayShelf(bottles, litresOf(hand.record))}`;
}

export const litres = (field: string, typed: string): number => readAs(field, 'volume', typed).value;

export const upper = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
