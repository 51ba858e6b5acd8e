import { z } from 'zod';
import { action, defineCommand, type Suggest, subcommand } from '../src/bot/command.ts';
import { crewOf } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { turned, turnedPage } from '../src/bot/turned.ts';
import { line } from '../src/bot/typed.ts';
import { PAGE_ARG, pageOf } from '../src/core/pages.ts';
import type { Answer } from '../src/core/reply.ts';
import { suggestMeasures } from '../src/records/measures/find-measure.ts';
import { isInPlace } from '../src/records/measures/measure.ts';
import { measureData, measureItem } from '../src/records/measures/measure-answer.ts';
import { suggestUndoers } from '../src/records/measures/what-undoes.ts';
import { NOTICE_ARG } from '../src/records/orders/order-buttons.ts';
import { suggestStages } from '../src/records/stages/find-stage.ts';
import { redrawForRemark } from '../src/reminders/redraw-morning.ts';
import { knownHere } from '../src/tasks/measures/measure-ties.ts';
import {
  againTemporary,
  changeTemporary,
  countAs,
  measureHere,
  measuresHere,
  putRequired,
  putTemporary,
  report,
  tieBefore,
  undoneTemporary,
} from '../src/tasks/measures/measures.ts';
import { NONE, stagesHere } from '../src/tasks/stages/stage-names.ts';

const measure = line(200).describe('Its number, or words of it');
const until = line(100);
const stage = line(60);
const note = line(200).optional();
const id = z.coerce.number().int().positive();
const condition = z.coerce.number().int();

const offerMeasures: Suggest = (typed, hand) => suggestMeasures(measuresHere(hand), typed);
const offerUndoers: Suggest = (typed, hand) => suggestUndoers(typed, knownHere(hand));
const offerStages: Suggest = (typed, hand) => [
  ...suggestStages(stagesHere(hand), typed),
  ...(NONE.includes(typed) ? [{ label: 'No stage', value: NONE }] : []),
];

export default defineCommand({
  description: 'What was done only for now, what undoes it, and before which stage',
  subcommands: {
    put: subcommand({
      description: 'Write down something temporary, in one sentence',
      example: '/temporary put what:"blanked the turbo drain until the hose comes, undo before first start"',
      input: z.object({
        what: line(200).describe('Blanked the turbo drain until the hose comes, undo before first start'),
        until: until.optional().describe('The part or job that undoes it, if the sentence does not say'),
        undo_before: stage.optional().describe('The stage that it must not outlive'),
        required_for: stage.optional().describe('The stage that it must be in place for'),
        note: note.describe('Anything worth remembering about it'),
      }),
      suggest: { until: offerUndoers, undo_before: offerStages, required_for: offerStages },
      run: (input, hand) => putTemporary(hand, input),
    }),
    list: subcommand({
      description: 'Everything temporary that is in place',
      example: '/temporary list',
      input: z.object({ undone: z.boolean().default(false).describe('What has been undone as well') }),
      run: (input, hand) => list(hand, input.undone, 1),
    }),
    undone: subcommand({
      description: 'Note that it has been undone',
      input: z.object({ measure, note: note.describe('How it was found, or what was left') }),
      suggest: { measure: offerMeasures },
      run: (input, hand) =>
        report(hand, undoneTemporary(hand, measureHere(hand, input.measure).id, input.note)),
    }),
    change: subcommand({
      description: 'Correct its words, what undoes it or its stages; none clears',
      input: z.object({
        measure,
        what: line(200).optional().describe('What was done'),
        until: until.optional().describe('The part or job that undoes it'),
        undo_before: stage.optional().describe('The stage that it must not outlive'),
        required_for: stage.optional().describe('The stage that it must be in place for'),
        note: note.describe('Anything worth remembering about it'),
      }),
      suggest: {
        measure: offerMeasures,
        until: offerUndoers,
        undo_before: offerStages,
        required_for: offerStages,
      },
      run: (input, hand) => changeTemporary(hand, input),
    }),
  },
  actions: {
    undone: action({
      input: z.object({ measure: id, [NOTICE_ARG]: z.coerce.number().int().positive().optional() }),
      run: (input, hand) => undonePressed(hand, input.measure, input[NOTICE_ARG]),
    }),
    again: action({
      input: z.object({ measure: id }),
      run: (input, hand) => againTemporary(hand, input.measure),
    }),
    before: action({
      input: z.object({ measure: id, stage }),
      run: (input, hand) => tieBefore(hand, input.measure, input.stage),
    }),
    required: action({
      input: z.object({ condition }),
      run: (input, hand) => putRequired(hand, input.condition),
    }),
    answers: action({
      input: z.object({ measure: id, condition }),
      run: (input, hand) => countAs(hand, input.measure, input.condition),
    }),
    list: action({
      input: z.object({ undone: z.enum(['0', '1']).default('0'), [PAGE_ARG]: turnedPage }),
      run: (input, hand) => turned(hand, input[PAGE_ARG], (page) => list(hand, input.undone === '1', page)),
    }),
  },
});

const PAGE_SIZE = 6;

function list(hand: Hand, undoneToo: boolean, pageNumber: number): Answer {
  const all = measuresHere(hand);
  const inPlace = all.filter(isInPlace);
  const listed = undoneToo ? [...inPlace, ...all.filter((one) => !isInPlace(one)).toReversed()] : inPlace;
  const does = { command: 'temporary', action: 'list', args: { undone: undoneToo ? '1' : '0' } };
  const { things, buttons, where } = pageOf(listed, pageNumber, does, PAGE_SIZE);
  const stages = stagesHere(hand);
  const { today } = crewOf(hand);
  const undone = all.length - inPlace.length;
  return {
    kind: 'answer',
    subject: 'Temporary',
    result: inPlace.length === 0 ? 'Nothing temporary is in place' : `${inPlace.length} in place`,
    tone: inPlace.length === 0 ? 'done' : 'soon',
    ...(where === undefined ? {} : { certainty: where }),
    items: things.map((one) => measureItem(one, stages, today)),
    buttons: [
      ...buttons,
      ...(undoneToo || undone === 0
        ? []
        : [
            {
              label: `And the ${undone} undone`,
              does: { command: 'temporary', action: 'list', args: { undone: '1' } },
            },
          ]),
    ],
    audience: 'crew',
    data: { kind: 'temporary-list', inPlace: inPlace.length, measures: listed.map(measureData) },
  };
}

/** Undone by a button: the morning message it stood on is redrawn, anything else gets the measure's card. */
function undonePressed(hand: Hand, measureId: number, noticeId: number | undefined): Answer {
  const changed = undoneTemporary(hand, measureId, undefined);
  const morning =
    noticeId === undefined || !hand.pressedInPlace
      ? undefined
      : redrawForRemark(hand.record, hand.notice(noticeId), noticeId, { kind: 'measure', id: measureId });
  if (morning === undefined) return report(hand, changed);
  const { said, changeId: change } = changed;
  return { ...morning, inPlace: true, data: { ...measureData(changed.value), said, change } };
}
