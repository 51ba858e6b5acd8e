import type { WholeBuild } from '../../records/builds/whole-build.ts';
import { isInPlace } from '../../records/measures/measure.ts';
import type { Pass, Stage } from '../../records/stages/stage.ts';
import type { Section } from '../paper.ts';

/** What whoever takes the car over has to know first: everything that is not closed. */
export function openPoints(source: WholeBuild): Section {
  const points = [
    ...measuresInPlace(source),
    ...stagePoints(source.stages),
    ...partPoints(source),
    ...jobPoints(source),
    ...runningInPoints(source),
  ];
  return {
    heading: 'Open points',
    blocks:
      points.length === 0
        ? [{ kind: 'words', text: 'Nothing is recorded as open.' }]
        : points.map((text) => ({ kind: 'words', text, tone: 'open' })),
  };
}

function measuresInPlace({ record, build }: WholeBuild): readonly string[] {
  return record.measures
    .ofBuild(build.id)
    .filter(isInPlace)
    .map(({ what }) => `Temporary measure still in place: ${what}.`);
}

/** A stage passed with something open, or reopened since, stays a point until it is passed again in order. */
function stagePoints(all: readonly Stage[]): readonly string[] {
  const ahead = all.filter(({ passes }) => passes.length === 0).map(({ name }) => name);
  return [
    ...all.flatMap(({ name, passes }) => passPoints(name, passes.at(-1))),
    ...(ahead.length === 0 ? [] : [`Stages not passed yet: ${ahead.join(', ')}.`]),
  ];
}

function passPoints(name: string, last: Pass | undefined): readonly string[] {
  if (last === undefined) return [];
  if (last.reopenedOn !== null) return [`Stage reopened: ${name}. ${last.reopenedBy ?? ''}`.trim()];
  return last.reason === null ? [] : [`Stage passed although something was open: ${name} (${last.reason}).`];
}

function partPoints({ standings }: WholeBuild): readonly string[] {
  return standings.flatMap(({ part, missing, toSortOut, coming, out }) => [
    ...(toSortOut > 0 ? [`To sort out: ${part.name}.`] : []),
    ...(missing > 0 ? [`Not ordered: ${missing} × ${part.name}.`] : []),
    ...(coming.length > 0 ? [`Still on order: ${part.name}.`] : []),
    ...(out.length > 0 ? [`Out for work: ${part.name}.`] : []),
  ]);
}

/** One point for each stage: whoever takes over reads what kind of work is left, not fifty lines of it. */
function jobPoints({ jobs: all, stages }: WholeBuild): readonly string[] {
  const open = all.filter(({ doneOn, dropped }) => doneOn === null && !dropped);
  const names = new Map(stages.map(({ key, name }) => [key, name]));
  return [...Map.groupBy(open, ({ stage }) => stage)].map(([stage, jobs]) => {
    const of = stage === null ? '' : ` (${names.get(stage) ?? stage})`;
    return `${jobs.length === 1 ? 'Job' : 'Jobs'} open${of}: ${jobs.map(({ name }) => name).join('; ')}.`;
  });
}

function runningInPoints({ record, build }: WholeBuild): readonly string[] {
  const steps = record.runIn.ofBuild(build.id)?.steps ?? [];
  return steps
    .filter(({ doneOn, dropped }) => doneOn === null && !dropped)
    .map(({ what }) => `Running in, still to do: ${what}.`);
}
