import { describe, expect, it } from 'vitest';
import { barsOf } from '../../../../src/calc/readings/bars.ts';
import { clearanceAnswer } from '../../../../src/calc/readings/clearance-answer.ts';
import { compressionAnswer } from '../../../../src/calc/readings/compression-answer.ts';
import { leakAnswer } from '../../../../src/calc/readings/leak-answer.ts';
import { limitInBase, sayLimit } from '../../../../src/calc/readings/limit.ts';
import { ringGapAnswer } from '../../../../src/calc/readings/ring-gap-answer.ts';
import { sayerFor } from '../../../../src/calc/units/sayer.ts';

const say = sayerFor();

describe('a limit in words', () => {
  it.each([
    [{ min: 10, unit: 'psi' }, 'at least 10 psi'],
    [{ max: 5, unit: 'percent' }, 'at most 5 %'],
    [{ min: 0.85, max: 0.9, unit: 'lambda' }, '0.85 λ to 0.9 λ'],
    [{ unit: 'psi' }, 'no limit'],
  ] as const)('%j', (limit, words) => expect(sayLimit(limit)).toBe(words));

  it('is said in another unit, and kept in the base unit', () => {
    expect(sayLimit({ min: 10, max: 100, unit: 'psi' }, 'bar')).toBe('0.689 bar to 6.89 bar');
    expect(limitInBase({ max: 50, unit: 'mA' })).toEqual({ max: 0.05, unit: 'A' });
  });
});

describe('bars', () => {
  it('are all to the same decimal, in the unit they are shown in', () => {
    const { axis, bars, limit } = barsOf({
      what: 'Gap',
      unit: 'mm',
      values: [0.4, 0.425],
      standings: ['ok', 'low'],
      labels: ['front', 'rear'],
      seconds: [0.41, 0.43],
      limit: { value: 0.43, words: 'at least 0.43 mm' },
    });
    expect(axis).toBe('Gap, mm');
    expect(bars.map(({ label, words }) => `${label} ${words}`)).toEqual(['front 0.4', 'rear 0.425']);
    expect(bars[1]).toMatchObject({ standing: 'low', second: { words: '0.43' } });
    expect(limit).toEqual({ value: 0.43, words: 'at least 0.43 mm' });
  });

  it('count cylinders where nothing is said, and stand for a ratio without a sign', () => {
    const { axis, bars } = barsOf({ what: 'Share', unit: '1', values: [0, 0], standings: [] });
    expect(axis).toBe('Share, a ratio');
    expect(bars.map(({ label, standing }) => [label, standing])).toEqual([
      ['1', 'ok'],
      ['2', 'ok'],
    ]);
  });
});

describe('what answers say beyond the usual', () => {
  it('names three weak cylinders', () => {
    const { result, certainty } = compressionAnswer(
      {
        readingsKpa: [1200, 800, 900, 700],
        limitRatio: 0.1,
        riseRatio: 0.1,
        outside: { value: { atmosphereKpa: 101.325 }, assumptions: [], sources: [], caveats: [] },
        placed: false,
      },
      say,
    );
    expect(result).toBe('Spread 41.7 %: cylinders 2, 3 and 4 are weak, 7 bar (102 psi)');
    expect(certainty).toContain('into cylinder 2, 3 and 4');
  });

  it('points to the gasket where neighbours leak', () => {
    const leak = { supplyKpa: 700, goodRatio: 0.1, investigateRatio: 0.2 };
    expect(leakAnswer({ ...leak, leakRatios: [0.25, 0.3, 0.05] }, say).certainty).toContain('neighbours');
    expect(leakAnswer({ ...leak, leakRatios: [0.25, 0.05, 0.3] }, say).certainty).not.toContain('neighbours');
    const many = Array.from({ length: 17 }, () => 0.05);
    expect(() => leakAnswer({ ...leak, leakRatios: many }, say)).toThrow('Give held or leak');
  });

  it('finds a ring gap very wide, against the usual and against the maker’s most', () => {
    const asked = {
      boreMm: 86,
      use: 'boosted',
      top: { minRatio: 0.005, maxRatio: 0.0055 },
      secondMore: { minRatio: 0, maxRatio: 0.0005 },
      oilRailMm: 0.38,
    };
    const wide = ringGapAnswer({ ...asked, measuredMm: [0.45, 0.8] }, say);
    expect(wide.result).toBe('Very wide in bore 2: the top ring wants 0.43 to 0.473 mm');
    expect(wide.certainty).toContain('Measure square');
    const own = ringGapAnswer({ ...asked, own: { minMm: 0.5, maxMm: 0.6 }, measuredMm: [0.45, 0.46] }, say);
    expect(own.result).toBe('Too small in bores 1, 2: the top ring wants 0.5 to 0.6 mm');
    expect(ringGapAnswer({ ...asked, own: { minMm: 0.5 } }, say).result).toContain('at least 0.5 mm');
  });

  it('names the tight ones before the wide, and how many', () => {
    const answer = clearanceAnswer(
      {
        kind: 'piston',
        holesMm: [86.1, 86.01, 86.02],
        shaftsMm: [86],
        limit: { kind: 'length', minMm: 0.05, maxMm: 0.09 },
        limitFor: 'forged piston',
      },
      say,
    );
    expect(answer.result).toBe('0.01 to 0.1 mm (0.0004 to 0.0039 in): cylinders 2, 3 too tight');
    expect(answer.certainty).toContain('hone');
  });
});
