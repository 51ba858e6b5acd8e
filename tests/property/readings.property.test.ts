import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trendOf } from '../../src/calc/readings/trend.ts';
import { convert } from '../../src/calc/units/convert.ts';
import { readLine } from '../../src/phrases/readings/read-line.ts';
import { sayLine } from '../../src/phrases/readings/say-line.ts';
import { thinOut } from '../../src/pictures/thin-out.ts';
import { alike } from '../../src/records/readings/alike.ts';
import { kindsWith } from '../../src/records/readings/kinds.ts';
import type { Conditions, OwnLimit } from '../../src/records/readings/reading.ts';
import { judge } from '../../src/records/readings/verdict.ts';
import { openSpell } from '../../src/reminders/episodes.ts';
import { readingKinds } from '../../src/tables/reading-kinds.ts';
import { between, check } from '../support/laws.ts';
import { testContext } from '../support/score-readings.ts';

const kinds = kindsWith([]);
const oil = kinds.find(({ name }) => name === 'oil pressure');
if (oil === undefined) throw new Error('there is no oil pressure');

const limit = (changes: Partial<OwnLimit>): OwnLimit => ({
  id: 1,
  buildId: 1,
  kind: 'oil pressure',
  min: null,
  max: null,
  conditions: { states: [] },
  origin: 'crew',
  typed: '',
  byName: 'Ada',
  setOn: '2026-11-23',
  ...changes,
});

const conditions: fc.Arbitrary<Conditions> = fc
  .record(
    {
      speedRpm: fc.integer({ min: 600, max: 8000 }),
      temperatureC: fc.integer({ min: -10, max: 140 }),
      boostKPa: fc.integer({ min: 10, max: 200 }),
      states: fc.subarray(['hot', 'idle', 'full load', 'cruise']),
    },
    { requiredKeys: ['states'] },
  )
  .map((some) => ({ ...some, states: some.states.toSorted() }));

describe('limits', () => {
  it('stand in the order maker, crew, common practice', () => {
    check([between(0, 900), between(0, 900), between(0, 900), conditions], (value, maker, crew, at) => {
      const reading = { value, conditions: at };
      const limits = [limit({ min: crew }), limit({ min: maker, origin: 'maker', id: 2 })];
      const byMaker = judge(reading, oil, { limits, boosted: false });
      expect(byMaker.limit?.origin).toBe('maker');
      expect(byMaker.grade === 'bad').toBe(value < maker - 1e-6 * maker);
      const byCrew = judge(reading, oil, { limits: limits.slice(0, 1), boosted: false });
      expect(byCrew.limit?.origin).toBe('crew');
      expect(judge(reading, oil, { limits: [], boosted: false }).limit?.origin ?? 'common practice').toBe(
        'common practice',
      );
    });
  });

  it('never turn from good to bad as an oil pressure rises', () => {
    check([between(0, 900), between(0, 300), conditions], (value, more, at) => {
      const rank = { bad: 0, doubtful: 1, good: 2, unjudged: 2 };
      const grade = (each: number) =>
        rank[judge({ value: each, conditions: at }, oil, { limits: [], boosted: false }).grade];
      expect(grade(value + more)).toBeGreaterThanOrEqual(grade(value));
    });
  });

  it('apply only where everything they name was said', () => {
    check([between(0, 900), conditions], (value, at) => {
      const asks = limit({ min: 5000, conditions: { states: ['wet'], place: 'cylinder 9' } });
      expect(
        judge({ value, conditions: at }, oil, { limits: [asks], boosted: false }).limit?.origin,
      ).not.toBe('crew');
    });
  });
});

describe('like conditions', () => {
  it('are so both ways, and with themselves', () => {
    check([conditions, conditions], (one, other) => {
      expect(alike(one, one)).toBe(true);
      expect(alike(one, other)).toBe(alike(other, one));
    });
  });
});

const series = fc.array(
  fc.record({ gap: fc.integer({ min: 1, max: 9 }), value: fc.integer({ min: -500, max: 500 }) }),
  {
    minLength: 3,
    maxLength: 25,
  },
);
const pointsOf = (rows: readonly { gap: number; value: number }[]) => {
  let at = 0;
  return rows.map(({ gap, value }) => {
    at += gap;
    return { at, value };
  });
};

describe('the trend', () => {
  it('moves with the unit, and not with the zero', () => {
    check([series, between(0.1, 20), between(-100, 100)], (rows, factor, zero) => {
      const points = pointsOf(rows);
      const plain = trendOf(points);
      const other = trendOf(points.map(({ at, value }) => ({ at, value: value * factor + zero })));
      expect(other?.slope ?? 0).toBeCloseTo((plain?.slope ?? 0) * factor, 6);
      expect(other?.tau ?? 0).toBeCloseTo(plain?.tau ?? 0, 2);
    });
  });

  it('turns round when time does, and lies within its own limits', () => {
    check([series], (rows) => {
      const points = pointsOf(rows);
      const [there, back] = [trendOf(points), trendOf(points.map(({ at, value }) => ({ at: -at, value })))];
      expect(back?.slope ?? 0).toBeCloseTo(-(there?.slope ?? 0), 9);
      expect(back?.pValue ?? 0).toBeCloseTo(there?.pValue ?? 0, 9);
      if (there === null) return;
      expect(there.leastSlope).toBeLessThanOrEqual(there.slope);
      expect(there.mostSlope).toBeGreaterThanOrEqual(there.slope);
      expect(there.pValue).toBeGreaterThanOrEqual(0);
      expect(there.pValue).toBeLessThanOrEqual(1);
    });
  });

  it('finds a plain line exactly, one wild reading or not', () => {
    check(
      [between(-5, 5), fc.integer({ min: 7, max: 20 }), fc.nat(), between(-1000, 1000)],
      (slope, count, which, wild) => {
        const points = Array.from({ length: count }, (_each, at) => ({ at, value: slope * at }));
        expect(trendOf(points)?.slope).toBeCloseTo(slope, 9);
        const spoilt = points.map((point, at) => (at === which % count ? { at, value: wild } : point));
        expect(trendOf(spoilt)?.slope).toBeCloseTo(slope, 6);
      },
    );
  });
});

describe('a line said again', () => {
  it('reads as the same reading', () => {
    const one = fc.constantFrom(
      ...readingKinds.filter(
        ({ field, name }) => field !== 'ratio' && name !== 'battery voltage' && name !== 'distance',
      ),
    );
    check(
      [one, fc.integer({ min: 0, max: 1000 }), conditions, fc.integer({ min: 1, max: 12 })],
      (kind, share, at, number) => {
        const [min, max] = kind.usual;
        const figure = Number((min + ((max - min) * share) / 1000).toFixed(3));
        const place = kind.place === 'cylinder' ? `cylinder ${number}` : undefined;
        const measured = { ...at, ...(place === undefined ? {} : { place }) };
        // a temperature or a boost is its own condition, and a speed's cannot be told from it
        const { temperatureC, boostKPa, speedRpm, ...rest } = measured;
        const said = {
          ...rest,
          ...(kind.field === 'temperature' || temperatureC === undefined ? {} : { temperatureC }),
          ...(kind.name === 'boost' || kind.name === 'manifold vacuum' || boostKPa === undefined
            ? {}
            : { boostKPa }),
          ...(kind.field === 'speed' || speedRpm === undefined ? {} : { speedRpm }),
        };
        const line = sayLine(kind.name, [{ figure, unit: kind.shown, conditions: said }]);
        const found = readLine(line, testContext);
        if (found.verdict !== 'read') throw new Error(`${line}: ${JSON.stringify(found)}`);
        expect(found.kind).toBe(kind.name);
        const value = kind.shown === kind.unit ? figure : convert(figure, kind.shown, kind.unit);
        expect(found.values[0]?.value).toBeCloseTo(value, 6);
        expect(found.values[0]?.conditions).toEqual(said);
      },
    );
  });

  it('is never broken by what people type', () => {
    check([fc.string({ maxLength: 60 })], (text) => {
      expect(['read', 'ask', 'refuse']).toContain(readLine(text, testContext).verdict);
    });
    const words = fc.constantFrom(
      'oil',
      'bar',
      '4.2',
      'at',
      '2500',
      'rpm',
      'cyl',
      '3',
      '%',
      'hot',
      'afr',
      'e85',
      '-',
      'note',
      ',',
      '#',
      'battery',
      'main',
      'to',
    );
    check([fc.array(words, { maxLength: 12 })], (some) => {
      expect(['read', 'ask', 'refuse']).toContain(readLine(some.join(' '), testContext).verdict);
    });
  });
});

describe('spells of bad readings', () => {
  it('begin once, and end when every bad condition is good again', () => {
    const row = fc.record({ bad: fc.boolean(), at: fc.constantFrom('idle', 'cruise', 'full load') });
    check([fc.array(row, { maxLength: 30 })], (rows) => {
      const samples = rows.map(({ bad, at }, index) => ({
        sample: { id: index + 1, value: 0, takenAtMs: index, conditions: { states: [at] } },
        bad,
      }));
      const open = new Set<string>();
      let began: number | undefined;
      for (const [index, { bad, at }] of rows.entries()) {
        if (bad) open.add(at);
        else open.delete(at);
        if (open.size === 0) began = undefined;
        else began ??= index + 1;
      }
      expect(openSpell(samples)?.began.id).toBe(began);
    });
  });
});

describe('thinning out', () => {
  it('keeps both ends, the lowest and the highest, and the order', () => {
    const rows = fc.array(between(-1000, 1000), { minLength: 3, maxLength: 400 });
    check([rows, fc.integer({ min: 4, max: 60 })], (values, most) => {
      const points = values.map((value, atMs) => ({ atMs, value }));
      const kept = thinOut(points, most);
      expect(kept.length).toBeLessThanOrEqual(Math.max(most, 4));
      expect(kept[0]).toBe(points[0]);
      expect(kept.at(-1)).toBe(points.at(-1));
      expect(Math.max(...kept.map(({ value }) => value))).toBe(Math.max(...values));
      expect(Math.min(...kept.map(({ value }) => value))).toBe(Math.min(...values));
      expect(kept.map(({ atMs }) => atMs)).toEqual(kept.map(({ atMs }) => atMs).toSorted((a, b) => a - b));
    });
  });
});
