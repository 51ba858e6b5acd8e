import { sayDay } from '../../core/time.ts';
import { type FluidCase, isFull, lackingL } from '../fluids/fluid.ts';
import type { SayLitres } from '../fluids/say-fluid.ts';
import { isOpen } from '../jobs/facts.ts';
import { plain } from '../suppliers/supplier.ts';
import type { Found } from './finding.ts';
import type { ConditionOf, Stage } from './stage.ts';
import type { StageFacts } from './stage-facts.ts';

/** Every job of the stage that is still to be done. */
export function findJobs(stage: Stage, { jobs }: StageFacts): readonly Found[] {
  const of = jobs.filter(({ stage: key, dropped }) => key === stage.key && !dropped);
  const open = of.filter(isOpen);
  if (open.length > 0) {
    return open.map((job) => ({
      key: `job:${job.id}`,
      state: 'open',
      lasting: true,
      says: `Job still open: ${job.name}`,
      leads: [{ to: 'job', job }],
    }));
  }
  const says =
    of.length === 0 ? 'No job is noted for this stage' : `All ${of.length} jobs of the stage are done`;
  return [{ key: 'jobs', state: 'met', says: of.length === 1 ? 'Its one job is done' : says }];
}

export function findJob({ jobId }: ConditionOf<'job'>, { jobs, today }: StageFacts): readonly Found[] {
  const job = jobs.find(({ id }) => id === jobId);
  const key = `job:${jobId}`;
  if (job === undefined)
    return [
      { key, state: 'doubtful', says: 'A job is asked for that is no longer there', leads: [{ to: 'edit' }] },
    ];
  if (isOpen(job))
    return [
      { key, state: 'open', lasting: true, says: `Job still open: ${job.name}`, leads: [{ to: 'job', job }] },
    ];
  const done =
    job.doneOn === null ? 'given up' : `done ${sayDay(job.doneOn, today)} by ${job.doneByName ?? ''}`;
  return [{ key, state: 'met', says: `${job.name}: ${done}` }];
}

/** A part that is here or fitted, as many as the build needs of it. */
export function findPartHere(
  { partId, name }: ConditionOf<'part'>,
  { parts, today }: StageFacts,
): readonly Found[] {
  const key = `part:${plain(name)}`;
  const fitting = parts({ partId, name });
  const [it, another] = fitting;
  if (it === undefined) {
    const leads = [{ to: 'part', name, standing: null }] as const;
    return [
      { key, state: 'open', lasting: true, says: `${upper(name)}: no part of this name is noted`, leads },
    ];
  }
  if (another !== undefined) {
    const names = fitting.map(({ part }) => part.name).join(', ');
    return [{ key, state: 'doubtful', says: `${upper(name)}: which of ${names}?`, leads: [{ to: 'edit' }] }];
  }
  const here = it.inHand + it.fitted;
  if (here >= Math.max(1, it.part.needed))
    return [{ key, state: 'met', says: `${upper(it.part.name)}: ${it.fitted > 0 ? 'fitted' : 'in hand'}` }];
  const [coming] = [...it.coming, ...it.out].toSorted((a, b) => a.expectedOn.localeCompare(b.expectedOn));
  const when = coming === undefined ? '' : `, expected ${sayDay(coming.expectedOn, today)}`;
  const some = here > 0 ? `${here} of ${it.part.needed} here, the rest ` : '';
  const says = `${upper(it.part.name)}: ${some}${it.whereabouts}${when}`;
  const leads = [{ to: 'part', name: it.part.name, standing: it }] as const;
  return [{ key, state: 'open', lasting: true, says, leads }];
}

export function findFluids({ cases, litres }: StageFacts): readonly Found[] {
  if (cases.length === 0) {
    const leads = [{ to: 'case', name: 'sump' }] as const;
    return [
      {
        key: 'case:none',
        state: 'open',
        says: 'No case is noted: what takes which fluid, and how much',
        leads,
      },
    ];
  }
  const lacking = cases.filter((one) => !isFull(one));
  if (lacking.length > 0) return lacking.map((one) => caseLacking(one, litres));
  return [
    {
      key: 'fluids',
      state: 'met',
      says: `Everything is filled: ${cases.map(({ name }) => name).join(', ')}`,
    },
  ];
}

export function findFluid(
  { case: name, alsoCalled }: ConditionOf<'fluid'>,
  { cases, litres }: StageFacts,
): readonly Found[] {
  const names = [name, ...alsoCalled].map(plain);
  const it =
    cases.find((one) => names.includes(plain(one.name))) ??
    cases.find((one) => names.some((meant) => plain(one.name).includes(meant)));
  if (it === undefined) {
    const leads = [{ to: 'case', name }] as const;
    return [
      {
        key: `case:${plain(name)}`,
        state: 'open',
        says: `${upper(name)}: what it takes is not noted`,
        leads,
      },
    ];
  }
  if (!isFull(it)) return [caseLacking(it, litres)];
  return [
    { key: `case:${it.id}`, state: 'met', says: `${upper(it.name)} holds ${litres(it.inL)} ${it.grade}` },
  ];
}

function caseLacking(one: FluidCase, say: SayLitres): Found {
  const [lacks, takes] = [say(lackingL(one)), say(one.capacityL)];
  const empty = one.inL === 0 ? `is empty, takes ${takes}` : `lacks ${lacks} of ${takes}`;
  return {
    key: `case:${one.id}`,
    state: 'open',
    lasting: true,
    says: `${upper(one.name)} ${empty} ${one.grade}`,
    leads: [{ to: 'pour', fluidCase: one }],
  };
}

/** A yes that a person gave and that still counts. */
export function findSaid(
  { what }: ConditionOf<'said'>,
  conditionId: number,
  { said, today }: StageFacts,
): readonly Found[] {
  const key = `said:${conditionId}`;
  const yes = said.findLast((one) => one.conditionId === conditionId);
  if (yes === undefined)
    return [{ key, state: 'open', says: `Nobody has said yet: ${what}`, leads: [{ to: 'said' }] }];
  return [
    { key, state: 'met', says: `${upper(what)}: ${yes.byName} said so on ${sayDay(yes.saidOn, today)}` },
  ];
}

const upper = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
