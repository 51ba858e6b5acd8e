import type { Answer, Button, Item } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import type { CanDo, NowList } from './can-do.ts';
import { doneButton, jobData } from './job-answer.ts';
import type { JobBook } from './read-facts.ts';
import { sayBlocker, sayFew, sayMinutes } from './say-job.ts';
import type { Waiting } from './waits.ts';

/** One line of the list: a job to do, one that takes more than is at hand, or one that waits. */
export type NowLine =
  | { readonly kind: 'ready' | 'too much'; readonly one: CanDo }
  | { readonly kind: 'blocked'; readonly one: Waiting };

/** Everything there is to say, what can be done first. */
export function nowLines({ ready, tooMuch, blocked }: NowList): readonly NowLine[] {
  return [
    ...ready.map((one) => ({ kind: 'ready', one }) as const),
    ...tooMuch.map((one) => ({ kind: 'too much', one }) as const),
    ...blocked.map((one) => ({ kind: 'blocked', one }) as const),
  ];
}

export interface NowView {
  readonly list: NowList;
  readonly shown: readonly NowLine[];
  readonly book: JobBook;
  readonly today: Day;
  readonly where?: string;
  readonly buttons: readonly Button[];
}

/** What can be done now, with a button for each, and what keeps the rest. */
export function nowAnswer({ list, shown, book, today, where, buttons }: NowView): Answer {
  const { ready, tooMuch, blocked } = list;
  const counts = [
    tooMuch.length > 0 ? `${tooMuch.length} take more than is at hand` : '',
    blocked.length > 0 ? `${blocked.length} wait for something` : '',
  ].filter(Boolean);
  const none = book.jobs.length === 0;
  return {
    kind: 'answer',
    subject: 'What can be done now',
    result: none
      ? 'No job is written down yet'
      : ready.length === 0
        ? 'Nothing can be done now'
        : `${ready.length} ${ready.length === 1 ? 'job' : 'jobs'} can be done now`,
    certainty: none
      ? '/job add writes one down, /job from-set offers a starting set.'
      : [...counts, where ?? ''].filter(Boolean).join('. ') || 'Nothing waits.',
    items: shown.map((line) => itemOf(line, today)),
    buttons,
    audience: 'crew',
    data: {
      ready: ready.map(({ job, frees }) => ({ ...jobData(job, book, today), frees })),
      tooMuch: tooMuch.map(({ job }) => job.id),
      blocked: blocked.map(({ job, blockers, partsOn }) => ({
        job: job.id,
        name: job.name,
        waitsFor: blockers.map((one) => sayBlocker(one, today)),
        partsOn,
      })),
    },
  };
}

function itemOf(line: NowLine, today: Day): Item {
  const { job } = line.one;
  const text = `#${job.id} ${job.name}`;
  if (line.kind === 'blocked') {
    const { blockers, partsOn } = line.one;
    const until = partsOn === null ? '' : ` Parts expected by ${sayDay(partsOn, today)}.`;
    const held = sayFew(
      blockers.map((one) => sayBlocker(one, today)),
      3,
    );
    return { text, note: `Waits for ${held}.${until}`, tone: 'soon' };
  }
  const { frees } = line.one;
  const words = [
    job.minutes === null ? '' : sayMinutes(job.minutes),
    job.people > 1 ? `${job.people} people` : '',
    job.tools.join(', '),
    frees === 0 ? '' : `frees ${frees} more`,
  ].filter(Boolean);
  const more = line.kind === 'too much' ? 'More than is at hand: ' : '';
  return { text, note: `${more}${words.join('; ')}`, buttons: [doneButton(job)] };
}
