import type { Answer, Fact, Item } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import type { StageFact } from './facts.ts';
import { type Awaited, NOT_BOUGHT, NOT_ORDERED, type StagePlan, UNKNOWN_MINUTES } from './plan.ts';
import { sayMinutes } from './say-job.ts';
import { COURIER_DAYS } from './sooner.ts';
import type { Driver, Gain, StartDay } from './start-day.ts';

export interface StartView {
  readonly plan: StagePlan;
  readonly found: StartDay;
  readonly today: Day;
  readonly evenings: string;
  /** Whether the crew has said when it works. */
  readonly saidEvenings: boolean;
  /** Open stages, for asking about another. */
  readonly stages: readonly StageFact[];
}

/** The simulated day in a sentence: what the picture is headed by. */
export function startSentence({ plan, found, today }: Pick<StartView, 'plan' | 'found' | 'today'>): string {
  const { p10, p50, p90 } = found.range;
  // said from the middle day on, so that a year is named once
  return `${plan.stage.name}: ${sayDay(p50, today)}, or ${sayDay(p10, p50)} to ${sayDay(p90, p50)}`;
}

/** The day, its range, what drives it, and what having something sooner would gain. */
export function startAnswer(view: StartView): Answer {
  const { plan, found, today, stages } = view;
  const { p10, p50, p90 } = found.range;
  return {
    kind: 'answer',
    subject: 'When',
    result: `${plan.stage.name}: ${sayDay(p50, today)}`,
    certainty:
      p10 === p90
        ? 'The same day in eight runs of ten.'
        : `As likely before as after. One chance in ten by ${sayDay(p10, today)}, nine in ten by ${sayDay(p90, today)}.`,
    items: gainItems(found.gains, today),
    facts: driverFacts(found, today),
    smallPrint: smallPrint(view),
    buttons: [
      { label: 'Order by', does: { command: 'when', action: 'order-by', args: { stage: plan.stage.key } } },
      { label: 'What can be done now', does: { command: 'now', action: 'page', args: {} } },
    ],
    ...(stages.length < 2
      ? {}
      : {
          menu: {
            prompt: 'Another stage',
            does: { command: 'when', action: 'date', args: {} },
            arg: 'stage',
            choices: stages.slice(0, 25).map(({ key, name }) => ({ label: name, value: key })),
          },
        }),
    audience: 'crew',
    data: {
      stage: plan.stage.key,
      tenthOn: p10,
      medianOn: p50,
      ninetiethOn: p90,
      runs: found.runs,
      jobs: found.jobs.slice(0, 10).map(({ what, share }) => ({ job: what.id, name: what.name, share })),
      awaited: found.awaited.slice(0, 10).map(({ what, share }) => ({
        name: what.name,
        part: what.partId,
        order: what.orderId,
        share,
      })),
      gains: found.gains.map(({ sooner, days, meanDays }) => ({
        name: sooner.name,
        part: sooner.places.length === 1 ? (plan.awaited[sooner.places[0] ?? -1]?.partId ?? null) : null,
        how: sooner.how,
        hereOn: sooner.hereOn,
        meanDays,
        leastDays: days.p10,
        likelyDays: days.p50,
        mostDays: days.p90,
      })),
    },
  };
}

function driverFacts({ jobs, awaited }: StartDay, today: Day): readonly Fact[] {
  const parts = awaited.slice(0, 3).map((one) => `${sayAwaited(one, today)}, ${percent(one.share)}`);
  const work = jobs.slice(0, 3).map(({ what, share }) => `#${what.id} ${what.name}, ${percent(share)}`);
  return [
    ...(parts.length === 0 ? [] : [['Parts that drive it', parts.join('; ')] as const]),
    ...(work.length === 0 ? [] : [['Jobs that drive it', work.join('; ')] as const]),
  ];
}

function sayAwaited({ what }: Driver<Awaited>, today: Day): string {
  const { kind, name, orderId, arriving } = what;
  if (kind === 'fluid') return `${name} (not bought)`;
  if (kind === 'not ordered') return `${name} (not ordered)`;
  const days = sayDay(Temporal.PlainDate.from(today).add({ days: arriving.likely }).toString(), today);
  return `${name} (order #${orderId}, expected ${days})`;
}

/** Less is not worth a courier. */
const WORTH_DAYS = 0.5;

/** What ordering something today would gain, the most first. */
function gainItems(gains: readonly Gain[], today: Day): readonly Item[] {
  const worth = gains.filter(({ meanDays, sooner }) => meanDays >= WORTH_DAYS || sooner.asked);
  if (worth.length === 0 && gains.length > 0) {
    return [{ text: 'No courier and no other supplier would gain half a day' }];
  }
  return worth.slice(0, 3).map(({ sooner, days, meanDays }) => {
    return {
      text: `${sooner.name} ${sooner.how}: ${sayGain(Math.round(meanDays * 10) / 10)}`,
      note: `Ordered today, here ${sayDay(sooner.hereOn, today)}${sayGainRange(days)}.`,
    };
  });
}

/** ", 0 to 7 days sooner in eight runs of ten"; from later to sooner where it may be either. */
function sayGainRange({ p10, p90 }: Gain['days']): string {
  const [least, most] = [Math.round(p10), Math.round(p90)];
  if (least === most) return '';
  const ends =
    least >= 0
      ? `${least} to ${most} days sooner`
      : most <= 0
        ? `${-most} to ${-least} days later`
        : `${-least} days later to ${most} days sooner`;
  return `; ${ends} in eight runs of ten`;
}

function sayGain(days: number): string {
  if (days === 0) return 'no day sooner';
  return `${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'} ${days > 0 ? 'sooner' : 'later'}`;
}

/** What was assumed, and how it was worked out. */
function smallPrint({ plan, found, evenings, saidEvenings }: StartView): readonly string[] {
  const kinds = new Set(plan.awaited.map(({ kind }) => kind));
  return [
    `${found.runs} runs of ${countOf(plan.jobs.length)}, lengths by the beta distribution of their three figures, the same chances every time it is asked.`,
    `${saidEvenings ? 'You work' : 'Nobody has said when you work, so it is taken that you work'} ${evenings}, ${plan.crew.people} ${plan.crew.people === 1 ? 'person' : 'people'}; /when evenings changes it.`,
    plan.unknownLength > 0
      ? `${countOf(plan.unknownLength)} whose length nobody has said: taken as ${sayMinutes(UNKNOWN_MINUTES)} (common practice).`
      : '',
    kinds.has('not ordered')
      ? `What is not ordered is taken as here in ${NOT_ORDERED.least} to ${NOT_ORDERED.late} days, likely ${NOT_ORDERED.likely}, as if ordered today (common practice).`
      : '',
    kinds.has('fluid')
      ? `Fluids that are short are taken as bought in ${NOT_BOUGHT.least} to ${NOT_BOUGHT.late} days (common practice).`
      : '',
    found.gains.length > 0
      ? `Sooner: ${found.gainRuns} runs against the same runs; a courier is taken as ${COURIER_DAYS} working days (common practice).`
      : '',
    'What is asked of people or readings at a stage takes no time in it.',
  ].filter(Boolean);
}

const countOf = (jobs: number): string => `${jobs} ${jobs === 1 ? 'job' : 'jobs'}`;

const percent = (share: number): string => `${Math.round(share * 100)} %`;
