import type { JsonObject } from '../../core/json.ts';
import type { Answer, Button, Fact, Tone } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import { blockers } from './blockers.ts';
import { isOpen } from './facts.ts';
import type { Job } from './job.ts';
import { needName } from './need-words.ts';
import type { JobBook } from './read-facts.ts';
import { sayBlocker, sayFew, sayMinutes } from './say-job.ts';
import { type Renewal, renewalsFor, sayCount, sayStock } from './single-use.ts';

export interface JobView {
  readonly job: Job;
  readonly book: JobBook;
  readonly today: Day;
  /** What has just been done, in words; absent when it was only asked for. */
  readonly said?: string;
  /** Said under the result: how minutes were read. */
  readonly certainty?: string;
  readonly extraButtons?: readonly Button[];
  /** Whether to offer what its joints use once. */
  readonly offersRenewals?: boolean;
}

/** One job as a card; where its words name a joint, with what is renewed there. */
export function jobAnswer(view: JobView): Answer {
  const { job, book, today, said, certainty, extraButtons = [], offersRenewals = true } = view;
  const held = blockers(job, book.facts);
  const renewals = offersRenewals && isOpen(job) ? renewalsFor(job.name, job.needs, book.facts.parts) : [];
  return {
    kind: 'answer',
    subject: `Job #${job.id}`,
    result: `${job.name}: ${stateOf(job, held.length, today)}`,
    tone: toneOf(job, held.length),
    ...(certainty === undefined ? {} : { certainty }),
    facts: [...factsOf(job, book), ...heldFact(held.map((one) => sayBlocker(one, today)))],
    ...(renewals.length === 0 ? {} : renewalParts(job, renewals)),
    buttons: [...allButton(job, renewals), ...moveButtons(job), ...extraButtons],
    audience: 'crew',
    data: { ...jobData(job, book, today), ...(said === undefined ? {} : { said }) },
  };
}

function stateOf({ doneOn, doneByName, dropped }: Job, held: number, today: Day): string {
  if (doneOn !== null) return `done ${sayDay(doneOn, today)} by ${doneByName}`;
  if (dropped) return 'dropped';
  return held === 0 ? 'can be done now' : `waits for ${held === 1 ? 'one thing' : `${held} things`}`;
}

function toneOf({ doneOn, dropped }: Job, held: number): Tone {
  if (doneOn !== null) return 'done';
  return dropped || held === 0 ? 'plain' : 'soon';
}

function factsOf(job: Job, book: JobBook): readonly Fact[] {
  const { minutes, people, tools, note, system, stage } = job;
  const stageName = stage === null ? null : (book.facts.stages.get(stage)?.name ?? stage);
  return [
    ...(stageName === null ? [] : [['Stage', stageName] as const]),
    ...(system === null ? [] : [['System', system] as const]),
    [
      'Takes',
      `${minutes === null ? 'nobody has said how long' : sayMinutes(minutes)}${people > 1 ? `, ${people} people` : ''}`,
    ],
    ...(tools.length === 0 ? [] : [['Tools', tools.join(', ')] as const]),
    ...(job.needs.length === 0
      ? []
      : [
          [
            'Needs',
            sayFew(
              job.needs.map((need) => needName(need, book)),
              12,
            ),
          ] as const,
        ]),
    ...(note === null ? [] : [['Note', note] as const]),
  ];
}

const heldFact = (held: readonly string[]): readonly Fact[] =>
  held.length === 0 ? [] : [['Waits for', sayFew(held, 12)]];

/** What is used once, each checked against the shelf and with a button to take it up. */
function renewalParts(job: Job, renewals: readonly Renewal[]): Pick<Answer, 'items' | 'smallPrint'> {
  return {
    items: renewals.slice(0, MOST_RENEWALS).map((one) => ({
      text: sayCount(one),
      note: `Renewed whenever this is opened. ${sayStock(one)}${one.sealant === undefined ? '' : `; ${one.sealant}`}.`,
      tone: one.standing !== undefined && one.standing.inHand >= one.quantity ? 'plain' : 'soon',
      buttons: [renewButton(job, 'Needs it', one.part)],
    })),
    smallPrint: [
      'What is renewed at a joint is common practice, no source; the maker’s list stands above it.',
    ],
  };
}

/** So that the card has room for its own buttons. */
const MOST_RENEWALS = 7;

const allButton = (job: Job, renewals: readonly Renewal[]): readonly Button[] =>
  renewals.length < 2 ? [] : [renewButton(job, `Needs all ${renewals.length}`, '*')];

function renewButton({ id }: Job, label: string, part: string): Button {
  return { label, weight: 'main', does: { command: 'job', action: 'renew', args: { job: id, part } } };
}

function moveButtons(job: Job): readonly Button[] {
  const args = { job: job.id };
  if (!isOpen(job)) return [{ label: 'Reopen', does: { command: 'job', action: 'reopen', args } }];
  return [
    doneButton(job),
    { label: 'Drop', weight: 'grave', does: { command: 'job', action: 'drop', args } },
  ];
}

export function doneButton({ id }: Pick<Job, 'id'>): Button {
  return { label: 'Done', does: { command: 'job', action: 'done', args: { job: id } } };
}

/** The job as scripts get it. */
export function jobData(job: Job, { facts }: Pick<JobBook, 'facts'>, today: Day): JsonObject {
  const held = blockers(job, facts);
  return {
    job: job.id,
    name: job.name,
    stage: job.stage,
    system: job.system,
    leastMin: job.minutes?.least ?? null,
    likelyMin: job.minutes?.likely ?? null,
    mostMin: job.minutes?.most ?? null,
    people: job.people,
    tools: job.tools,
    note: job.note,
    doneOn: job.doneOn,
    doneBy: job.doneByName,
    dropped: job.dropped,
    needs: job.needs.map((need) => ({ ...need })),
    unblocked: isOpen(job) && held.length === 0,
    waitsFor: held.map((one) => sayBlocker(one, today)),
  };
}
