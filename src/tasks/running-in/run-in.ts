import { buildHere, crewOf, readDay } from '../../bot/crew.ts';
import type { Changed, Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer, Drawing, Form } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { readQuantity } from '../../phrases/quantity/read-quantity.ts';
import { runInStrip } from '../../pictures/run-in-strip.ts';
import { allowedNow, rpmOf, sayAllowed } from '../../records/running-in/allowed.ts';
import { drainProposal } from '../../records/running-in/drain-proposal.ts';
import { findStep } from '../../records/running-in/find-step.ts';
import { doStep, planOf, putOff } from '../../records/running-in/moves.ts';
import {
  daysBetween,
  type Progress,
  progressOf,
  runOf,
  type StepStanding,
  standPlan,
} from '../../records/running-in/progress.ts';
import type { Mark, RunInPlan, RunInStep } from '../../records/running-in/run-in.ts';
import { type PlanView, planAnswer, todayAnswer } from '../../records/running-in/run-in-answer.ts';
import { doneForm, snoozeForm } from '../../records/running-in/run-in-buttons.ts';
import { sayMark, sayRun } from '../../records/running-in/say-run-in.ts';
import type { TeamRecord } from '../../records/team-record.ts';

/** The plan of this channel's build. @throws UserError 'not-found' when there is none. */
export function planHere(hand: Hand): RunInPlan {
  return planOf(hand.record, buildHere(hand)?.id);
}

export function progressHere(hand: Hand, plan: RunInPlan): Progress {
  return progressOf(hand.record, plan, hand.clock.nowMs(), crewOf(hand).settings.zone);
}

function viewOf(hand: Hand, plan: RunInPlan): PlanView {
  const progress = progressHere(hand, plan);
  const standings = standPlan(plan, progress);
  return { plan, progress, standings, proposal: drainProposal(hand.record, standings, plan, progress.today) };
}

/** The plan as a card, with the strip of progress. */
export function showPlan(hand: Hand, page: number): Answer {
  const view = viewOf(hand, planHere(hand));
  return { ...planAnswer({ ...view, page }), drawings: [stripOf(view)] };
}

/** How the engine may be driven today, in one line. */
export function driveToday(hand: Hand): Answer {
  return todayAnswer(viewOf(hand, planHere(hand)));
}

/** The card after something was changed in the plan. */
export function planChanged(hand: Hand, changed: Changed<unknown>, certainty?: string): Answer {
  return planAnswer({
    ...viewOf(hand, planHere(hand)),
    said: changed.said,
    changeId: changed.changeId,
    extraButtons: [undoButton(changed)],
    ...(certainty === undefined ? {} : { certainty }),
  });
}

function stripOf({ plan, progress, standings }: PlanView): Drawing {
  const run = runOf(plan.measure, progress);
  const ordered = inOrder(standings);
  const allowed = allowedNow(plan, progress);
  const passed = ordered.findIndex(({ state }) => state === 'soon' || state === 'later');
  const due = ordered.filter(({ state }) => state === 'due').length;
  const open = ordered.filter(({ state }) => state !== 'done' && state !== 'left out').length;
  const title =
    due > 0
      ? `${due} ${due === 1 ? 'step of running in is' : 'steps of running in are'} due`
      : open === 0
        ? 'Every step of running in is done'
        : `${ordered.length - open} of ${ordered.length} steps done`;
  return runInStrip({
    title:
      allowed === null
        ? title
        : `${title}. ${sayAllowed(plan, { ...allowed, load: '' }).replace(/, ?(?=;|$)/u, '')}`,
    now: run === null ? 'nothing read yet' : `${sayRun(run, plan.measure)} run`,
    steps: ordered.map((standing) => ({
      at: sayMark(placeOf(standing)),
      what: standing.step.what,
      state: standing.state,
    })),
    before: passed === -1 ? ordered.length : passed,
    ceiling: plan.ceilings.flatMap((ceiling) => {
      const rpm = rpmOf(plan, ceiling);
      return rpm === null ? [] : [{ at: ceiling.at, rpm }];
    }),
    run: run ?? 0,
    measure: `${plan.measure} from the first start`,
  });
}

/** Along the road, not by how pressing they are. */
function inOrder(standings: readonly StepStanding[]): readonly StepStanding[] {
  const place = ({ km, h, days }: Mark): number => km ?? (h === null ? (days ?? 0) * 40 : h * 60);
  return standings.toSorted((a, b) => place(placeOf(a)) - place(placeOf(b)) || a.step.id - b.step.id);
}

/** Where a step lies along the road: where it was done, as far as that was read, else where it is due. */
function placeOf({ step: { doneKm, doneH }, state, due }: StepStanding): Mark {
  if (state !== 'done') return due;
  if (doneKm !== null) return { km: Math.round(doneKm), h: null, days: null };
  return doneH === null ? due : { km: null, h: Math.round(doneH * 10) / 10, days: null };
}

export function stepHere(hand: Hand, typed: string, field: string): RunInStep {
  return findStep(planHere(hand), typed, field);
}

export interface DoneSaid {
  readonly step: string;
  readonly found?: string | undefined;
  readonly link?: string | undefined;
}

export function doneHere(hand: Hand, { step: typed, found, link }: DoneSaid): Changed<RunInStep> {
  const plan = planHere(hand);
  const step = findStep(plan, typed, 'step');
  const progress = progressHere(hand, plan);
  return hand.change((record) =>
    doStep(record, current(record, plan, step), { found, link, byName: hand.who.name }, progress),
  );
}

export interface SnoozeSaid {
  readonly step: string;
  readonly until: string;
  readonly reason: string;
}

export function snoozeHere(hand: Hand, { step: typed, until, reason }: SnoozeSaid): Changed<RunInStep> {
  const plan = planHere(hand);
  const step = findStep(plan, typed, 'step');
  const progress = progressHere(hand, plan);
  const due = readSnooze(hand, until, plan, progress);
  return hand.change((record) =>
    putOff(
      record,
      plan,
      current(record, plan, step),
      { due, reason, onDay: progress.today, byName: hand.who.name },
      progress,
    ),
  );
}

/** The step as it is inside the change, so that two hands pressing at once do it once. */
function current(record: TeamRecord, plan: RunInPlan, step: RunInStep): RunInStep {
  return planOf(record, plan.buildId).steps.find(({ id }) => id === step.id) ?? step;
}

/**
 * "50 km" and "2 h" are counted from now, "at 160 km" by the odometer; anything else is a day.
 *
 * @throws UserError 'which-one' where a distance could be either.
 */
function readSnooze(hand: Hand, until: string, plan: RunInPlan, progress: Progress): Mark {
  const [, way = '', distance = until] =
    /^\s*(at|in|another|\+)?\s*(.*?)(?:\s+more)?\s*$/iu.exec(until) ?? [];
  const km = readQuantity(distance, 'distance');
  if (km.verdict === 'read') {
    const { run } = progress.km;
    if (run !== null) {
      const ahead = km.value - plan.startKm - run;
      if (way.toLowerCase() === 'at' && ahead > 0) return { km: run + ahead, h: null, days: null };
      if (way === '' && ahead > 0 && distance === until.trim()) throw whichDistance(distance, ahead);
      return { km: run + km.value, h: null, days: null };
    }
    throw new UserError(
      'not-now',
      'No odometer reading since the first start, so a distance cannot be counted. Log one, as in /reading log reading:"odo 1234 km", or say days.',
    );
  }
  const hours = /^\s*(?<figure>\d+(?:[.,]\d+)?)\s*(?:h|hours?|engine hours?)\s*$/iu.exec(until)?.groups?.[
    'figure'
  ];
  if (hours !== undefined) {
    if (progress.h.run !== null)
      return { km: null, h: progress.h.run + Number(hours.replace(',', '.')), days: null };
    throw new UserError(
      'not-now',
      'No hours are logged since the first start, so hours cannot be counted. Log them, as in /reading log reading:"hours 1.5", or say days.',
    );
  }
  const span = /^\s*(?:for\s+)?(?<count>\d{1,3})\s*(?<unit>days?|weeks?)\s*$/iu.exec(until)?.groups;
  const { day } = readDay(hand, 'until', span === undefined ? until : `in ${span['count']} ${span['unit']}`);
  return { km: null, h: null, days: daysBetween(plan.startedOn, day) };
}

/** The odometer has not been there yet: it may be meant to be, or so many from now. */
function whichDistance(typed: string, aheadKm: number): UserError {
  return new UserError(
    'which-one',
    `until: “${typed}” by the odometer, or so many from now? Nothing was put off yet.`,
    {
      field: 'until',
      choices: [
        { label: `At ${typed}: ${Math.round(aheadKm)} km from now`, value: `at ${typed}` },
        { label: `Another ${typed}`, value: `another ${typed}` },
      ],
    },
  );
}

export function doneFormHere(hand: Hand, step: string, noticeId: number | undefined): Form {
  return doneForm(stepHere(hand, step, 'step'), noticeId);
}

export function snoozeFormHere(hand: Hand, step: string, noticeId: number | undefined): Form {
  return snoozeForm(stepHere(hand, step, 'step'), noticeId);
}
