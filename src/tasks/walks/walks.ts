import { buildHere, crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer, Form } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../../records/team-record.ts';
import { findWalk } from '../../records/walks/find-walk.ts';
import { type NewFinding, noteFinding } from '../../records/walks/findings.ts';
import { guideOf } from '../../records/walks/guide-book.ts';
import { type Doer, startWalk } from '../../records/walks/moves.ts';
import { type Moved, walkOf } from '../../records/walks/open-walk.ts';
import { CANNOT, isOpen, type Walk } from '../../records/walks/walk.ts';
import { walkAnswer } from '../../records/walks/walk-answer.ts';
import { viewOf, type WalkView } from '../../records/walks/walk-view.ts';

/** Who is asking, and when. */
export const doerOf = (hand: Hand): Doer => ({
  byName: hand.who.name,
  atMs: hand.clock.nowMs(),
  today: crewOf(hand).today,
});

export const walkView = (hand: Hand, walk: Walk): WalkView =>
  viewOf(hand.record, walk, hand.clock.nowMs(), crewOf(hand).today);

/** The search meant among this channel's that go on. */
export const walkHere = (hand: Hand, typed: string | undefined): Walk =>
  findWalk(hand.record, buildHere(hand)?.id, typed, 'search');

/**
 * The search a button names.
 *
 * @throws UserError 'not-found' when it is another build's.
 */
export function walkNamed(hand: Hand, id: number): Walk {
  const walk = walkOf(hand.record, id);
  if (walk.buildId === buildHere(hand)?.id) return walk;
  throw new UserError('not-found', 'That search belongs to another build. Nothing was changed.');
}

/** Begins a search, or shows the one that goes on for the same symptom. */
export function startHere(hand: Hand, symptom: string): Answer {
  const guide = guideOf(symptom);
  const build = buildHere(hand);
  const going =
    build && hand.record.walks.ofBuild(build.id).find((one) => isOpen(one) && one.symptom === symptom);
  if (going !== undefined) {
    const card = walkAnswer(walkView(hand, going));
    return { ...card, certainty: `Begun already by ${going.startedBy}. ${card.certainty ?? ''}` };
  }
  return moved(hand, (record) => startWalk(record, openBuildHere(record, hand).id, guide, doerOf(hand)));
}

/** Notes a finding and shows what comes next, on the message it was pressed on. */
export function foundHere(hand: Hand, finding: NewFinding): Answer {
  walkNamed(hand, finding.walkId);
  return moved(hand, (record) => noteFinding(record, finding, doerOf(hand)));
}

/** Changes a search and shows it as it then is: in place where its own button was pressed, else as a new card. */
export function moved(hand: Hand, move: (record: TeamRecord) => Moved): Answer {
  const changed = hand.change(move);
  const card = shown(hand, changed.value);
  // a card in mid-search has its own way back, under So far, and no room for another button
  const offersUndo = !hand.pressedInPlace || changed.value.state === 'finished';
  return {
    ...card,
    ...(offersUndo ? { buttons: [...(card.buttons ?? []), undoButton(changed)] } : {}),
    data: { ...card.data, said: changed.said, change: changed.changeId },
  };
}

/** A search as it stands; redrawn where its own button was pressed. */
export const shown = (hand: Hand, walk: Walk): Answer => inPlace(hand, walkAnswer(walkView(hand, walk)));

export const inPlace = (hand: Hand, answer: Answer): Answer =>
  hand.pressedInPlace ? { ...answer, inPlace: true } : answer;

/** Asks what was found at a step, with a note. */
export function noteForm(hand: Hand, walkId: number, step: string): Form {
  const walk = walkNamed(hand, walkId);
  const test = guideOf(walk.symptom).tests.find(({ id }) => id === step);
  if (test === undefined)
    throw new UserError('stale-message', 'The guide no longer asks that. /fault resume goes on.');
  return {
    kind: 'form',
    title: 'What did you find?',
    does: { command: 'fault', action: 'noted', args: { walk: walkId, step } },
    fields: [
      {
        name: 'outcome',
        label: 'Found',
        hint: test.test.slice(0, 100),
        required: true,
        choices: [
          ...test.outcomes.map(({ id, label }) => ({ label, value: id })),
          { label: 'Can’t do that now', value: CANNOT },
        ],
      },
      {
        name: 'note',
        label: 'Note',
        hint: 'The figure, the place, what it looked like',
        required: false,
        long: true,
      },
    ],
  };
}
