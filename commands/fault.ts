import { z } from 'zod';
import { action, defineCommand, type Suggest, subcommand } from '../src/bot/command.ts';
import { buildHere } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { blank, line, pageNumber } from '../src/bot/typed.ts';
import { PAGE_ARG, pageOf } from '../src/core/pages.ts';
import type { Answer, Form } from '../src/core/reply.ts';
import { UserError } from '../src/core/user-error.ts';
import { suggestWalks } from '../src/records/walks/find-walk.ts';
import { correctFinding, takeBack } from '../src/records/walks/findings.ts';
import { matchOutcome, outcomeChoice } from '../src/records/walks/match-outcome.ts';
import { matchSymptom, suggestSymptoms } from '../src/records/walks/match-symptom.ts';
import { finishWalk, goOn, leaveWalk, resumeWalk } from '../src/records/walks/moves.ts';
import { isOpen, type Walk } from '../src/records/walks/walk.ts';
import { correctionAnswer, soFarAnswer, walkList } from '../src/records/walks/walk-lists.ts';
import {
  doerOf,
  foundHere,
  inPlace,
  moved,
  noteForm,
  shown,
  startHere,
  walkHere,
  walkNamed,
  walkView,
} from '../src/tasks/walks/walks.ts';

const search = line(60).optional().describe('Its number or symptom; needless when only one is going on');
const note = line(400).optional();
const remark = blank.refine((text) => (text?.length ?? 0) <= 400, 'must be at most 400 characters');

/** What buttons carry. */
const id = z.coerce.number().int().positive();
const key = z.string().regex(/^[a-z0-9-]{1,32}$/);

const offerSearches: Suggest = (typed, hand) => {
  const build = buildHere(hand);
  return build ? suggestWalks(hand.record, build.id, typed) : [];
};

/** What may be found at the step that the only search, or the last one, asks for. */
const offerOutcomes: Suggest = (typed, hand) => {
  const build = buildHere(hand);
  const walk = build && hand.record.walks.ofBuild(build.id).find(isOpen);
  const step = walk && walkView(hand, walk).position.step;
  return step?.kind === 'test'
    ? step.test.outcomes
        .map(outcomeChoice)
        .filter(({ label }) => label.toLowerCase().includes(typed.toLowerCase()))
    : [];
};

export default defineCommand({
  description: 'Find why it will not fire, run or behave: the cheapest decisive test next',
  subcommands: {
    start: subcommand({
      description: 'Begin from what you see: no spark, will not start, smoke …',
      example: '/fault start symptom:"no crank"',
      input: z.object({ symptom: line(100).describe('What you see, in your own words') }),
      suggest: { symptom: (typed) => suggestSymptoms(typed) },
      run: ({ symptom }, hand) => startHere(hand, matchSymptom(symptom, 'symptom').id),
    }),
    resume: subcommand({
      description: 'Go on with a search, whoever began it',
      example: '/fault resume',
      input: z.object({ search }),
      suggest: { search: offerSearches },
      run: (input, hand) => resume(hand, walkHere(hand, input.search)),
    }),
    found: subcommand({
      description: 'Say what the test asked for has shown: 9.1 V, or one of its outcomes',
      input: z.object({
        result: line(100).describe('What you found: a value such as 9.1 V, or the words on a button'),
        note: note.describe('Where, what it looked like'),
        search,
      }),
      suggest: { result: offerOutcomes, search: offerSearches },
      run: (input, hand) => found(hand, input),
    }),
    list: subcommand({
      description: 'Searches going on, and what earlier ones came to',
      example: '/fault list',
      input: z.object({}),
      run: (_input, hand) => list(hand, 1),
    }),
    close: subcommand({
      description: 'Close a search with what it was, in your own words',
      input: z.object({ was: line(200).describe('What it was, or why nobody goes on'), search }),
      suggest: { search: offerSearches },
      run: ({ was, search: typed }, hand) => close(hand, walkHere(hand, typed), was),
    }),
  },
  actions: {
    start: action({
      input: z.object({ symptom: key }),
      run: ({ symptom }, hand) => startHere(hand, symptom),
    }),
    found: action({
      input: z.object({ walk: id, step: key, outcome: key }),
      run: ({ walk, step, outcome }, hand) => foundHere(hand, { walkId: walk, step, outcome }),
    }),
    note: action({
      input: z.object({ walk: id, step: key }),
      run: ({ walk, step }, hand) => noteForm(hand, walk, step),
    }),
    noted: action({
      input: z.object({ walk: id, step: key, outcome: key, note: remark }),
      run: ({ walk, ...given }, hand) => foundHere(hand, { walkId: walk, ...given }),
    }),
    leave: action({
      input: z.object({ walk: id }),
      run: ({ walk }, hand) => onNamed(hand, walk, (record) => leaveWalk(record, walk, doerOf(hand))),
    }),
    resume: action({
      input: z.object({ walk: id }),
      run: ({ walk }, hand) => resume(hand, walkNamed(hand, walk)),
    }),
    show: action({
      input: z.object({ walk: id }),
      run: ({ walk }, hand) => shown(hand, walkNamed(hand, walk)),
    }),
    'so-far': action({
      input: z.object({ walk: id, [PAGE_ARG]: pageNumber }),
      run: ({ walk, [PAGE_ARG]: at }, hand) => soFar(hand, walk, at),
    }),
    correct: action({
      input: z.object({ walk: id, finding: id }),
      run: ({ walk, finding }, hand) => correct(hand, walk, finding),
    }),
    corrected: action({
      input: z.object({ walk: id, finding: id, outcome: key }),
      run: ({ walk, finding, outcome }, hand) =>
        onNamed(hand, walk, (record) =>
          correctFinding(record, { walkId: walk, findingId: finding, outcome }, doerOf(hand)),
        ),
    }),
    back: action({
      input: z.object({ walk: id, finding: id }),
      run: ({ walk, finding }, hand) => onNamed(hand, walk, (record) => takeBack(record, walk, finding)),
    }),
    finish: action({
      input: z.object({ walk: id, cause: key }),
      run: ({ walk, cause }, hand) =>
        onNamed(hand, walk, (record) => finishWalk(record, walk, { cause, note: null }, doerOf(hand))),
    }),
    'go-on': action({
      input: z.object({ walk: id, cause: key }),
      run: ({ walk, cause }, hand) =>
        onNamed(hand, walk, (record) => goOn(record, walk, cause, doerOf(hand))),
    }),
    close: action({
      input: z.object({ walk: id }),
      run: ({ walk }, hand) => closeForm(walkNamed(hand, walk)),
    }),
    closed: action({
      input: z.object({ walk: id, was: remark }),
      run: ({ walk, was }, hand) => close(hand, walkNamed(hand, walk), was ?? null),
    }),
    list: action({
      input: z.object({ [PAGE_ARG]: pageNumber }),
      run: (input, hand) => list(hand, input[PAGE_ARG]),
    }),
  },
});

const onNamed = (hand: Hand, walkId: number, move: Parameters<typeof moved>[1]): Answer => {
  walkNamed(hand, walkId);
  return moved(hand, move);
};

/** Shows a search; one that was left is taken up by it. */
function resume(hand: Hand, walk: Walk): Answer {
  return walk.state === 'left'
    ? moved(hand, (record) => resumeWalk(record, walk.id, doerOf(hand)))
    : shown(hand, walk);
}

interface Typed {
  readonly result: string;
  readonly note?: string | undefined;
  readonly search?: string | undefined;
}

function found(hand: Hand, { result, note: remark, search: typed }: Typed): Answer {
  const walk = walkHere(hand, typed);
  const { step } = walkView(hand, walk).position;
  if (step.kind !== 'test') {
    throw new UserError(
      'not-now',
      'That search does not ask for a test now. /fault resume shows its buttons.',
    );
  }
  const outcome = matchOutcome(step.test, result, 'result');
  const isWords = result === outcome.id || result === outcome.label;
  const kept = [isWords ? undefined : result, remark].filter(Boolean).join('; ');
  return foundHere(hand, {
    walkId: walk.id,
    step: step.test.id,
    outcome: outcome.id,
    ...(kept === '' ? {} : { note: kept }),
  });
}

/** Findings on a page; more buttons would not fit a message. */
const PAGE_SIZE = 6;

function soFar(hand: Hand, walkId: number, at: number): Answer {
  const walk = walkNamed(hand, walkId);
  const does = { command: 'fault', action: 'so-far', args: { walk: walkId } };
  return inPlace(
    hand,
    soFarAnswer(walkView(hand, walk), pageOf(walk.findings.toReversed(), at, does, PAGE_SIZE)),
  );
}

function correct(hand: Hand, walkId: number, findingId: number): Answer {
  const walk = walkNamed(hand, walkId);
  const finding = walk.findings.find((one) => one.id === findingId);
  if (finding !== undefined) return inPlace(hand, correctionAnswer(walkView(hand, walk), finding));
  throw new UserError('stale-message', 'That finding was taken back meanwhile. Nothing was changed.');
}

const closeForm = ({ id: walk }: Walk): Form => ({
  kind: 'form',
  title: 'Close the search',
  does: { command: 'fault', action: 'closed', args: { walk } },
  fields: [
    {
      name: 'was',
      label: 'What it was',
      hint: 'In your own words; may stay empty',
      required: false,
      long: true,
    },
  ],
});

const close = (hand: Hand, walk: Walk, was: string | null): Answer =>
  moved(hand, (record) => finishWalk(record, walk.id, { cause: null, note: was }, doerOf(hand)));

function list(hand: Hand, at: number): Answer {
  const build = buildHere(hand);
  const all = build ? hand.record.walks.ofBuild(build.id) : [];
  const open = all.filter(isOpen);
  const ordered = [...open, ...all.filter((walk) => !isOpen(walk))];
  const does = { command: 'fault', action: 'list', args: {} };
  const { things, ...rest } = pageOf(ordered, at, does, PAGE_SIZE);
  const answer = walkList(
    { ...rest, things: things.map((walk) => walkView(hand, walk)) },
    { open: open.length, all: all.length },
  );
  return inPlace(hand, answer);
}
