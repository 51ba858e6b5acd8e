import { daysToMark, useRate } from '../../calc/running-in/use-rate.ts';
import { addDays, type Day, dayAt } from '../../core/time.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Mark, Measure, RunInPlan, RunInStep } from './run-in.ts';

const DAY_MS = 86_400_000;

/** One counter since the first start. */
export interface Counter {
  /** From the first start; null where nothing was read since. */
  readonly run: number | null;
  /** The day of the newest reading. */
  readonly on: Day | null;
  /** By recent use, for a day; null where it cannot be told. */
  readonly perDay: number | null;
}

/** How far an engine has come since its first start. */
export interface Progress {
  readonly km: Counter;
  readonly h: Counter;
  /** Calendar days, always known. */
  readonly days: number;
  readonly today: Day;
}

/** Reads the counters off the distance and hour readings. */
export function progressOf(record: TeamRecord, plan: RunInPlan, nowMs: number, zone: string): Progress {
  const today = dayAt(nowMs, zone);
  return {
    km: counter(record, plan, { kind: 'distance', start: plan.startKm, nowMs, zone }),
    h: counter(record, plan, { kind: 'engine hours', start: plan.startH, nowMs, zone }),
    days: Math.max(0, daysBetween(plan.startedOn, today)),
    today,
  };
}

function counter(
  record: TeamRecord,
  plan: RunInPlan,
  {
    kind,
    start,
    nowMs,
    zone,
  }: { readonly kind: string; readonly start: number; readonly nowMs: number; readonly zone: string },
): Counter {
  const all = record.readings
    .series(plan.buildId, kind)
    .filter(
      ({ takenAtMs, value }) =>
        takenAtMs <= nowMs && value >= start && dayAt(takenAtMs, zone) >= plan.startedOn,
    );
  const last = all.at(-1);
  if (last === undefined) return { run: null, on: null, perDay: null };
  const points = all.map(({ takenAtMs, value }) => ({ at: takenAtMs / DAY_MS, value }));
  return {
    run: last.value - start,
    on: dayAt(last.takenAtMs, zone),
    perDay: useRate(points, nowMs / DAY_MS),
  };
}

export const daysBetween = (from: Day, to: Day): number =>
  Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to)).days;

export type StepState = 'done' | 'left out' | 'due' | 'soon' | 'later';

/** A step beside what the counters show. */
export interface StepStanding {
  readonly step: RunInStep;
  readonly state: StepState;
  /** What it is due at now: its own mark, or where it was put off to. */
  readonly due: Mark;
  /** Still to go, by each counter that counts for it and is known; nothing below zero. */
  readonly left: Mark;
  /** The day it will be due by recent use; null where that cannot be told, or when it is due. */
  readonly expectedOn: Day | null;
}

/** This near to its mark a step comes up: a share of what it stood away when it was made, and no less than these. */
const SOON = { share: 0.15, km: 30, h: 0.5, days: 3 } as const;
/** And when recent use brings it within these days. */
const SOON_DAYS = 3;

/** How a step stands. Pure: the same step and progress give the same answer. */
export function standStep(
  step: RunInStep,
  plan: Pick<RunInPlan, 'startedOn'>,
  progress: Progress,
): StepStanding {
  const due = step.snoozes.at(-1)?.due ?? step.due;
  const run: Mark = { km: progress.km.run, h: progress.h.run, days: progress.days };
  const left: Mark = { km: toGo(due.km, run.km), h: toGo(due.h, run.h), days: toGo(due.days, run.days) };
  const reached = [left.km, left.h, left.days].some((each) => each !== null && each <= 1e-9);
  const expectedOn = reached ? null : expected(due, plan, progress);
  const state = stateOf(step, { due, left, reached, expectedOn, today: progress.today });
  return { step, state, due, left, expectedOn: state === 'done' || state === 'left out' ? null : expectedOn };
}

const toGo = (mark: number | null, run: number | null): number | null =>
  mark === null || run === null ? null : Math.max(0, mark - run);

function stateOf(
  { doneOn, dropped }: RunInStep,
  {
    due,
    left,
    reached,
    expectedOn,
    today,
  }: { due: Mark; left: Mark; reached: boolean; expectedOn: Day | null; today: Day },
): StepState {
  if (doneOn !== null) return 'done';
  if (dropped) return 'left out';
  if (reached) return 'due';
  const near = (togo: number | null, mark: number | null, least: number): boolean =>
    togo !== null && mark !== null && togo <= Math.min(Math.max(least, SOON.share * mark), mark / 2);
  const byDate = expectedOn !== null && daysBetween(today, expectedOn) <= SOON_DAYS;
  const soon =
    near(left.km, due.km, SOON.km) || near(left.h, due.h, SOON.h) || near(left.days, due.days, SOON.days);
  return soon || byDate ? 'soon' : 'later';
}

/** The earliest day by which any counter reaches its mark, as it has counted of late. */
function expected(due: Mark, plan: Pick<RunInPlan, 'startedOn'>, { km, h, today }: Progress): Day | null {
  const days = [
    byRate(due.km, km),
    byRate(due.h, h),
    due.days === null ? null : addDays(plan.startedOn, Math.ceil(due.days)),
  ].filter((day) => day !== null);
  const first = days.toSorted()[0];
  if (first === undefined) return null;
  return first < today ? today : first;
}

function byRate(mark: number | null, { run, on, perDay }: Counter): Day | null {
  if (mark === null || run === null || on === null || perDay === null) return null;
  const days = Math.ceil(daysToMark(perDay, { value: run, mark }));
  return days > MOST_DAYS_AHEAD ? null : addDays(on, days);
}

/** Further ahead nobody drives as of late. */
const MOST_DAYS_AHEAD = 365;

/** All steps of a plan, the most pressing first: due, soon, later, then what is behind. */
export function standPlan(plan: RunInPlan, progress: Progress): readonly StepStanding[] {
  const rank: Readonly<Record<StepState, number>> = { due: 0, soon: 1, later: 2, done: 3, 'left out': 4 };
  return plan.steps
    .map((step) => standStep(step, plan, progress))
    .toSorted(
      (a, b) => rank[a.state] - rank[b.state] || order(a.due) - order(b.due) || a.step.id - b.step.id,
    );
}

/** Distance before hours before days; only for an order to show them in. */
const order = ({ km, h, days }: Mark): number => km ?? (h === null ? (days ?? 0) * 40 : h * 60);

/** Where the plan's own measure stands: what its ceilings are read by. */
export function runOf(measure: Measure, { km, h, days }: Progress): number | null {
  return measure === 'km' ? km.run : measure === 'h' ? h.run : days;
}
