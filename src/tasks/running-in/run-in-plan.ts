import { buildHere, crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { readQuantity } from '../../phrases/quantity/read-quantity.ts';
import { chosenPlan, OWN_PLAN } from '../../records/running-in/choose-plan.ts';
import { findStep } from '../../records/running-in/find-step.ts';
import {
  addStep,
  beginPlan,
  changePlan,
  changeStep,
  leaveOut,
  setCeiling,
} from '../../records/running-in/moves.ts';
import type { Mark, Measure, RunInPlan } from '../../records/running-in/run-in.ts';
import { sayRun } from '../../records/running-in/say-run-in.ts';
import { planChanged, planHere, showPlan } from './run-in.ts';
import { readDayPast } from './run-in-day.ts';

/** What is said of a plan; what is left out stays, or is read off the newest readings. */
export interface PlanSaid {
  readonly choose?: string | undefined;
  readonly started?: string | undefined;
  readonly odometer?: string | undefined;
  readonly hours?: string | undefined;
  readonly limit?: number | undefined;
  readonly boost?: number | undefined;
  /** What the ceilings are counted in. */
  readonly measure?: Measure | undefined;
}

/** Starts, changes or shows the plan. */
export function planSaid(hand: Hand, said: PlanSaid): Answer {
  const { choose, started, odometer, hours, limit, boost, measure } = said;
  const nothing = [choose, started, odometer, hours, limit, boost, measure].every(
    (each) => each === undefined,
  );
  if (nothing) return showPlan(hand, 1);
  const facts = {
    ...(started === undefined ? {} : { startedOn: readDayPast(hand, 'started', started) }),
    ...(odometer === undefined ? {} : { startKm: kmOf(odometer) }),
    ...(hours === undefined ? {} : { startH: hoursOf(hours) }),
    ...(limit === undefined ? {} : { limitRpm: limit }),
    ...(boost === undefined ? {} : { boostKPa: Number(boost.toPrecision(12)) }),
    ...(measure === undefined ? {} : { measure }),
  };
  if (choose === undefined) {
    const plan = planHere(hand);
    requireMeasure(plan, measure);
    return planChanged(
      hand,
      hand.change((record) => changePlan(record, plan, facts)),
    );
  }
  const row = chosenPlan(choose);
  if (row !== undefined) requireMeasure({ measure: row.measure, ceilings: row.ceilings }, measure);
  const build = buildHere(hand);
  const { readings } = hand.record;
  const lastKm = build === undefined ? undefined : readings.latest(build.id, 'distance')?.value;
  const lastH = build === undefined ? undefined : readings.latest(build.id, 'engine hours')?.value;
  const changed = hand.change((record) =>
    beginPlan(
      record,
      {
        buildId: openBuildHere(record, hand).id,
        name: row?.id ?? OWN_PLAN,
        origin: row === undefined ? 'builder' : 'common practice',
        measure: row?.measure ?? 'km',
        startedOn: crewOf(hand).today,
        startKm: lastKm ?? 0,
        startH: lastH ?? 0,
        limitRpm: null,
        boostKPa: null,
        ...facts,
      },
      row,
    ),
  );
  const { startKm, startH, limitRpm } = changed.value;
  const counted = `Counted from ${sayRun(startKm, 'km')} and ${sayRun(startH, 'h')}${lastKm === undefined && odometer === undefined ? ' (no odometer was logged: say odometer: if it did not start at 0)' : ''}.`;
  const known = limitRpm === null ? ' Say limit: and the ceilings go by your engine’s own limit speed.' : '';
  return planChanged(hand, changed, `${counted}${known}`);
}

/** @throws UserError 'not-now' when the ceilings that are there are counted otherwise. */
function requireMeasure(
  plan: { readonly measure: Measure; readonly ceilings: readonly unknown[] },
  measure: Measure | undefined,
): void {
  if (measure === undefined || measure === plan.measure || plan.ceilings.length === 0) return;
  throw new UserError(
    'not-now',
    `measure: the ceilings of this plan are counted in ${plan.measure}. Nothing was changed. /runin plan choose:own measure:${measure} begins one of your own.`,
  );
}

function kmOf(typed: string): number {
  const read = readQuantity(typed, 'distance');
  if (read.verdict === 'read') return read.value;
  throw asked(read, 'odometer', 'a distance, as in 84 210 km or 52 310 miles');
}

function hoursOf(typed: string): number {
  const bare = /^\s*\d+(?:[.,]\d+)?\s*$/u.test(typed) ? `${typed.trim()} h` : typed;
  const read = readQuantity(bare, 'time');
  if (read.verdict === 'read') return read.value / 3600;
  throw asked(read, 'hours', 'hours, as in 12.5 h');
}

function asked(
  read: Exclude<ReturnType<typeof readQuantity>, { verdict: 'read' }>,
  field: string,
  wanted: string,
): UserError {
  if (read.verdict === 'ask' && read.options.length > 0) {
    return new UserError('which-one', `${field}: ${read.question}`, {
      field,
      choices: read.options.map(({ typed }) => ({ label: typed, value: typed })),
    });
  }
  const problem = read.verdict === 'refuse' ? read.problem : 'one figure is wanted.';
  return new UserError('bad-input', `${field}: ${problem} Type ${wanted}. Nothing was changed.`);
}

export interface StepSaid {
  readonly what: string;
  readonly due?: string | undefined;
  readonly hint?: string | undefined;
  readonly remove: boolean;
}

/** Adds a step of the builder's own, changes one, or leaves one out. */
export function stepSaid(hand: Hand, { what, due, hint, remove }: StepSaid): Answer {
  const plan = planHere(hand);
  if (remove) {
    const step = findStep(plan, what, 'what');
    return planChanged(
      hand,
      hand.change((record) => leaveOut(record, step)),
    );
  }
  const known =
    /^#?\d+$/u.test(what.trim()) || plan.steps.some((step) => step.what.toLowerCase() === what.toLowerCase());
  if (known) {
    const step = findStep(plan, what, 'what');
    if (due === undefined && hint === undefined) {
      throw new UserError(
        'bad-input',
        `“${step.what}” is in the plan already. Say due: or hint: to change it, or remove:True to leave it out.`,
      );
    }
    const mark = due === undefined ? undefined : readMark(due);
    return planChanged(
      hand,
      hand.change((record) => changeStep(record, step, { due: mark, hint })),
    );
  }
  if (due === undefined) {
    throw new UserError(
      'bad-input',
      `due: say when “${what}” is due from the first start, as in 500 km, 8 h, 14 days, or 500 km or 8 h.`,
    );
  }
  const mark = readMark(due);
  return planChanged(
    hand,
    hand.change((record) => addStep(record, plan, { what, hint: hint ?? null, due: mark })),
  );
}

/** "500 km or 8 h": whichever comes first. @throws UserError 'bad-input' or 'which-one' about the option `due`. */
export function readMark(typed: string): Mark {
  let mark: Mark = { km: null, h: null, days: null };
  for (const part of typed.split(/\s+(?:or|and|,)\s+|\s*[,;/]\s*/iu).filter((each) => each !== '')) {
    const one = readOne(part);
    mark = { ...mark, ...one };
  }
  if (mark.km === null && mark.h === null && mark.days === null) {
    throw new UserError(
      'bad-input',
      `due: “${typed}” is no distance, hours or days. Type 500 km, 8 h, 14 days, or 500 km or 8 h.`,
    );
  }
  return mark;
}

function readOne(part: string): Partial<Mark> {
  const days = /^(?<count>\d{1,4}(?:[.,]\d+)?)\s*(?<unit>d|days?|weeks?|months?)$/iu.exec(
    part.trim(),
  )?.groups;
  if (days !== undefined) {
    const unit = days['unit']?.toLowerCase() ?? '';
    const each = unit.startsWith('w') ? 7 : unit.startsWith('m') ? 30 : 1;
    return { days: Number((days['count'] ?? '').replace(',', '.')) * each };
  }
  const hours = readQuantity(part, 'time');
  if (hours.verdict === 'read') return { h: hours.value / 3600 };
  const distance = readQuantity(part, 'distance');
  if (distance.verdict === 'read') return { km: distance.value };
  throw asked(distance, 'due', 'a distance, hours or days, as in 500 km, 8 h or 14 days');
}

export interface CeilingSaid {
  readonly at: string;
  readonly speed?: number | undefined;
  readonly boost?: number | undefined;
  readonly load?: string | undefined;
}

/** Puts a ceiling of the builder's own down. */
export function ceilingSaid(hand: Hand, { at, speed, boost, load }: CeilingSaid): Answer {
  const plan = planHere(hand);
  const mark = readMark(at);
  const here = ofMeasure(plan, mark);
  if (boost !== undefined && (boost < 0 || boost > 1)) {
    throw new UserError(
      'out-of-range',
      'boost: a share of the boost it is to make in the end, 0 to 100 %. Nothing was changed.',
    );
  }
  const before = plan.ceilings.findLast((ceiling) => ceiling.at <= here);
  const { limitRpm } = plan;
  if (speed !== undefined && limitRpm !== null && speed > limitRpm) {
    throw new UserError(
      'out-of-range',
      `speed: ${speed} rpm is above the engine's limit of ${limitRpm} rpm. Nothing was changed.`,
    );
  }
  const ceiling = {
    at: here,
    speedRpm: speed ?? before?.speedRpm ?? null,
    speedRatio:
      speed === undefined ? (before?.speedRatio ?? null) : limitRpm === null ? null : speed / limitRpm,
    boostRatio: boost ?? before?.boostRatio ?? null,
    load: load ?? before?.load ?? 'varied',
  };
  return planChanged(
    hand,
    hand.change((record) => setCeiling(record, plan, ceiling)),
  );
}

function ofMeasure({ measure }: RunInPlan, mark: Mark): number {
  const value = mark[measure];
  if (value !== null) return value;
  const names: Readonly<Record<Measure, string>> = { km: 'km', h: 'engine hours', days: 'days' };
  throw new UserError(
    'bad-input',
    `at: the ceilings of this plan are counted in ${names[measure]}. Nothing was changed.`,
  );
}
