import { UserError } from '../../core/user-error.ts';
import { isSlip, NEW, namesOf } from '../parts/find-part.ts';
import type { KnownPart } from '../parts/part-store.ts';
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
  const asked = all.map((each) => {
    const wanted = readNeed(each);
    return { each, wanted, found: candidates(record, book, buildId, wanted) };
  });
  const unknown = asked.filter(({ found }) => found.length === 0);
  const refill = (index: number, value: string): string =>
    all.map((one, at) => (at === index ? value : one)).join(', ');
  const named = asked.map(({ wanted, found }, index) => {
    const [only, ...more] = found;
    if (only === undefined) return { wanted, index };
    if (more.length === 0) return { make: only.make };
    throw new UserError('which-one', `"${wanted.name}" could be several things. Which one?`, {
      field,
      choices: found.slice(0, 5).map(({ label, value }) => ({ label, value: refill(index, value) })),
    });
  });
  for (const one of named) {
    if ('make' in one) continue;
    const near = nearlyCalled(record, buildId, one.wanted);
    if (near.length > 0) throw nearly(one.wanted, near, field, (value) => refill(one.index, value));
  }
  if (unknown.length > 0) {
    const list = asked.map(({ each, wanted, found }) => (found.length === 0 ? newPart(wanted) : each));
    throw nothingCalled(
      unknown.map(({ wanted }) => wanted),
      field,
      list.join(', '),
    );
  }
  return named.flatMap((one) => ('make' in one ? [one.make()] : []));
}

/** Parts that a slip of a letter or two could have meant. */
function nearlyCalled(record: TeamRecord, buildId: number, { kind, name }: TypedNeed): readonly KnownPart[] {
  if ((kind !== undefined && kind !== 'part') || name.startsWith(NEW)) return [];
  return record.parts
    .ofBuild(buildId)
    .filter((part) => namesOf(part).some((one) => isSlip(one, name)))
    .slice(0, 4);
}

function nearly(
  wanted: TypedNeed,
  near: readonly KnownPart[],
  field: string,
  refill: (value: string) => string,
): UserError {
  return new UserError('which-one', `No part here is called "${wanted.name}". Is this the one?`, {
    field,
    choices: [
      ...near.map(({ id, name }) => ({
        label: name.slice(0, 80),
        value: refill(`part:${wanted.quantity} #${id}`),
      })),
      { label: `New part: ${wanted.name}`.slice(0, 80), value: refill(newPart(wanted)) },
    ],
  });
}

const newPart = ({ name, quantity }: TypedNeed): string =>
  `part:${quantity > 1 ? `${quantity} ` : ''}${NEW}${name}`;

/** All that nobody has named before is asked about at once: a list of new parts is one press. */
function nothingCalled(unknown: readonly TypedNeed[], field: string, asNew: string): UserError {
  const other = unknown.find(({ kind }) => kind !== undefined && kind !== 'part');
  if (other !== undefined) {
    return new UserError(
      'not-found',
      `There is no ${other.kind} called "${other.name}". Nothing was changed. /job list shows jobs and /stage list the stages.`,
    );
  }
  const names = unknown.map(({ name }) => name);
  const one = names.length === 1;
  const quoted = names.map((name) => `"${name}"`).join(' or ');
  return new UserError(
    'which-one',
    `Nothing here is called ${quoted}: no part, job, fluid or stage. ${one ? 'Is it a part' : 'Are they parts'} still to be got?`,
    {
      field,
      choices: [{ label: `New ${one ? 'part' : 'parts'}: ${names.join(', ')}`.slice(0, 80), value: asNew }],
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
