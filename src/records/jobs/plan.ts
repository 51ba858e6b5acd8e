import type { Arriving } from '../../calc/schedule/arrival.ts';
import { allBefore, someLoop } from '../../calc/schedule/graph.ts';
import type { Plan, Work } from '../../calc/schedule/simulate.ts';
import { workingTime } from '../../calc/schedule/working-time.ts';
import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { Coming, PartStanding } from '../parts/part.ts';
import { enoughOf } from './blockers.ts';
import type { StageFact } from './facts.ts';
import type { Job, Minutes } from './job.ts';
import { type JobNetwork, nameOf, openNetwork } from './network.ts';
import type { JobBook } from './read-facts.ts';
import { type Away, type WorkWeek, workedOn } from './week.ts';

/** What is taken for a job that nobody has said the length of. Common practice, no source. */
export const UNKNOWN_MINUTES: Minutes = { least: 30, likely: 60, most: 150 };
/** Days from today for what has not been ordered, and for a fluid that has not been bought. Common practice, no source. */
export const NOT_ORDERED: Arriving = { least: 3, likely: 10, late: 21 };
export const NOT_BOUGHT: Arriving = { least: 1, likely: 3, late: 7 };

/** Something that has to arrive before a job can be done. */
export interface Awaited {
  readonly kind: 'order' | 'not ordered' | 'fluid';
  /** Null for a fluid. */
  readonly partId: number | null;
  readonly name: string;
  readonly orderId: number | null;
  readonly supplier: string | null;
  readonly arriving: Arriving;
}

/** A plan for a stage, and what its places stand for. */
export interface StagePlan {
  readonly plan: Plan;
  readonly stage: StageFact;
  /** The job at a place of the plan's work; the rest are stages. */
  readonly jobs: readonly Job[];
  readonly awaited: readonly Awaited[];
  readonly crew: WorkWeek;
  /** Jobs whose length nobody has said. */
  readonly unknownLength: number;
}

export interface PlanFacts {
  readonly book: JobBook;
  readonly stage: StageFact;
  readonly crew: WorkWeek;
  readonly away: readonly Away[];
  readonly today: Day;
  /** Whether this evening still counts. */
  readonly worksToday: boolean;
}

/**
 * What must be done and come before a stage can be passed: its open jobs, those of the stages before it, and everything
 * they wait for. What the stage does not need is left until afterwards.
 *
 * @throws UserError 'not-now' when something waits for itself or the crew never works.
 */
export function planOf({ book, stage, crew, away, today, worksToday }: PlanFacts): StagePlan {
  if (crew.minutes.every((minutes) => minutes === 0)) {
    throw new UserError('not-now', 'No evening is left to work on. /when evenings says when you work.');
  }
  const network = openNetwork(book.jobs, book.stages);
  const loop = someLoop(network.needs);
  if (loop !== null) {
    const names = [...loop, loop[0] ?? 0].map((place) => nameOf(network, place));
    throw new UserError(
      'not-now',
      `These wait for each other, so no day can be said: ${names.join(' → ')}. /job needs with remove takes one off.`,
    );
  }
  const target = network.placeOfStage(stage.key);
  if (target === undefined) throw new Error(`${stage.key} is no open stage`);
  const places = [...allBefore(network.needs, target)].toSorted((a, b) => a - b).concat(target);
  const newPlace = new Map(places.map((place, index) => [place, index]));
  const jobs = places.flatMap((place) => network.jobs[place] ?? []);
  const { awaited, of } = arrivals(jobs, book, today, network);
  const work = places.map((place): Work => {
    const job = network.jobs[place];
    const needs = (network.needs[place] ?? []).flatMap((before) => newPlace.get(before) ?? []);
    if (job === undefined) return { minutes: NO_TIME, people: 0, needs, arrivals: [] };
    const minutes = job.minutes ?? UNKNOWN_MINUTES;
    return { minutes, people: Math.min(job.people, crew.people), needs, arrivals: of.get(job.id) ?? [] };
  });
  const plan = {
    work,
    arrivals: awaited.map(({ arriving }) => arriving),
    hands: crew.people,
    time: workingTime(workedOn(crew, away, today, worksToday)),
    target: places.length - 1,
  };
  const unknownLength = jobs.filter(({ minutes }) => minutes === null).length;
  return { plan, stage, jobs, awaited, crew, unknownLength };
}

const NO_TIME: Minutes = { least: 0, likely: 0, most: 0 };

/** What each job waits for that is not here; what is used once is given out in the order of the stages. */
function arrivals(
  jobs: readonly Job[],
  { facts }: JobBook,
  today: Day,
  { stages }: JobNetwork,
): { readonly awaited: readonly Awaited[]; readonly of: ReadonlyMap<number, readonly number[]> } {
  const rank = new Map(stages.map((stage) => [stage.key, stage.rank]));
  const inTurn = jobs.toSorted(
    (a, b) => (rank.get(a.stage ?? '') ?? 0) - (rank.get(b.stage ?? '') ?? 0) || a.id - b.id,
  );
  const awaited: Awaited[] = [];
  const places = new Map<string, number>();
  const place = (key: string, make: () => Awaited): number => {
    const known = places.get(key);
    if (known !== undefined) return known;
    places.set(key, awaited.length);
    return awaited.push(make()) - 1;
  };
  const given = new Map<number, number>();
  const of = new Map<number, readonly number[]>();
  for (const job of inTurn) {
    const waits = job.needs.flatMap((need): readonly number[] => {
      if (need.kind === 'part') {
        const standing = facts.parts.get(need.partId);
        if (standing === undefined) return [];
        const before = standing.part.singleUse ? (given.get(need.partId) ?? 0) : 0;
        given.set(need.partId, before + need.quantity);
        const here = standing.part.singleUse ? standing.inHand : standing.inHand + standing.fitted;
        const short = before + need.quantity - here;
        return short <= 0 ? [] : awaitedFor(standing, short, today, place);
      }
      const fluid = need.kind === 'fluid' ? facts.fluids.get(need.caseId) : undefined;
      if (fluid === undefined || fluid.shortL <= 0) return [];
      const { id, name, grade } = fluid.fluid;
      return [
        place(`fluid ${id}`, () => ({
          kind: 'fluid',
          partId: null,
          name: `${grade} for ${name}`,
          orderId: null,
          supplier: null,
          arriving: NOT_BOUGHT,
        })),
      ];
    });
    if (waits.length > 0) of.set(job.id, [...new Set(waits)]);
  }
  return { awaited, of };
}

function awaitedFor(
  standing: PartStanding,
  short: number,
  today: Day,
  place: (key: string, make: () => Awaited) => number,
): readonly number[] {
  const { part, coming, out } = standing;
  const enough = enoughOf(standing, short);
  const orders = (enough ?? [...coming, ...out]).map((one) =>
    place(`order ${one.orderId} ${part.id}`, () => ({
      kind: 'order',
      partId: part.id,
      name: part.name,
      orderId: one.orderId,
      supplier: one.supplier,
      arriving: arrivingOf(one, today),
    })),
  );
  if (enough !== undefined) return orders;
  const missing = place(`part ${part.id}`, () => ({
    kind: 'not ordered',
    partId: part.id,
    name: part.name,
    orderId: null,
    supplier: null,
    arriving: NOT_ORDERED,
  }));
  return [...orders, missing];
}

/** The days of an order counted from today, in their order whatever was said of them. */
export function arrivingOf(
  { promisedOn, expectedOn, latestOn }: Pick<Coming, 'promisedOn' | 'expectedOn' | 'latestOn'>,
  today: Day,
): Arriving {
  const likely = Math.max(0, daysBetween(today, expectedOn));
  return {
    least: Math.min(likely, Math.max(0, daysBetween(today, promisedOn))),
    likely,
    late: Math.max(likely, daysBetween(today, latestOn)),
  };
}

/** Calendar days from one day to another. */
export function daysBetween(from: Day, to: Day): number {
  return Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'day' }).days;
}
