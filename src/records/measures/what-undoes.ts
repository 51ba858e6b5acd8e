import { type Choice, UserError } from '../../core/user-error.ts';
import { isOpen } from '../jobs/facts.ts';
import type { Job } from '../jobs/job.ts';
import type { Part } from '../parts/part.ts';
import { plain } from '../suppliers/supplier.ts';
import type { Measure } from './measure.ts';

/** What undoes a measure: a part that comes, a job that is done, or only words. */
export type Undoer = Pick<Measure, 'until' | 'partId' | 'jobId'>;

/** Parts and jobs among which what undoes a measure is looked for. */
export interface Known {
  readonly parts: readonly Pick<Part, 'id' | 'name' | 'alsoCalled'>[];
  readonly jobs: readonly Job[];
}

const PICKED = /^=(part|job|words):(.*)$/u;
const MOST_CHOICES = 4;

/**
 * What is meant by "the hose": the one part or open job of that name, or, where there is none, the words themselves.
 *
 * @param is whether it was said to come or to be done
 * @throws UserError 'which-one' about the option `until` when several fit
 */
export function whatUndoes(typed: string, is: 'part' | 'job' | undefined, known: Known): Undoer {
  const [, kind, rest = ''] = PICKED.exec(typed) ?? [];
  if (kind === 'words') return { until: rest, partId: null, jobId: null };
  const part = known.parts.find(({ id }) => kind === 'part' && String(id) === rest);
  if (part !== undefined) return byPart(part);
  const job = known.jobs.find(({ id }) => kind === 'job' && String(id) === rest);
  if (job !== undefined) return byJob(job);
  const parts =
    is === 'job' ? [] : named(typed, known.parts, ({ name, alsoCalled }) => [name, ...alsoCalled]);
  const jobs = is === 'part' ? [] : named(typed, known.jobs.filter(isOpen), ({ name }) => [name]);
  const [onlyPart, onlyJob] = [parts[0], jobs[0]];
  if (parts.length + jobs.length === 0) return { until: typed, partId: null, jobId: null };
  if (parts.length === 1 && onlyPart !== undefined && jobs.length === 0) return byPart(onlyPart);
  if (jobs.length === 1 && onlyJob !== undefined && parts.length === 0) return byJob(onlyJob);
  throw new UserError('which-one', `What undoes it: “${typed}” fits several. Which one?`, {
    field: 'until',
    choices: [
      ...[...parts.map(partChoice), ...jobs.map(jobChoice)].slice(0, MOST_CHOICES),
      { label: `None of them: ${typed}`.slice(0, 80), value: `=words:${typed}` },
    ],
  });
}

const byPart = ({ id, name }: Known['parts'][number]): Undoer => ({ until: name, partId: id, jobId: null });
const byJob = ({ id, name }: Job): Undoer => ({ until: name, partId: null, jobId: id });

/** Parts and open jobs offered while it is typed. */
export function suggestUndoers(typed: string, { parts, jobs }: Known): readonly Choice[] {
  return [...parts.map(partChoice), ...jobs.filter(isOpen).map(jobChoice)].filter(({ label }) =>
    plain(label).includes(plain(typed)),
  );
}

const partChoice = ({ id, name }: Known['parts'][number]): Choice => ({
  label: `Part: ${name}`.slice(0, 80),
  value: `=part:${id}`,
});
const jobChoice = ({ id, name }: Job): Choice => ({
  label: `Job: ${name}`.slice(0, 80),
  value: `=job:${id}`,
});

/** Those of exactly this name, else those whose name holds all its words. */
function named<Thing>(
  typed: string,
  all: readonly Thing[],
  namesOf: (thing: Thing) => readonly string[],
): readonly Thing[] {
  const wanted = plain(typed);
  const exact = all.filter((thing) => namesOf(thing).some((name) => plain(name) === wanted));
  if (exact.length > 0) return exact;
  const words = wanted.split(' ').filter((word) => word.length > 1);
  if (words.length === 0) return [];
  return all.filter((thing) =>
    namesOf(thing).some((name) => words.every((word) => hasWord(plain(name), word))),
  );
}

/** "hose" is in "turbo drain hoses", not in "choser". */
const hasWord = (name: string, word: string): boolean =>
  name.split(/[^\p{L}\p{N}.]+/u).some((one) => one === word || one === `${word}s` || `${one}s` === word);

/** Whether what undoes a measure has come or been done: whose arrival proposes to undo it, and never does it by itself. */
export function canBeUndone(
  { until, partId, jobId }: Undoer,
  {
    parts,
    jobs,
  }: {
    readonly parts: readonly {
      readonly part: Known['parts'][number];
      readonly inHand: number;
      readonly fitted: number;
    }[];
    readonly jobs: readonly Job[];
  },
): { readonly kind: 'part' | 'job'; readonly name: string } | null {
  const byId = parts.find(({ part }) => part.id === partId);
  const byWords =
    byId === undefined && jobId === null && until !== null
      ? named(until, parts, ({ part }) => [part.name, ...part.alsoCalled])
      : [];
  const part = byId ?? (byWords.length === 1 ? byWords[0] : undefined);
  if (part !== undefined && part.inHand + part.fitted > 0) return { kind: 'part', name: part.part.name };
  const job = jobs.find(({ id }) => id === jobId);
  return job?.doneOn == null ? null : { kind: 'job', name: job.name };
}
