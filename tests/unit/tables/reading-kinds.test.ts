import { describe, expect, it } from 'vitest';
import { convert } from '../../../src/calc/units/convert.ts';
import { readLine } from '../../../src/phrases/readings/read-line.ts';
import { readingKinds } from '../../../src/tables/reading-kinds.ts';
import { readingLimits } from '../../../src/tables/reading-limits.ts';
import { practiceOf, runInPlans } from '../../../src/tables/running-in.ts';
import { testContext } from '../../support/score-readings.ts';

describe('the kinds of readings', () => {
  it.each(readingKinds)(
    '$name: what is usual is possible, and is shown in a unit of its own sort',
    (kind) => {
      const [least, most] = kind.possible;
      expect(kind.usual[0]).toBeGreaterThanOrEqual(least);
      expect(kind.usual[1]).toBeLessThanOrEqual(most);
      expect(Number.isFinite(convert(kind.usual[1], kind.shown, kind.unit))).toBe(true);
    },
  );

  it.each(readingKinds)('$name is understood by its own name', ({ name, shown, usual, place }) => {
    const figure = (usual[0] + usual[1]) / 4;
    const unit = { degC: 'C', percent: '%', lambda: '', inHg: 'inHg' }[String(shown)] ?? shown;
    const where = place === 'cylinder' ? ' cylinder 1' : '';
    const state = name === 'battery voltage' ? ' at rest' : '';
    const found = readLine(`${name} ${figure} ${unit}${where}${state}`, testContext);
    expect(found).toMatchObject({ verdict: 'read', kind: name });
  });

  it('have common limits under the names that the table of limits uses', () => {
    const limited = new Set(readingLimits.map(({ kind }) => kind));
    const named = readingKinds.flatMap(({ common }) => common ?? []);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((name) => !limited.has(name))).toEqual([]);
    expect(readingKinds.filter(({ name, common }) => limited.has(common ?? name)).length).toBeGreaterThan(8);
  });
});

describe('the plans of running in', () => {
  it.each(runInPlans.flatMap(({ id, steps }) => steps.map((step) => ({ id, ...step }))))(
    '$id: $what lies within the figures it rests on',
    ({ due, restsOn }) => {
      const { min, max } = practiceOf(restsOn).figures;
      const km = due.km ?? (due.h ?? 0) * 60;
      if (max?.unit === 'km') expect(km).toBeLessThanOrEqual(max.value * 1.02);
      if (min?.unit === 'km') expect(km).toBeGreaterThanOrEqual(min.value);
      if (min?.unit === 'min running') expect((due.h ?? 1) * 60).toBeGreaterThanOrEqual(min.value);
    },
  );

  it.each(runInPlans)('$id: ceilings rise and end without one', ({ ceilings }) => {
    for (const [index, { speedRatio, boostRatio }] of ceilings.entries()) {
      const before = ceilings[index - 1];
      expect(speedRatio).toBeGreaterThanOrEqual(before?.speedRatio ?? 0);
      expect(boostRatio).toBeGreaterThanOrEqual(before?.boostRatio ?? 0);
    }
    expect(ceilings.at(-1)).toMatchObject({ speedRatio: 1, boostRatio: 1 });
  });
});
