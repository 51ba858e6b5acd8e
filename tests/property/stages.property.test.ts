import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FluidCase } from '../../src/records/fluids/fluid.ts';
import type { Job } from '../../src/records/jobs/job.ts';
import type { Measure } from '../../src/records/measures/measure.ts';
import { readiness } from '../../src/records/stages/readiness.ts';
import type { Condition, Stage } from '../../src/records/stages/stage.ts';
import type { StageFacts } from '../../src/records/stages/stage-facts.ts';
import { restsNow, standingOf } from '../../src/records/stages/standing.ts';
import { startingStagesOf } from '../../src/records/stages/starting-stages.ts';
import { check } from '../support/laws.ts';

const TODAY = '2026-11-23';
const STAGES = startingStagesOf(1).map(({ stage }) => stage);
const KEYS = STAGES.map(({ key }) => key);

const aJob = (id: number, stage: string, done: boolean): Job => ({
  id,
  buildId: 1,
  name: `job ${id}`,
  stage,
  system: null,
  minutes: null,
  people: 1,
  tools: [],
  note: null,
  doneOn: done ? TODAY : null,
  doneByName: done ? 'Ada' : null,
  dropped: false,
  needs: [],
});

const aMeasure = (id: number, before: string | null, undone: boolean): Measure => ({
  id,
  buildId: 1,
  what: `measure ${id}`,
  putOn: TODAY,
  putByName: 'Ada',
  until: null,
  partId: null,
  jobId: null,
  answers: [],
  requiredAt: null,
  undoneBefore: before,
  undoneOn: undone ? TODAY : null,
  undoneByName: undone ? 'Ada' : null,
  note: null,
});

const aCase = (id: number, full: boolean): FluidCase => ({
  id,
  buildId: 1,
  name: `case ${id}`,
  grade: '10W-40',
  capacityL: 5,
  inL: full ? 5 : 2,
  filledOn: TODAY,
  note: null,
});

/** A record in any state: jobs done or not, measures in place or not, cases full or not, people who said yes or not. */
const world = fc
  .record({
    jobs: fc.array(fc.tuple(fc.constantFrom(...KEYS), fc.boolean()), { maxLength: 8 }),
    measures: fc.array(fc.tuple(fc.option(fc.constantFrom(...KEYS), { nil: null }), fc.boolean()), {
      maxLength: 6,
    }),
    cases: fc.array(fc.boolean(), { maxLength: 4 }),
    saidAll: fc.boolean(),
  })
  .map(
    ({ jobs, measures, cases, saidAll }): StageFacts => ({
      today: TODAY,
      stages: STAGES,
      jobs: jobs.map(([stage, done], at) => aJob(at + 1, stage, done)),
      measures: measures.map(([before, undone], at) => aMeasure(at + 1, before, undone)),
      cases: cases.map((full, at) => aCase(at + 1, full)),
      said: saidAll
        ? STAGES.flatMap(({ conditions }) =>
            conditions.map(({ id }) => ({
              id,
              conditionId: id,
              saidOn: TODAY,
              byName: 'Ada',
              lapsed: null,
            })),
          )
        : [],
      parts: () => [],
      readings: () => [],
      limits: () => [],
      say: (kind, value) => `${kind} ${value}`,
      litres: String,
      dayOf: () => TODAY,
    }),
  );

const place = fc.nat({ max: STAGES.length - 1 });
const stageAt = ({ stages }: StageFacts, at: number): Stage => {
  const stage = stages[at];
  if (stage === undefined) throw new Error(`no stage at ${at}`);
  return stage;
};

/** The same world with the first so many stages passed as they stand, whatever is open. */
function passed(facts: StageFacts, count: number): StageFacts {
  const stages = facts.stages.map((stage, at): Stage => {
    if (at >= count) return stage;
    const { findings } = readiness(stage, facts);
    const pass = {
      id: at + 1,
      passedOn: TODAY,
      byName: 'Ada',
      reason: null,
      against: [],
      restsOn: restsNow(stage, findings, facts),
      reopenedOn: null,
      reopenedBy: null,
    };
    return { ...stage, passes: [pass] };
  });
  return { ...facts, stages };
}

/** Stages cut down to what a world of this kind can meet. */
function only(facts: StageFacts, ...kinds: readonly Condition['kind'][]): StageFacts {
  const stages = facts.stages.map((stage) => ({
    ...stage,
    conditions: stage.conditions.filter(({ condition }) => kinds.includes(condition.kind)),
  }));
  return { ...facts, stages };
}

describe('a stage', () => {
  it('is never ready while anything it asks for beforehand is open or in doubt', () => {
    let ready = 0;
    check([world, place], (facts, at) => {
      const easy = passed(only(facts, 'jobs', 'measures', 'fluids'), at);
      const found = readiness(stageAt(easy, at), easy);
      const open = found.findings.filter(({ state, proof }) => state !== 'met' && !proof);
      expect(found.ready).toBe(open.length === 0);
      expect(found.missing).toEqual(open);
      if (found.ready) ready += 1;
    });
    expect(ready).toBeGreaterThan(0);
  });

  it('is not ready while a job of it is open, a case lacks something, or a stage before it is not passed', () => {
    check([world, place], (facts, at) => {
      const found = readiness(stageAt(facts, at), facts);
      const stage = stageAt(facts, at);
      const openJob = facts.jobs.some((job) => job.stage === stage.key && job.doneOn === null);
      const asksFluids = stage.conditions.some(({ condition }) => condition.kind === 'fluids');
      const lacking = asksFluids && facts.cases.some(({ inL, capacityL }) => inL < capacityL * 0.98);
      if (at > 0 || openJob || lacking) expect(found.ready).toBe(false);
    });
  });

  it('is not ready while something is in place that must be undone before it or before an earlier one', () => {
    check([world, place], (facts, at) => {
      const easy = passed(only(facts, 'measures'), at);
      const outlives = facts.measures.some(
        ({ undoneOn, undoneBefore }) =>
          undoneOn === null &&
          (undoneBefore === null ? at === KEYS.length - 1 : KEYS.indexOf(undoneBefore) <= at),
      );
      expect(readiness(stageAt(easy, at), easy).ready).toBe(!outlives);
    });
  });

  it('says each thing once, under a key of its own', () => {
    check([world, place], (facts, at) => {
      const keys = readiness(stageAt(facts, at), facts).findings.map(({ key }) => key);
      expect(new Set(keys).size).toBe(keys.length);
    });
  });
});

describe('passes', () => {
  it('stand in the world they were made in, whatever was open then', () => {
    check([world, place], (facts, at) => {
      const after = passed(facts, at + 1);
      for (const stage of after.stages.slice(0, at + 1))
        expect(standingOf(stage, after).kind, stage.key).toBe('passed');
    });
  });

  it('are asked for in their order: the stage behind those that stand has nothing before it open', () => {
    check([world, place], (facts, at) => {
      const after = passed(facts, at);
      const before = readiness(stageAt(after, at), after).findings.some(({ key }) => key === 'before');
      expect(before).toBe(false);
      for (const later of after.stages.slice(at + 1))
        expect(readiness(later, after).findings.some(({ key }) => key === 'before')).toBe(true);
    });
  });

  it('reopen from a job’s own stage on, and none before it, when the job is taken up again', () => {
    let reopened = 0;
    check([world], (facts) => {
      const after = passed(facts, KEYS.length);
      for (const job of facts.jobs.filter(({ doneOn }) => doneOn !== null)) {
        const jobs = after.jobs.map((one) => (one.id === job.id ? { ...one, doneOn: null } : one));
        const changed = { ...after, jobs };
        const from = KEYS.indexOf(job.stage ?? '');
        for (const [at, stage] of changed.stages.entries())
          expect(standingOf(stage, changed).kind, stage.key).toBe(at < from ? 'passed' : 'reopened');
        reopened += 1;
      }
    });
    expect(reopened).toBeGreaterThan(0);
  });

  it('reopen exactly where a case is asked for when it is drained', () => {
    check([world], (facts) => {
      const after = passed(facts, KEYS.length);
      for (const one of facts.cases.filter(({ inL }) => inL === 5)) {
        const cases = after.cases.map((it) => (it.id === one.id ? { ...it, inL: 0 } : it));
        const changed = { ...after, cases };
        for (const stage of changed.stages) {
          const asks = stage.conditions.some(({ condition }) => condition.kind === 'fluids');
          expect(standingOf(stage, changed).kind, stage.key).toBe(asks ? 'reopened' : 'passed');
        }
      }
    });
  });

  it('reopen from the stage that it must not outlive when something is put in', () => {
    check([world, place], (facts, at) => {
      const after = passed(facts, KEYS.length);
      const put = aMeasure(99, KEYS[at] ?? null, false);
      const changed = { ...after, measures: [...after.measures, put] };
      for (const [rank, stage] of changed.stages.entries())
        expect(standingOf(stage, changed).kind, stage.key).toBe(rank < at ? 'passed' : 'reopened');
    });
  });
});
