import { type Day, dayAt } from '../../core/time.ts';
import type { FluidCase } from '../fluids/fluid.ts';
import { litresOf, type SayLitres } from '../fluids/say-fluid.ts';
import type { Job } from '../jobs/job.ts';
import type { Measure } from '../measures/measure.ts';
import type { PartStanding } from '../parts/part.ts';
import type { KnownPart } from '../parts/part-store.ts';
import { partStanding } from '../parts/standings.ts';
import type { OwnLimit, Sample } from '../readings/reading.ts';
import { plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import { readingsOf, type SayReading } from './say-reading.ts';
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
  /** Parts of this id; where there is none, those of exactly this name, or else those whose name holds it. */
  parts(wanted: WantedPart): readonly PartStanding[];
  /** Readings of a kind, the oldest first. */
  readings(kind: string): readonly Sample[];
  /** Limits the crew set itself; they outrank a stage's own. */
  limits(): readonly OwnLimit[];
  /** A reading as the crew counts. */
  readonly say: SayReading;
  /** A volume as the crew counts. */
  readonly litres: SayLitres;
  /** The day on which something was read, where the crew is. */
  dayOf(ms: number): Day;
}

/** A part as a condition names it. */
export interface WantedPart {
  readonly partId: number | null;
  readonly name: string;
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
    parts: partsOf(record, buildId, today),
    readings(kind) {
      const known = series.get(kind) ?? record.readings.series(buildId, kind);
      series.set(kind, known);
      return known;
    },
    limits: once(() => record.readingRules.limits(buildId)),
    say: readingsOf(record),
    litres: litresOf(record),
    dayOf: (ms) => dayAt(ms, zone),
  };
}

/** Only the parts that are asked for are counted: a build has thousands, and a stage names a few. */
function partsOf(record: TeamRecord, buildId: number, today: Day): StageFacts['parts'] {
  const all = once(() => record.parts.ofBuild(buildId));
  const known = new Map<string, readonly PartStanding[]>();
  return (wanted) => {
    const key = `${wanted.partId ?? ''} ${wanted.name}`;
    const found =
      known.get(key) ?? partsMeant(wanted, all()).map((part) => partStanding(record, part, today));
    known.set(key, found);
    return found;
  };
}

function partsMeant({ partId, name }: WantedPart, all: readonly KnownPart[]): readonly KnownPart[] {
  const byId = all.filter(({ id }) => id === partId);
  if (byId.length > 0) return byId;
  const wanted = plain(name);
  const called = (test: (one: string) => boolean): readonly KnownPart[] =>
    all.filter((part) => [part.name, ...part.alsoCalled].some((one) => test(plain(one))));
  const exact = called((one) => one === wanted);
  return exact.length > 0 ? exact : called((one) => isKindOf(one, wanted));
}

/**
 * Whether a name says more of the same thing: "spin-on oil filter" and "oil filter (long)" are oil filters, an "oil filter
 * housing seal" is none.
 */
function isKindOf(name: string, wanted: string): boolean {
  const at = name.indexOf(wanted);
  if (at < 0 || wanted === '') return false;
  return !/^\s?\p{L}/u.test(name.slice(at + wanted.length));
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
