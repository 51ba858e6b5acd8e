import type { SumSheet } from '../../core/calculation.ts';
import { type Arriving, arrivalDay } from './arrival.ts';
import type { Chances } from './chances.ts';
import { crewScheduler, RELEASED } from './crew-schedule.ts';
import { criticalPath } from './critical-path.ts';
import { pertQuantiles, pertTime, positionOf, type Quantiles, type ThreePoints } from './pert.ts';
import type { WorkingTime } from './working-time.ts';

/** One piece of work; a stage passed is work of no minutes for no hands. */
export interface Work {
  /** In minutes. */
  readonly minutes: ThreePoints;
  readonly people: number;
  /** What must be done before, by its place. */
  readonly needs: readonly number[];
  /** What must have arrived before, by its place. */
  readonly arrivals: readonly number[];
}

/** Everything that decides when the last piece of work is done. */
export interface Plan {
  readonly work: readonly Work[];
  readonly arrivals: readonly Arriving[];
  readonly hands: number;
  readonly time: WorkingTime;
  /** The piece of work whose end is asked for. */
  readonly target: number;
}

/** What came of running through it many times; days are counted from today, one figure for each run. */
export interface Simulation {
  readonly runs: number;
  readonly endDays: readonly number[];
  /** In what share of the runs each piece of work was on the chain that decided the end. */
  readonly workShare: readonly number[];
  readonly arrivalShare: readonly number[];
  /** Days on which each piece of work began and ended: one tenth, half and nine tenths of the runs. */
  readonly begins: readonly Spread[];
  readonly ends: readonly Spread[];
}

export interface Spread {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** Runs between two looks at whether somebody else wants the machine. */
const BATCH = 25;

/**
 * Runs through a plan with the chances drawn: every duration from its beta distribution, every arrival from its range,
 * the work put in order for the crew. Yields now and then, so that whoever drives it can let others in.
 *
 * Source: simulation of networks and the criticality index after Van Slyke 1963 (key VANSLYKE). Durations and arrivals
 * are independent. Half of the runs end by the median day.
 */
export function* simulation(plan: Plan, chances: Chances): Generator<void, Simulation> {
  const { work, arrivals, hands, time, target } = plan;
  const { runs } = chances;
  const schedule = crewScheduler({
    needs: work.map(({ needs }) => needs),
    people: work.map(({ people }) => Math.min(people, hands)),
    hands,
    urgency: urgencyOf(work),
  });
  const minutesAt = durations(work, chances);
  const [minutes, releases] = [new Float64Array(work.length), new Float64Array(work.length)];
  const [onWork, onArrivals] = [new Float64Array(work.length), new Float64Array(arrivals.length)];
  const begun = work.map(() => new Float64Array(runs));
  const ended = work.map(() => new Float64Array(runs));
  const released = new Float64Array(arrivals.length);
  const releasedAt = (place: number, run: number): number => {
    const one = arrivals[place];
    const share = chances.ofArrivals[place]?.[run] ?? 0.5;
    return one === undefined ? 0 : time.minuteBefore(arrivalDay(one, share));
  };
  for (let run = 0; run < runs; run += 1) {
    for (let place = 0; place < arrivals.length; place += 1) released[place] = releasedAt(place, run);
    for (let place = 0; place < work.length; place += 1) {
      minutes[place] = minutesAt(place, run);
      releases[place] = lastOf(work[place]?.arrivals ?? [], released);
    }
    const { start, finish, after } = schedule(minutes, releases);
    for (let place = 0; place < work.length; place += 1) {
      const column = begun[place];
      if (column !== undefined) column[run] = start[place] ?? 0;
      const end = ended[place];
      if (end !== undefined) end[run] = finish[place] ?? 0;
    }
    for (let place = target; place >= 0; place = after[place] ?? -1) {
      onWork[place] = (onWork[place] ?? 0) + 1;
      if (after[place] !== RELEASED) continue;
      const late = work[place]?.arrivals.find((one) => released[one] === releases[place]);
      if (late !== undefined) onArrivals[late] = (onArrivals[late] ?? 0) + 1;
    }
    if (run % BATCH === BATCH - 1) yield;
  }
  return {
    runs,
    endDays: Array.from(ended[target] ?? [], (minute) => time.dayWorked(minute)),
    workShare: Array.from(onWork, (count) => count / runs),
    arrivalShare: Array.from(onArrivals, (count) => count / runs),
    begins: begun.map((column) => spreadOf(column, time.dayAfter)),
    ends: ended.map((column) => spreadOf(column, time.dayWorked)),
  };
}

function lastOf(awaited: readonly number[], released: Float64Array): number {
  let last = 0;
  for (const one of awaited) last = Math.max(last, released[one] ?? 0);
  return last;
}

/** Least latest start first, by mean durations and with hands without limit. */
function urgencyOf(work: readonly Work[]): readonly number[] {
  const means = work.map(({ minutes: { least, likely, most } }) => (least + 4 * likely + most) / 6);
  const { times } = criticalPath({ durations: means, needs: work.map(({ needs }) => needs) }).value;
  return times.map(({ latestStart }) => latestStart);
}

function durations(work: readonly Work[], { ofWork }: Chances): (place: number, run: number) => number {
  const tables = new Map<number, Quantiles>();
  const ofPlace = work.map(({ minutes }) => {
    const position = positionOf(minutes);
    const known = tables.get(position) ?? pertQuantiles(position);
    tables.set(position, known);
    return { minutes, table: known };
  });
  return (place, run) => {
    const one = ofPlace[place];
    return one === undefined ? 0 : pertTime(one.minutes, one.table, ofWork[place]?.[run] ?? 0.5);
  };
}

function spreadOf(minutes: Float64Array, dayOf: (minute: number) => number): Spread {
  const sorted = minutes.toSorted();
  const at = (share: number): number => dayOf(sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0);
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

/** A tenth, half and nine tenths of them lie at or below, by the nearest rank. */
export function spread(values: readonly number[]): Spread {
  return spreadOf(Float64Array.from(values), (value) => value);
}

/** Drives it to its end without letting anybody in. */
export function atOnce<Result>(work: Generator<void, Result>): Result {
  for (let step = work.next(); ; step = work.next()) if (step.done) return step.value;
}

export const simulationSheet: SumSheet = {
  title: 'The day it will start',
  formula: 'day = day on which the last minute of work is worked; P10, P50, P90 of the runs by nearest rank',
  symbols: {
    duration: 'beta distribution of least, likely and most (see there)',
    arrival: 'by its range (see there), worked on from that evening',
    order: 'the most urgent work that can begin first, as hands come free',
    share: 'of the runs in which something is on the chain that decides the end',
  },
  sources: ['VANSLYKE', 'SGS', 'BACKFILL', 'XOROSHIRO'],
  range: 'durations and arrivals independent; 200 to 2000 runs, so a day or two either way is chance',
};
