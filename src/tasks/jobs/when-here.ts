import { buildHere, crewOf } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { pageOf } from '../../core/pages.ts';
import type { Answer } from '../../core/reply.ts';
import { type Day, sayDay, wallTime } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import { type TimelineData, type TimelineRow, timelinePicture } from '../../pictures/timeline.ts';
import type { StageFact } from '../../records/jobs/facts.ts';
import { SEED } from '../../records/jobs/needed-on.ts';
import { orderByAnswer, type ToOrder } from '../../records/jobs/order-by-answer.ts';
import { lastOrderDays } from '../../records/jobs/order-days.ts';
import { daysBetween, planOf, type StagePlan } from '../../records/jobs/plan.ts';
import type { JobBook } from '../../records/jobs/read-facts.ts';
import { type AskedSooner, soonerWays } from '../../records/jobs/sooner.ts';
import { startAnswer, startSentence } from '../../records/jobs/start-answer.ts';
import { type DayRange, neededDays, type StartDay, startDay } from '../../records/jobs/start-day.ts';
import { USUAL_WEEK, type WorkWeek } from '../../records/jobs/week.ts';
import { findPart } from '../../records/parts/find-part.ts';
import { findStage } from '../../records/stages/find-stage.ts';
import { standingPass } from '../../records/stages/stage.ts';
import { knownSupplier } from '../../records/suppliers/find-supplier.ts';
import { buildWithJobs, jobBookHere } from './jobs-here.ts';
import { sayEvenings } from './read-evenings.ts';

const FIRST_START = 'first-start';
/** From this hour on this evening's work is taken as done. */
const EVENING_BEGINS = 18;

export function weekHere(hand: Hand): { readonly crew: WorkWeek; readonly said: boolean } {
  const build = buildHere(hand);
  const own = build && hand.record.weeks.find(build.id);
  return { crew: own ?? USUAL_WEEK, said: own !== undefined };
}

/** The stage asked about; the first start, or where a build has none the first that is open. */
function stageAsked(book: JobBook, typed: string | undefined): StageFact {
  const found =
    typed === undefined
      ? (book.stages.find(({ key }) => key === FIRST_START) ?? book.stages.find(({ passed }) => !passed))
      : book.stages.find(({ key }) => key === findStage(book.stagesWhole, typed).key);
  if (found) return found;
  throw new UserError('not-found', 'This build has no stage that is open.');
}

function planHere(hand: Hand, book: JobBook, stage: StageFact): StagePlan {
  const build = buildWithJobs(hand);
  const { settings, today } = crewOf(hand);
  return planOf({
    book,
    stage,
    crew: weekHere(hand).crew,
    away: hand.record.weeks.away(build.id),
    today,
    worksToday: wallTime(hand.clock.nowMs(), settings.zone).hour < EVENING_BEGINS,
  });
}

/** When a stage can be passed, with what drives the day and a picture. */
export async function whenHere(
  hand: Hand,
  typed: string | undefined,
  sooner: SoonerAsked = {},
): Promise<Answer> {
  const book = jobBookHere(hand);
  const { today, days } = crewOf(hand);
  const stage = stageAsked(book, typed);
  if (stage.passed) return passedAnswer(book, stage, today);
  const plan = planHere(hand, book, stage);
  if (plan.jobs.length === 0) return nothingToDo(stage);
  const found = await drive(
    startDay(plan, soonerWays(hand.record, plan.awaited, today, days, soonerHere(hand, sooner)), today, SEED),
  );
  const { crew, said } = weekHere(hand);
  const answer = startAnswer({
    plan,
    found,
    today,
    evenings: sayEvenings(crew.minutes),
    saidEvenings: said,
    stages: book.stages.filter((one) => !one.passed && one.key !== stage.key),
  });
  return { ...answer, drawings: [timelinePicture(pictureOf(plan, found, today))] };
}

/** What somebody asks about in particular, as typed. */
export interface SoonerAsked {
  readonly part?: string | undefined;
  readonly supplier?: string | undefined;
}

/** @throws UserError 'not-found' or 'which-one' about either name, 'bad-input' for a supplier of nothing. */
function soonerHere(hand: Hand, { part, supplier }: SoonerAsked): AskedSooner | undefined {
  if (part === undefined) {
    if (supplier === undefined) return undefined;
    throw new UserError('bad-input', 'part: is missing. Type which part would come from there.');
  }
  return {
    part: findPart(hand.record, buildWithJobs(hand).id, part),
    ...(supplier === undefined ? {} : { supplier: knownSupplier(hand.record, supplier).name }),
  };
}

/** Lets others in between two steps, so that a long sum holds nobody's answer up. */
async function drive<Result>(work: Generator<void, Result>): Promise<Result> {
  for (let step = work.next(); ; step = work.next()) {
    if (step.done) return step.value;
    await new Promise((resolve) => setImmediate(resolve));
  }
}

function passedAnswer(book: JobBook, stage: StageFact, today: Day): Answer {
  const whole = book.stagesWhole.find(({ key }) => key === stage.key);
  const pass = whole && standingPass(whole);
  return {
    kind: 'answer',
    subject: 'When',
    result: `${stage.name} is passed`,
    ...(pass === undefined ? {} : { certainty: `${sayDay(pass.passedOn, today)}, by ${pass.byName}.` }),
    tone: 'done',
    audience: 'crew',
    data: { stage: stage.key, passedOn: pass?.passedOn ?? null },
  };
}

function nothingToDo({ key, name }: StageFact): Answer {
  return {
    kind: 'answer',
    subject: 'When',
    result: `No job is open before ${name}`,
    certainty: '/job add writes one down, /job from-set offers a starting set.',
    buttons: [
      {
        label: 'Starting set',
        does: { command: 'job', action: 'from-set', args: { set: key } },
      },
    ],
    audience: 'crew',
    data: { stage: key, medianOn: null },
  };
}

/** As many lines as a phone shows at once, and how many of them may be arrivals. */
const [MOST_ROWS, MOST_ARRIVALS] = [9, 4];

/** What drives the day, the rest by how long it takes, in the order of its days. */
function pictureOf(plan: StagePlan, found: StartDay, today: Day): TimelineData {
  const days = ({ p10, p50, p90 }: DayRange) => ({
    p10: daysBetween(today, p10),
    p50: daysBetween(today, p50),
    p90: daysBetween(today, p90),
  });
  const arrivals = found.awaited
    .slice(0, MOST_ARRIVALS)
    .map(({ what: { name, arriving }, share }): TimelineRow => {
      const arrives = { p10: arriving.least, p50: arriving.likely, p90: arriving.late };
      return { kind: 'arrival', name, arrives, drives: share >= 0.5 };
    });
  const work = found.jobs
    .slice(0, MOST_ROWS - arrivals.length)
    .flatMap(({ what, share }): readonly TimelineRow[] => {
      const times = found.times.find(({ job }) => job.id === what.id);
      if (times === undefined) return [];
      const [begins, ends] = [days(times.begins), days(times.ends)];
      return [{ kind: 'work', name: what.name, begins, ends, drives: share >= 0.5 }];
    });
  const at = (row: TimelineRow): number => (row.kind === 'work' ? row.begins.p50 : row.arrives.p50);
  const rows = [...arrivals, ...work].toSorted((a, b) => at(a) - at(b));
  return {
    title: startSentence({ plan, found, today }),
    today,
    end: days(found.range),
    rows,
    more: plan.jobs.length + plan.awaited.length - rows.length,
  };
}

const PAGE_SIZE = 10;

/** What has not been ordered, the soonest needed first. */
export async function orderByHere(hand: Hand, typed: string | undefined, page: number): Promise<Answer> {
  const book = jobBookHere(hand);
  const { today } = crewOf(hand);
  const stage = stageAsked(book, typed);
  const plan = stage.passed ? undefined : planHere(hand, book, stage);
  const needed: ReadonlyMap<number, Day> =
    plan === undefined ? new Map() : await drive(neededDays(plan, today, SEED));
  const orderDay = lastOrderDays(hand.record, today);
  const all = [...needed]
    .toSorted(([, a], [, b]) => (a < b ? -1 : 1))
    .flatMap(([partId, neededOn]): readonly ToOrder[] => {
      const part = book.facts.parts.get(partId)?.part;
      return part === undefined ? [] : [{ part, neededOn, order: orderDay?.(neededOn) }];
    });
  const does = { command: 'when', action: 'order-by', args: { stage: stage.key } };
  const { things, buttons, where } = pageOf(all, page, does, PAGE_SIZE);
  return orderByAnswer({
    stage,
    all,
    shown: things,
    buttons,
    today,
    knowsLead: orderDay !== undefined,
    ...(where === undefined ? {} : { where }),
  });
}
