import { UserError } from '../../core/user-error.ts';
import { plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import type { JobNeed } from './job.ts';
import { candidates, type TypedNeed } from './need-candidates.ts';
import type { NamedNeed } from './needs.ts';
import type { JobBook } from './read-facts.ts';

/** Takes a typed list apart at its commas and semicolons. */
export function splitNeeds(typed: string): readonly string[] {
  return typed
    .split(/[,;]/)
    .map((each) => each.trim())
    .filter(Boolean);
}

function readNeed(typed: string): TypedNeed {
  const [, kind, rest = typed] = /^(part|job|fluid|stage)(?:\s*:\s*|\s+)(.+)$/i.exec(typed) ?? [];
  const [, count, name = rest] = /^(\d{1,4})\s*(?:x|×|\*)?\s+(.+)$/i.exec(rest) ?? [];
  const known = (['part', 'job', 'fluid', 'stage'] as const).find((one) => one === kind?.toLowerCase());
  return { kind: known, name, quantity: count === undefined ? 1 : Math.max(1, Number(count)) };
}

/**
 * What the typed needs stand for. A part that nobody has named yet is written down, where it is said to be one
 * (`part:+copper washer`); otherwise it is asked about.
 *
 * @param field the option they were typed into, for a picked answer to fill
 * @throws UserError 'which-one' when a name could be several things or none that is known.
 */
export function readNeeds(
  record: TeamRecord,
  book: JobBook,
  buildId: number,
  typed: string,
  field: string,
): readonly NamedNeed[] {
  const all = splitNeeds(typed);
  if (all.length === 0) {
    throw new UserError(
      'bad-input',
      `${field}: nothing was named. Nothing was changed. Type names with commas between: sump gasket, job #3, stage:first-start.`,
    );
  }
  return all.map((each, index) => {
    const wanted = readNeed(each);
    const found = candidates(record, book, buildId, wanted);
    const [only, ...more] = found;
    if (only !== undefined && more.length === 0) return only.make();
    const refill = (value: string): string => all.map((one, at) => (at === index ? value : one)).join(', ');
    if (only !== undefined) {
      throw new UserError('which-one', `"${wanted.name}" could be several things. Which one?`, {
        field,
        choices: found.slice(0, 5).map(({ label, value }) => ({ label, value: refill(value) })),
      });
    }
    throw nothingCalled(wanted, field, refill);
  });
}

function nothingCalled(
  { name, kind, quantity }: TypedNeed,
  field: string,
  refill: (value: string) => string,
): UserError {
  if (kind !== undefined && kind !== 'part') {
    return new UserError(
      'not-found',
      `There is no ${kind} called "${name}". Nothing was changed. /job list shows jobs and /stage list the stages.`,
    );
  }
  return new UserError(
    'which-one',
    `Nothing here is called "${name}": no part, job, fluid or stage. Is it a part still to be got?`,
    {
      field,
      choices: [
        {
          label: `New part: ${name}`.slice(0, 80),
          value: refill(`part:${quantity > 1 ? `${quantity} ` : ''}+${name}`),
        },
      ],
    },
  );
}

/** The name of a part as the record has it already, or a mark that it is new, so that nothing has to be asked. */
export function partForSet(record: TeamRecord, buildId: number, name: string): string {
  const parts = record.parts.ofBuild(buildId);
  const names = (part: (typeof parts)[number]): readonly string[] =>
    [part.name, ...part.alsoCalled].map(plain);
  const same = parts.find((part) => names(part).includes(plain(name)));
  if (same !== undefined) return same.name;
  const holding = parts.filter((part) => names(part).some((one) => one.includes(plain(name))));
  const [only, ...more] = holding;
  return only !== undefined && more.length === 0 ? only.name : `+${name}`;
}

/** The needs a job has, in words, as they would be typed. */
export function needName(need: JobNeed, { facts }: JobBook): string {
  switch (need.kind) {
    case 'part': {
      const name = facts.parts.get(need.partId)?.part.name ?? `part #${need.partId}`;
      return need.quantity > 1 ? `${need.quantity} × ${name}` : name;
    }
    case 'job': {
      const job = facts.jobs.get(need.jobId);
      return `#${need.jobId} ${job?.name ?? ''}`.trim();
    }
    case 'fluid':
      return `fluid ${facts.fluids.get(need.caseId)?.fluid.name ?? `case #${need.caseId}`}`;
    case 'stage':
      return `stage ${facts.stages.get(need.stage)?.name ?? need.stage}`;
  }
}
