import { type Day, dayAt } from '../../core/time.ts';
import type { FluidCase } from '../fluids/fluid.ts';
import type { Job } from '../jobs/job.ts';
import type { Measure } from '../measures/measure.ts';
import type { PartStanding } from '../parts/part.ts';
import { standings } from '../parts/standings.ts';
import type { OwnLimit, Sample } from '../readings/reading.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Said, Stage } from './stage.ts';

/** Everything that decides how a stage stands. What is asked for by a call is fetched when a condition needs it. */
export interface StageFacts {
  readonly today: Day;
  /** In their order. */
  readonly stages: readonly Stage[];
  readonly jobs: readonly Job[];
  readonly measures: readonly Measure[];
  readonly cases: readonly FluidCase[];
  readonly said: readonly Said[];
  parts(): readonly PartStanding[];
  /** Readings of a kind, the oldest first. */
  readings(kind: string): readonly Sample[];
  /** Limits the crew set itself; they outrank a stage's own. */
  limits(): readonly OwnLimit[];
  /** The day on which something was read, where the crew is. */
  dayOf(ms: number): Day;
}

/** The facts of a build as its record has them now. */
export function stageFacts(record: TeamRecord, buildId: number, today: Day): StageFacts {
  const { zone } = record.settings.read();
  const series = new Map<string, readonly Sample[]>();
  return {
    today,
    stages: record.stages.ofBuild(buildId),
    jobs: record.jobs.ofBuild(buildId),
    measures: record.measures.ofBuild(buildId),
    cases: record.fluids.casesOf(buildId),
    said: record.stages.saidIn(buildId),
    parts: once(() => standings(record, buildId, today)),
    readings(kind) {
      const known = series.get(kind) ?? record.readings.series(buildId, kind);
      series.set(kind, known);
      return known;
    },
    limits: once(() => record.readingRules.limits(buildId)),
    dayOf: (ms) => dayAt(ms, zone),
  };
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
