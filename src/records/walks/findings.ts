import type { Guide } from '../../calc/guide/guide.ts';
import { causesTouched } from '../../calc/guide/raise.ts';
import { UserError } from '../../core/user-error.ts';
import { undoMeasure } from '../measures/change-measure.ts';
import { isInPlace, type Measure } from '../measures/measure.ts';
import type { TeamRecord } from '../team-record.ts';
import { guideOf } from './guide-book.ts';
import { knownOf } from './known.ts';
import { type Doer, finishWalk } from './moves.ts';
import { type Moved, openWalk, outOfGuide, walkOf } from './open-walk.ts';
import { findingsNow, positionOf } from './position.ts';
import { sayOutcome, sayStep } from './say-finding.ts';
import {
  AGAIN,
  CANNOT,
  CAUSE_STEP,
  type Finding,
  MEASURE_OUTCOMES,
  measureOfStep,
  roundOf,
  type Walk,
} from './walk.ts';

/** Somebody's finding: what, at which step, with anything worth adding. */
export interface NewFinding {
  readonly walkId: number;
  readonly step: string;
  readonly outcome: string;
  readonly note?: string | undefined;
}

/**
 * Notes what was found at a step. A search that was left is taken up by it; a measure that was undone on the way is off its
 * list, and closes the search when that cured it.
 *
 * @throws UserError 'changed-since' or 'already-done' naming who was first, 'stale-message' for a step there is not.
 */
export function noteFinding(
  record: TeamRecord,
  { walkId, step, outcome, note }: NewFinding,
  by: Doer,
): Moved {
  const walk = openWalk(record, walkId);
  const guide = guideOf(walk.symptom);
  requireStep(guide, step, outcome);
  const before = findingsNow(walk).find((one) => one.step === step);
  const written = { outcome, note: note ?? null, byName: by.byName, atMs: by.atMs };
  if (before === undefined) record.walks.note({ walkId, round: roundOf(walk), step, ...written });
  else if (before.outcome === CANNOT && outcome !== CANNOT) record.walks.correct({ ...before, ...written });
  else throw wasFirst(record, guide, before, outcome);
  if (walk.state === 'left') record.walks.rewrite({ ...walk, state: 'open', leftBy: null });
  const measure = measureUndone(record, step, outcome);
  const said = `search #${walkId}, ${sayStep(record, guide, step)}: ${sayOutcome(guide, step, outcome)}`;
  if (measure === undefined) return { value: walkOf(record, walkId), said };
  const cause = causeBehind(record, guide, walk, measure, by.atMs);
  if (isInPlace(measure)) undoMeasure(record, measure.id, { by: by.byName, on: by.today, note: undefined });
  if (outcome !== 'cured') return { value: walkOf(record, walkId), said };
  return finishWalk(record, walkId, { cause, note: `still in place: ${measure.what}` }, by);
}

/** A finding as it should have been. */
export interface Correction {
  readonly walkId: number;
  readonly findingId: number;
  readonly outcome: string;
}

/** Corrects a finding; what it was first noted as is kept. */
export function correctFinding(record: TeamRecord, given: Correction, { byName, atMs }: Doer): Moved {
  const { walkId, findingId, outcome } = given;
  const walk = openWalk(record, walkId);
  const guide = guideOf(walk.symptom);
  const before = findingOf(walk, findingId);
  requireStep(guide, before.step, outcome);
  const is = sayOutcome(guide, before.step, outcome);
  if (before.outcome === outcome) throw new UserError('already-done', `It stands as “${is}” already.`);
  const firstOutcome = before.firstOutcome ?? before.outcome;
  record.walks.correct({ ...before, outcome, byName, atMs, firstOutcome });
  const was = sayOutcome(guide, before.step, before.outcome);
  const step = sayStep(record, guide, before.step);
  return { value: walkOf(record, walkId), said: `search #${walkId}, ${step} corrected: ${is}, was ${was}` };
}

/**
 * Takes a finding off as if it had not been made.
 *
 * @throws UserError 'not-now' when the search has begun anew since.
 */
export function takeBack(record: TeamRecord, walkId: number, findingId: number): Moved {
  const walk = openWalk(record, walkId);
  const guide = guideOf(walk.symptom);
  const { step, outcome, round } = findingOf(walk, findingId);
  const isLastAnew = step === CAUSE_STEP && round === roundOf(walk) - 1 && findingsNow(walk).length === 0;
  if (round !== roundOf(walk) && !isLastAnew) {
    throw new UserError(
      'not-now',
      'The search has begun anew since. Take back what was found after that first, the newest before the others.',
    );
  }
  record.walks.takeBack(findingId);
  return {
    value: walkOf(record, walkId),
    said: `search #${walkId}, ${sayStep(record, guide, step)} taken back: ${sayOutcome(guide, step, outcome)}`,
  };
}

function findingOf(walk: Walk, findingId: number): Finding {
  const finding = walk.findings.find(({ id }) => id === findingId);
  if (finding !== undefined) return finding;
  throw new UserError('stale-message', 'That finding was taken back meanwhile. Nothing was changed.');
}

function requireStep(guide: Guide, step: string, outcome: string): void {
  const isKnown =
    step === CAUSE_STEP
      ? outcome === AGAIN || guide.causes.some(({ id }) => id === outcome)
      : outcomesOf(guide, step).some((id) => id === outcome);
  if (!isKnown) throw outOfGuide();
}

function outcomesOf(guide: Guide, step: string): readonly string[] {
  if (measureOfStep(step) !== undefined) return [...MEASURE_OUTCOMES.map(({ id }) => id), CANNOT];
  const test = guide.tests.find(({ id }) => id === step);
  return test === undefined ? [] : [...test.outcomes.map(({ id }) => id), CANNOT];
}

function wasFirst(record: TeamRecord, guide: Guide, before: Finding, outcome: string): UserError {
  const found = `“${sayOutcome(guide, before.step, before.outcome)}”`;
  const what = sayStep(record, guide, before.step);
  if (before.outcome === outcome) {
    return new UserError('already-done', `${before.byName} noted ${found} there already: ${what}.`);
  }
  return new UserError(
    'changed-since',
    `${before.byName} was first and found ${found}: ${what}. Yours, “${sayOutcome(guide, before.step, outcome)}”, was not noted. If yours is right, press Correct under So far.`,
  );
}

/** The measure a finding says was undone; undefined for any other finding. */
function measureUndone(record: TeamRecord, step: string, outcome: string): Measure | undefined {
  const id = measureOfStep(step);
  return id === undefined || (outcome !== 'cured' && outcome !== 'same')
    ? undefined
    : record.measures.find(id);
}

/** What it was when undoing a measure cured it: the likeliest of the causes that the measure speaks of. */
function causeBehind(
  record: TeamRecord,
  guide: Guide,
  walk: Walk,
  { id, what }: Measure,
  atMs: number,
): string | null {
  const { step } = positionOf(guide, walk, knownOf(record, walk.buildId, atMs));
  const asked = step.kind === 'measure' && step.measure.id === id ? step.causes : causesTouched(guide, what);
  return asked[0]?.id ?? null;
}
