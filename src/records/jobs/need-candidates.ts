import type { Choice } from '../../core/user-error.ts';
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
export interface TypedNeed {
  readonly kind: JobNeed['kind'] | undefined;
  readonly name: string;
  readonly quantity: number;
}

/** Something a typed need could stand for, and how it would be typed without doubt. */
export interface Candidate extends Choice {
  make(): NamedNeed;
}

/** Everything a typed need could stand for: what is called exactly so, else what holds its words. */
export function candidates(
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
  const gone = goneCalled(book, wanted);
  const exact = gone.length > 0 ? gone : every.filter(({ exact: same }) => same);
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

/** What jobs need that is not on record any more, by the words it is shown with: "part #5", "stage dyno". */
function goneCalled({ jobs, facts }: JobBook, { kind, name }: TypedNeed): readonly Found[] {
  const gone = jobs
    .flatMap(({ needs }) => needs)
    .filter(
      (need) =>
        (need.kind === 'part' && !facts.parts.has(need.partId)) ||
        (need.kind === 'fluid' && !facts.fluids.has(need.caseId)) ||
        (need.kind === 'stage' && !facts.stages.has(need.stage)),
    );
  const found = gone.find((need) => need.kind === kind && name === goneName(need));
  if (found === undefined) return [];
  return [{ exact: true, choice: { label: name, value: `${kind}:${name}` }, found: () => found }];
}

function goneName(need: JobNeed): string {
  switch (need.kind) {
    case 'part':
      return `#${need.partId}`;
    case 'job':
      return `#${need.jobId}`;
    case 'fluid':
      return `case #${need.caseId}`;
    case 'stage':
      return need.stage;
  }
}
