import type { JsonObject } from '../../core/json.ts';
import type { Answer, Button, Fact, Item, Tone } from '../../core/reply.ts';
import { sayDay } from '../../core/time.ts';
import { type Allowed, allowedNow, sayAllowed } from './allowed.ts';
import { type Progress, runOf, type StepStanding, type StepState } from './progress.ts';
import type { Mark, Measure, RunInPlan } from './run-in.ts';
import { stepButtons } from './run-in-buttons.ts';
import { sayRun, sayStanding } from './say-run-in.ts';

const TONES: Readonly<Record<StepState, Tone>> = {
  due: 'late',
  soon: 'soon',
  later: 'plain',
  done: 'done',
  'left out': 'plain',
};
/** With two buttons each, more do not fit one message. */
const MOST_WITH_BUTTONS = 4;
export const STEPS_A_PAGE = 8;

/** Always said: a plan is no more than this, and hot oil comes before load. */
const OIL_RULE =
  'No more than half load before the oil is at 60 °C, better 80 °C (common practice, no source).';
const CUSTOM =
  "Common practice, no source: the builder's own figures come first (/runin step, /runin ceiling).";

export interface PlanView {
  readonly plan: RunInPlan;
  readonly progress: Progress;
  readonly standings: readonly StepStanding[];
  readonly page?: number;
  readonly said?: string;
  readonly changeId?: number;
  readonly certainty?: string;
  readonly extraButtons?: readonly Button[];
  /** A drain that may have been one of the oil changes. */
  readonly proposal?: string | undefined;
}

/** "how may I drive it today?" in one line. */
export function todayAnswer({ plan, progress, standings }: PlanView): Answer {
  const allowed = allowedNow(plan, progress);
  const due = standings.filter(({ state }) => state === 'due');
  const next = standings.find(({ state }) => state === 'soon' || state === 'later');
  return {
    kind: 'answer',
    subject: 'Today',
    result:
      allowed === null
        ? 'This plan has no ceilings: /runin ceiling puts them down'
        : sayCapital(sayAllowed(plan, allowed)),
    tone: due.length > 0 ? 'late' : allowed?.until === null ? 'done' : 'plain',
    certainty: certaintyOf(plan, progress, allowed),
    items: [...due, ...(next === undefined ? [] : [next])]
      .slice(0, MOST_WITH_BUTTONS)
      .map((standing) => itemOf(standing, progress, true)),
    smallPrint: smallPrint(plan),
    audience: 'crew',
    data: {
      ...planData(plan, progress, standings),
      ...(allowed === null ? {} : { allowed: allowedData(allowed, plan.measure) }),
    },
  };
}

const sayCapital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

function certaintyOf(plan: RunInPlan, progress: Progress, allowed: Allowed | null): string {
  const counters = [
    progress.km.run === null
      ? undefined
      : `${sayRun(progress.km.run, 'km')} (read ${sayDay(progress.km.on ?? progress.today, progress.today)})`,
    progress.h.run === null ? undefined : sayRun(progress.h.run, 'h'),
    `${sayRun(progress.days, 'days')} since the first start`,
  ].filter((part) => part !== undefined);
  const unknown =
    allowed !== null && !allowed.known
      ? ` Nothing was read since the first start, so the first ceiling holds: log ${plan.measure === 'h' ? 'the hours, as in /reading log reading:"hours 1.5"' : 'the odometer, as in /reading log reading:"odo 1234 km"'}.`
      : '';
  return `${counters.join(', ')}.${unknown}`;
}

const smallPrint = ({ origin }: RunInPlan): readonly string[] => [
  OIL_RULE,
  ...(origin === 'common practice' ? [CUSTOM] : []),
  'Between two points rev and boost ceilings rise in a straight line; rounded down.',
];

/** The whole plan, the most pressing step first. */
export function planAnswer(view: PlanView): Answer {
  const {
    plan,
    progress,
    standings,
    page = 1,
    certainty,
    said,
    changeId,
    extraButtons = [],
    proposal,
  } = view;
  const allowed = allowedNow(plan, progress);
  const pages = Math.max(1, Math.ceil(standings.length / STEPS_A_PAGE));
  const at = Math.min(Math.max(page, 1), pages);
  const shown = standings.slice((at - 1) * STEPS_A_PAGE, at * STEPS_A_PAGE);
  const turn = (to: number, label: string) => ({
    label,
    does: { command: 'runin', action: 'plan', args: { page: to } },
  });
  const facts: readonly Fact[] = [
    ...(allowed === null ? [] : [['Today', sayAllowed(plan, allowed)] as const]),
    ...(proposal === undefined ? [] : [['Drained', proposal] as const]),
  ];
  let withButtons = 0;
  return {
    kind: 'answer',
    subject: 'Running in',
    result: headline(plan, standings),
    tone: standings.some(({ state }) => state === 'due')
      ? 'late'
      : standings.some(({ state }) => state === 'soon')
        ? 'soon'
        : 'plain',
    certainty: [
      certainty,
      certaintyOf(plan, progress, allowed),
      pages > 1 ? `Page ${at} of ${pages}.` : undefined,
    ]
      .filter(Boolean)
      .join(' '),
    facts,
    items: shown.map((standing) => {
      const pressing = standing.state === 'due' || standing.state === 'soon';
      if (pressing) withButtons += 1;
      return itemOf(standing, progress, pressing && withButtons <= MOST_WITH_BUTTONS);
    }),
    smallPrint: smallPrint(plan),
    buttons: [
      ...(at > 1 ? [turn(at - 1, 'Back')] : []),
      ...(at < pages ? [turn(at + 1, 'More steps')] : []),
      ...extraButtons,
    ],
    audience: 'crew',
    data: {
      ...planData(plan, progress, standings),
      ...(allowed === null ? {} : { allowed: allowedData(allowed, plan.measure) }),
      page: at,
      pages,
      ...(said === undefined ? {} : { said }),
      ...(changeId === undefined ? {} : { change: changeId }),
    },
  };
}

function headline({ name, steps }: RunInPlan, standings: readonly StepStanding[]): string {
  const count = (state: StepState): number => standings.filter((each) => each.state === state).length;
  const open = steps.length - count('done') - count('left out');
  if (steps.length === 0) return `“${name}”: no step yet`;
  if (open === 0) return `“${name}”: every step is done`;
  const parts = [
    count('due') > 0 && `${count('due')} due`,
    count('soon') > 0 && `${count('soon')} coming up`,
    `${count('done')} of ${steps.length} done`,
  ];
  return `“${name}”: ${parts.filter(Boolean).join(', ')}`;
}

/** One step with how it stands. */
export function itemOf(
  standing: StepStanding,
  { today }: Progress,
  withButtons: boolean,
  noticeId?: number,
): Item {
  const { step, state } = standing;
  const hint = step.hint === null || state === 'done' ? '' : ` ${sayCapital(step.hint)}.`;
  const photo = step.link === null ? '' : ` ${step.link}`;
  return {
    text: step.what,
    note: `${sayStanding(standing, today)}${hint}${photo}`,
    tone: TONES[state],
    ...(withButtons && state !== 'done' && state !== 'left out'
      ? { buttons: stepButtons(step, noticeId) }
      : {}),
  };
}

export function planData(
  plan: RunInPlan,
  progress: Progress,
  standings: readonly StepStanding[],
): JsonObject {
  return {
    plan: plan.name,
    origin: plan.origin,
    measure: plan.measure,
    startedOn: plan.startedOn,
    ...(progress.km.run === null ? {} : { distanceKm: progress.km.run }),
    ...(progress.h.run === null ? {} : { engineTime: { value: progress.h.run, unit: 'h' } }),
    days: progress.days,
    ...(runOf(plan.measure, progress) === null ? { counterKnown: false } : { counterKnown: true }),
    steps: standings.map(stepData),
  };
}

/** A mark as figures with their units. */
function markData({ km, h, days }: Mark): JsonObject[] {
  const figure = (value: number | null, unit: Measure): JsonObject[] =>
    value === null ? [] : [{ value, unit }];
  return [...figure(km, 'km'), ...figure(h, 'h'), ...figure(days, 'days')];
}

export function stepData({ step, state, due, expectedOn }: StepStanding): JsonObject {
  return {
    step: step.id,
    what: step.what,
    origin: step.origin,
    state,
    due: markData(due),
    ...(expectedOn === null ? {} : { expectedOn }),
    ...(step.doneOn === null ? {} : { doneOn: step.doneOn }),
    ...(step.found === null ? {} : { found: step.found }),
  };
}

function allowedData(
  { mostRpm, boostRatio, mostBoostKPa, load, until, known }: Allowed,
  measure: Measure,
): JsonObject {
  return {
    ...(mostRpm === null ? {} : { speedRpm: mostRpm }),
    ...(boostRatio === null ? {} : { boostRatio }),
    ...(mostBoostKPa === null ? {} : { boostKPa: mostBoostKPa }),
    load,
    until: until === null ? null : { value: until, unit: measure },
    counterKnown: known,
  };
}
