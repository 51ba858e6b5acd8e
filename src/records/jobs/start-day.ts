import { type Chances, drawChances, runsFor } from '../../calc/schedule/chances.ts';
import { type Plan, type Simulation, type Spread, simulation, spread } from '../../calc/schedule/simulate.ts';
import { addDays, type Day } from '../../core/time.ts';
import type { Job } from './job.ts';
import { type Awaited, type StagePlan, UNKNOWN_MINUTES } from './plan.ts';

/** A day with its range: one chance in ten to be before the first, nine in ten by the last. */
export interface DayRange {
  readonly p10: Day;
  readonly p50: Day;
  readonly p90: Day;
}

/** What decides the day, and in what share of the runs. */
export interface Driver<Thing> {
  readonly what: Thing;
  readonly share: number;
}

/** A job in the run of things: when it begins and ends. */
export interface JobTimes {
  readonly job: Job;
  readonly begins: DayRange;
  readonly ends: DayRange;
  readonly share: number;
}

/** Something that could be had sooner. */
export interface Sooner {
  /** What of the plan's arrivals it is about. */
  readonly places: readonly number[];
  readonly name: string;
  readonly how: string;
  readonly hereOn: Day;
  readonly arriving: Awaited['arriving'];
  /** Somebody asked about it: it is told even where it gains nothing. */
  readonly asked?: boolean;
}

/** What it would gain, in days, run against run with the same chances. */
export interface Gain {
  readonly sooner: Sooner;
  readonly days: Spread;
  readonly meanDays: number;
}

/** The day a stage can be passed, as simulated. */
export interface StartDay {
  readonly range: DayRange;
  readonly runs: number;
  readonly times: readonly JobTimes[];
  /** Those that take up most of the chain that decides the day first. */
  readonly jobs: readonly Driver<Job>[];
  readonly awaited: readonly Driver<Awaited>[];
  readonly gains: readonly Gain[];
  /** Runs of each question what something would gain. */
  readonly gainRuns: number;
}

/** Runs of a question what something would gain: run against run few are enough, and a large plan is to be answered soon. */
const [LEAST_GAIN_RUNS, MOST_GAIN_RUNS, GAIN_DRAWS] = [60, 400, 40_000];

const gainRunsFor = ({ work, arrivals }: Plan): number =>
  Math.min(
    MOST_GAIN_RUNS,
    Math.max(LEAST_GAIN_RUNS, Math.floor(GAIN_DRAWS / (work.length + arrivals.length))),
  );

/**
 * Simulates when a stage can be passed, what drives the day, and what each of the ways to have something sooner would gain.
 *
 * @param seed the same record and the same seed give the same answer.
 */
export function* startDay(
  stagePlan: StagePlan,
  soonerOf: (drivers: readonly Driver<Awaited>[]) => readonly Sooner[],
  today: Day,
  seed: number,
): Generator<void, StartDay> {
  const { plan, jobs, awaited } = stagePlan;
  const chances = drawChances(plan, seed, runsFor(plan));
  const base = yield* simulation(plan, chances);
  const byShare = <Thing>(things: readonly Thing[], shares: readonly number[]): readonly Driver<Thing>[] =>
    things
      .map((what, index) => ({ what, share: shares[index] ?? 0 }))
      .filter(({ share }) => share > 0)
      .toSorted((a, b) => b.share - a.share);
  const drivers = byShare(awaited, base.arrivalShare);
  const gainRuns = gainRunsFor(plan);
  const gains: Gain[] = [];
  for (const sooner of soonerOf(drivers)) {
    const gain = yield* gainOf(stagePlan, sooner, chances, gainRuns, base);
    if (gain.meanDays > 0 || sooner.asked) gains.push(gain);
  }
  const on = rangeFrom(today);
  return {
    range: on(spread(base.endDays)),
    runs: base.runs,
    times: jobs.map((job, place) => ({
      job,
      begins: on(base.begins[place] ?? NEVER),
      ends: on(base.ends[place] ?? NEVER),
      share: base.workShare[place] ?? 0,
    })),
    jobs: byShare(jobs, base.workShare).toSorted((a, b) => lengthOf(b) - lengthOf(a)),
    awaited: drivers,
    gains: gains.toSorted((a, b) => b.meanDays - a.meanDays),
    gainRuns,
  };
}

/** How much of the chain a job is: its likely minutes in the share of runs that it is on it. */
const lengthOf = ({ what, share }: Driver<Job>): number => share * (what.minutes ?? UNKNOWN_MINUTES).likely;

const NEVER: Spread = { p10: 0, p50: 0, p90: 0 };

function* gainOf(
  { plan }: StagePlan,
  sooner: Sooner,
  chances: Chances,
  runs: number,
  base: Simulation,
): Generator<void, Gain> {
  const changed: Plan = {
    ...plan,
    arrivals: plan.arrivals.map((one, place) => (sooner.places.includes(place) ? sooner.arriving : one)),
  };
  const { endDays } = yield* simulation(changed, { ...chances, runs });
  const days = endDays.map((day, run) => (base.endDays[run] ?? day) - day);
  const meanDays = days.reduce((sum, each) => sum + each, 0) / days.length;
  return { sooner, days: spread(days), meanDays };
}

/**
 * By when each thing that nobody has ordered is needed: the day on which, half of the time, the first job that needs it
 * would begin if all of these were here already. By the part's number.
 */
export function* neededDays(
  { plan, jobs, awaited }: StagePlan,
  today: Day,
  seed: number,
): Generator<void, ReadonlyMap<number, Day>> {
  const open = awaited.map(({ kind }) => kind === 'not ordered');
  const days = new Map<number, Day>();
  if (!open.includes(true)) return days;
  const here: Plan = {
    ...plan,
    arrivals: plan.arrivals.map((one, place) => (open[place] ? { least: 0, likely: 0, late: 0 } : one)),
  };
  const runs = gainRunsFor(plan);
  const { begins } = yield* simulation(here, drawChances(plan, seed, runs));
  for (const [place, work] of plan.work.entries()) {
    if (place >= jobs.length && work.people === 0) continue;
    const day = addDays(today, begins[place]?.p50 ?? 0);
    for (const one of work.arrivals) {
      const partId = open[one] ? awaited[one]?.partId : undefined;
      if (partId === undefined || partId === null) continue;
      const known = days.get(partId);
      if (known === undefined || day < known) days.set(partId, day);
    }
  }
  return days;
}

const rangeFrom =
  (today: Day) =>
  ({ p10, p50, p90 }: Spread): DayRange => ({
    p10: addDays(today, p10),
    p50: addDays(today, p50),
    p90: addDays(today, p90),
  });
