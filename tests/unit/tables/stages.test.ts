import { describe, expect, it } from 'vitest';
import { toBase } from '../../../src/calc/units/convert.ts';
import { kindsWith } from '../../../src/records/readings/kinds.ts';
import { findStage, namesOfStage } from '../../../src/records/stages/find-stage.ts';
import { startingStagesOf } from '../../../src/records/stages/starting-stages.ts';
import { readingLimits } from '../../../src/tables/reading-limits.ts';
import { startingStages } from '../../../src/tables/stages.ts';

const stages = startingStagesOf(1).map(({ stage }) => stage);
const conditions = startingStages.flatMap((stage) =>
  stage.conditions.map((condition) => ({ stage: stage.key, condition })),
);

describe('the starting set of stages', () => {
  it('goes from assembly to sign-off in the order of the work', () => {
    expect(startingStages.map(({ key }) => key)).toEqual([
      'assembly',
      'fluids',
      'oil-pressure',
      'fuel-pressure',
      'first-start',
      'warm-up',
      'idle-fuelling',
      'road-fuelling',
      'running-in',
      'mapping',
      'sign-off',
    ]);
  });

  it('asks every stage for its jobs and for what is temporary', () => {
    for (const stage of startingStages) {
      const kinds = stage.conditions.map(({ kind }) => kind);
      expect(kinds, stage.key).toContain('jobs');
      expect(kinds, stage.key).toContain('measures');
    }
  });

  it('requires no spark and no fuel while cranking, and has both undone afterwards', () => {
    const required = conditions.flatMap(({ stage, condition }) =>
      condition.kind === 'measure' ? [[stage, condition.word, condition.undoneBefore]] : [],
    );
    expect(required).toEqual([
      ['oil-pressure', 'no spark', 'first-start'],
      ['oil-pressure', 'no fuel', 'fuel-pressure'],
    ]);
  });

  it('asks only for readings that can be logged, under states that are known', () => {
    const kinds = kindsWith([]).map(({ name }) => name);
    const states = new Set(readingLimits.flatMap((row) => row.states));
    const readings = conditions.flatMap(({ condition }) => (condition.kind === 'reading' ? [condition] : []));
    expect(readings.length).toBeGreaterThan(8);
    for (const { reading, states: asked } of readings) {
      expect(kinds).toContain(reading);
      expect(asked.toSorted()).toEqual(asked);
      for (const state of asked) expect(states, state).toContain(state);
    }
  });

  it('asks for no reading outside what is usual for it', () => {
    for (const { stage, condition } of conditions) {
      if (condition.kind !== 'reading') continue;
      const usual = readingLimits.find(
        ({ kind, states, rule, per, place, intake }) =>
          kind === condition.reading &&
          rule === 'between' &&
          (per ?? place) === undefined &&
          intake !== 'natural' &&
          states.join() === condition.states.join(),
      );
      if (usual === undefined) continue;
      const inBase = (figure: number | undefined): number =>
        figure === undefined ? Number.NaN : toBase(figure, usual.unit);
      const where = `${stage} ${condition.reading} ${condition.states.join()}`;
      // a battery at rest of 12.4 V turns a starter, if not fully charged; an idle with much overlap is rich
      const wider = ['battery voltage at rest', 'lambda hot,idle'].includes(
        `${condition.reading} ${condition.states.join()}`,
      );
      if (wider) continue;
      if (condition.min !== null) expect(condition.min, where).toBeCloseTo(inBase(usual.min), 0);
      if (condition.max !== null) expect(condition.max, where).toBeCloseTo(inBase(usual.max), 3);
    }
  });

  it('has figures with a source in every procedure that has figures, and something that stops each', () => {
    for (const { key, steps, stop } of startingStages) {
      expect(steps.length, key).toBeGreaterThan(2);
      expect(stop.length, key).toBeGreaterThan(0);
      for (const { figures = [] } of steps) for (const { source } of figures) expect(source).not.toBe('');
    }
  });

  /** Sentences of a procedure that carry a number outside `figures` say themselves that it has no source. */
  it('has no number of its own making in a warning without saying so', () => {
    const sentences = startingStages.flatMap(({ steps, stop }) => [
      ...steps.flatMap(({ stop: one, watch }) => [one ?? '', watch ?? '']),
      ...stop,
    ]);
    const numbered = sentences.filter((one) => /\d\s*(?:bar|psi|°C|s\b|V\b|min\b|rpm|%)/.test(one));
    expect(numbered.length).toBeGreaterThan(3);
    for (const one of numbered) expect(one).toContain('common practice, no source');
  });

  it('is found by every name of a stage, each of which is only that stage’s', () => {
    const names = stages.flatMap((stage) => namesOfStage(stage).map((name) => ({ name, key: stage.key })));
    expect(names.length).toBeGreaterThan(60);
    for (const { name, key } of names) expect(findStage(stages, name).key, name).toBe(key);
  });

  it('is worded without jollity, capitals or exclamation', () => {
    const text = JSON.stringify(startingStages);
    expect(text).not.toMatch(/!|great|awesome|happy|congrat|yay|let's/i);
    const capitals = text.match(/\b[A-Z]{4,}\b/g) ?? [];
    expect(capitals.filter((word) => word !== 'COMMON' && word !== 'OPEN')).toEqual([]);
  });
});
