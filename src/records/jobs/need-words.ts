import { type Choice, UserError } from '../../core/user-error.ts';
import { openPart } from '../parts/open-part.ts';
import { namesOfStage } from '../stages/find-stage.ts';
import { plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import { jobsNamed } from './find-job.ts';
import type { JobNeed } from './job.ts';
import type { NamedNeed } from './needs.ts';
import type { JobBook } from './read-facts.ts';
import { isUsedOnce } from './single-use.ts';

/** One thing of a list of needs as typed: "2 × sump gasket", "job head", "stage:first-start". */
interface TypedNeed {
  readonly kind: JobNeed['kind'] | undefined;
  readonly name: string;
  readonly quantity: number;
}

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

interface Candidate extends Choice {
  make(): NamedNeed;
}

function candidates(
  record: TeamRecord,
  book: JobBook,
  buildId: number,
  wanted: TypedNeed,
): readonly Candidate[] {
  const { kind, name, quantity } = wanted;
  const every = [
    ...(kind === undefined || kind === 'part' ? partsCalled(record, buildId, wanted) : []),
    ...(kind === undefined || kind === 'job' ? jobsCalled(book, name) : []),
    ...(kind === undefined || kind === 'fluid' ? fluidsCalled(book, name) : []),
    ...(kind === undefined || kind === 'stage' ? stagesCalled(book, name) : []),
  ];
  const exact = every.filter(({ exact: same }) => same);
  return (exact.length > 0 ? exact : every).map(({ found, choice }) => ({
    ...choice,
    make: () => ({
      need: found(),
      name: quantity > 1 && choice.value.startsWith('part') ? `${quantity} × ${choice.label}` : choice.label,
    }),
  }));
}

interface Found {
  readonly exact: boolean;
  readonly choice: Choice;
  found(): JobNeed;
}

function partsCalled(
  record: TeamRecord,
  buildId: number,
  { name, quantity, kind }: TypedNeed,
): readonly Found[] {
  const makeNew = kind === 'part' && name.startsWith('+');
  if (makeNew) {
    const bare = name.slice(1).trim();
    return [
      {
        exact: true,
        choice: { label: bare, value: `part:${name}` },
        found: () => {
          const { part, isNew } = openPart(record, buildId, name, quantity);
          if (isNew && isUsedOnce(part.name)) record.parts.correct({ ...part, singleUse: true });
          return { kind: 'part', partId: part.id, quantity };
        },
      },
    ];
  }
  const numbered = /^#(\d+)$/.exec(name)?.[1];
  return record.parts.ofBuild(buildId).flatMap((part) => {
    const names = [part.name, ...part.alsoCalled].map(plain);
    const exact = names.includes(plain(name)) || String(part.id) === numbered;
    if (!exact && !names.some((one) => one.includes(plain(name)))) return [];
    return [
      {
        exact,
        choice: { label: part.name, value: `part:${quantity} #${part.id}` },
        found: () => ({ kind: 'part' as const, partId: part.id, quantity }),
      },
    ];
  });
}

function jobsCalled({ jobs }: JobBook, name: string): readonly Found[] {
  const numbered = /^#(\d+)$/.exec(name)?.[1];
  const found =
    numbered === undefined ? jobsNamed(jobs, name) : jobs.filter(({ id }) => String(id) === numbered);
  return found.map((job) => ({
    exact: plain(job.name) === plain(name) || String(job.id) === numbered,
    choice: { label: `#${job.id} ${job.name}`.slice(0, 90), value: `job:#${job.id}` },
    found: () => ({ kind: 'job', jobId: job.id }),
  }));
}

function fluidsCalled({ facts }: JobBook, name: string): readonly Found[] {
  return [...facts.fluids.values()].flatMap(({ fluid }) => {
    const exact = plain(fluid.name) === plain(name);
    if (!exact && !plain(fluid.name).includes(plain(name))) return [];
    return [
      {
        exact,
        choice: { label: `fluid ${fluid.name}`, value: `fluid:${fluid.name}` },
        found: () => ({ kind: 'fluid' as const, caseId: fluid.id }),
      },
    ];
  });
}

function stagesCalled({ stages }: JobBook, name: string): readonly Found[] {
  const wanted = plain(name);
  return stages.flatMap((stage) => {
    const names = namesOfStage(stage);
    if (!names.some((one) => one.includes(wanted))) return [];
    return [
      {
        exact: names.includes(wanted),
        choice: { label: `stage ${stage.name}`, value: `stage:${stage.key}` },
        found: () => ({ kind: 'stage' as const, stage: stage.key }),
      },
    ];
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
