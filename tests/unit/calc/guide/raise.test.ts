import { describe, expect, it } from 'vitest';
import type { Guide } from '../../../../src/calc/guide/guide.ts';
import { factorsOf, type Known, raises, speaksOf } from '../../../../src/calc/guide/raise.ts';
import { guides } from '../../../../src/tables/guide.ts';

const NOTHING: Known = { partsChanged: [], measuresOpen: [], readings: [] };
const guideOf = (id: string): Guide => {
  const found = guides.find((guide) => guide.id === id);
  if (found === undefined) throw new Error(`no guide ${id}`);
  return found;
};
const raisedIn = (guide: string, known: Partial<Known>): readonly string[] =>
  raises(guideOf(guide), { ...NOTHING, ...known })
    .filter(({ factor }) => factor > 1)
    .map(({ cause }) => cause);

describe('words of a part or measure', () => {
  it.each([
    ['injectors unplugged', 'injector', true],
    ['Unplugged the crank sensor for cranking', 'crank sensor', true],
    ['crankshaft sensor', 'crank sensor', true],
    ['sensor', 'crank sensor', false],
    ['fuel pump relay pulled', 'pump relay', true],
    ['head gasket', 'gasket set', false],
    ['foil', 'oil', false],
  ])('“%s” speaks of “%s”: %s', (text, words, speaks) => {
    expect(speaksOf(text, words)).toBe(speaks);
  });
});

describe('what the record knows', () => {
  it('raises the causes that an open measure speaks of, most of all', () => {
    const known = { measuresOpen: [{ id: 3, what: 'coils unplugged', daysAgo: 2 }] };
    expect(raisedIn('no-spark', known)).toContain('coil-plug');
    const factors = factorsOf(raises(guideOf('no-spark'), { ...NOTHING, ...known }));
    expect(factors.get('coil-plug')).toBe(20);
    expect(factors.get('no-speed')).toBeUndefined();
  });

  it.each([
    ['no-crank', 'injectors unplugged'],
    ['no-crank', 'coils unplugged'],
    ['no-oil-pressure', 'injectors unplugged'],
    ['charging', 'crank sensor unplugged'],
  ])('does not ask in %s about “%s”', (guide, what) => {
    expect(raisedIn(guide, { measuresOpen: [{ id: 1, what, daysAgo: 0 }] })).toEqual([]);
  });

  it('raises what was fitted lately, and not what was fitted long ago', () => {
    const fitted = (daysAgo: number) => ({
      partsChanged: [{ name: 'Crank sensor', how: 'fitted' as const, daysAgo }],
    });
    expect(raisedIn('cranks-no-speed', fitted(3))).toEqual(expect.arrayContaining(['gap', 'polarity']));
    expect(raisedIn('cranks-no-speed', fitted(31))).toEqual([]);
  });

  it('raises a flat battery by a reading under the limit, and lowers it by a good one', () => {
    const read = (value: number, daysAgo = 0) => ({
      readings: [
        {
          kind: 'battery voltage',
          value,
          unit: 'V',
          states: ['at rest'],
          typed: `battery ${value} V at rest`,
          daysAgo,
        },
      ],
    });
    expect(raisedIn('no-crank', read(11.9))).toEqual(['flat-battery']);
    expect(raisedIn('no-crank', read(12.7))).toEqual([]);
    const lowered = raises(guideOf('no-crank'), { ...NOTHING, ...read(12.7) });
    expect(lowered).toMatchObject([{ cause: 'flat-battery', factor: 0.3 }]);
    expect(raises(guideOf('no-crank'), { ...NOTHING, ...read(11.9, 3) })).toEqual([]);
  });

  it('says what it rests on', () => {
    const all = raises(guideOf('no-crank'), {
      ...NOTHING,
      partsChanged: [{ name: 'starter', how: 'came', daysAgo: 1 }],
    });
    expect(all.map(({ because }) => because)).toContain('starter came yesterday');
  });

  it('counts the strongest of a kind once', () => {
    const twice = {
      partsChanged: [
        { name: 'starter', how: 'came' as const, daysAgo: 1 },
        { name: 'starter', how: 'fitted' as const, daysAgo: 0 },
      ],
    };
    expect(factorsOf(raises(guideOf('no-crank'), { ...NOTHING, ...twice })).get('starter')).toBe(3);
  });
});
