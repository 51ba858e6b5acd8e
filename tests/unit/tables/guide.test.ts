import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { keeps } from '../../../src/calc/guide/guide.ts';
import { sourcesWithWords } from '../../../src/records/walks/source-words.ts';
import { guideCautions, guides } from '../../../src/tables/guide.ts';
import { readingKinds } from '../../../src/tables/reading-kinds.ts';

const root = new URL('../../../', import.meta.url);
const tests = guides.flatMap((guide) => guide.tests.map((test) => ({ guide: guide.id, ...test })));
const causes = guides.flatMap((guide) => guide.causes.map((cause) => ({ guide: guide.id, ...cause })));

/** Words of a test that stand for a danger, and the caution it must then carry. */
const DANGERS: readonly (readonly [caution: string, words: RegExp])[] = [
  [
    'rotating',
    /\b(while cranking|[Cc]rank (it|for|with|at|the|and|until|ten)|rpm\b|[Ii]dle\b|turn the (crankshaft|engine)|belt)/,
  ],
  ['fuel', /\b(fuel|rail|pump runs|run the pump)\b/],
  ['high-voltage', /\b(spark tester|timing lamp)\b/],
  ['exhaust', /\b(tail pipe|idling|at idle|\d000 rpm|\d500 rpm|start it|[Rr]un it|keeps? running)\b/],
  ['battery', /battery.{0,20}post/],
  ['air', /(low pressure into|leak-down|regulated air)/],
  ['lifted', /(on stands|sump off|under the car)/],
];

const SYMPTOMS = [
  'no-crank',
  'cranks-no-speed',
  'no-spark',
  'no-fuel-pressure',
  'no-injector-pulse',
  'no-fire',
  'fires-and-dies',
  'rough-idle',
  'no-oil-pressure',
  'overheating',
  'smoke',
  'wont-rev',
  'boost',
  'charging',
];

describe('the fault guides', () => {
  it('cover every symptom, and are all the files there are', () => {
    const ids = guides.map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(SYMPTOMS));
    const files = readdirSync(new URL('data/guide/', root)).map((file) => file.replace('.json', ''));
    expect(files.toSorted()).toEqual([...ids, 'cautions'].toSorted());
  });

  it('have more than a hundred tests and causes', () => {
    expect(tests.length).toBeGreaterThan(100);
    expect(causes.length).toBeGreaterThan(100);
  });

  it.each(tests.map((test) => [`${test.guide} ${test.id}`, test] as const))(
    '%s: each outcome rules something out',
    (_name, { guide, outcomes }) => {
      const all = guides.find(({ id }) => id === guide)?.causes ?? [];
      for (const outcome of outcomes) {
        const kept = all.filter(({ id }) => keeps(outcome, id)).length;
        expect(kept, outcome.id).toBeGreaterThan(0);
        expect(kept, outcome.id).toBeLessThan(all.length);
      }
    },
  );

  it.each(tests.map((test) => [`${test.guide} ${test.id}`, test] as const))(
    '%s carries the cautions of what it has people do',
    (_name, { test, how, cautions }) => {
      const text = [test, ...how].join(' ');
      const isSafeFromFuel = /njectors unplugged/.test(text);
      const missing = DANGERS.filter(
        ([caution, words]) =>
          words.test(text) && !cautions.includes(caution) && !(caution === 'fuel' && isSafeFromFuel),
      );
      expect(missing.map(([caution]) => caution)).toEqual([]);
    },
  );

  it('use every caution, and word it once', () => {
    const used = new Set(tests.flatMap(({ cautions }) => cautions));
    expect([...guideCautions.keys()].filter((kind) => !used.has(kind))).toEqual([]);
    expect(new Set(guideCautions.values()).size).toBe(guideCautions.size);
  });

  it('give a unit with every figure that is expected', () => {
    const figures = tests.filter(({ expect: words }) => /\d/.test(words));
    const unit =
      /(\d\s?(V|mA|A|Ω|kΩ|bar|kPa|psi|inHg|mm|rpm|°C|°|%|l|s|min|ms|mm)\b|\d\s?(°C|Ω|%|°)|seconds|minutes|turns|λ|strokes|millisecond)/;
    expect(figures.length).toBeGreaterThan(50);
    expect(
      figures.filter(({ expect: words }) => !unit.test(words)).map(({ guide, id }) => `${guide} ${id}`),
    ).toEqual([]);
  });

  it('name sources that docs/sources.md has, each with words of its own on the card', () => {
    const sources = readFileSync(new URL('docs/sources.md', root), 'utf8');
    const used = [...new Set(tests.flatMap(({ source }) => source))];
    expect(used.length).toBeGreaterThan(10);
    for (const key of used) {
      expect(sources, key).toMatch(new RegExp(`^\\|([^|]*,)? ?${key}[ ,|]`, 'm'));
      expect(sourcesWithWords.has(key), key).toBe(true);
    }
    expect([...sourcesWithWords].filter((key) => !used.includes(key))).toEqual([]);
  });

  it('ask of readings only kinds there are, in their own unit', () => {
    const signs = causes.flatMap(({ readings }) => readings);
    expect(signs.length).toBeGreaterThan(3);
    for (const { kind, unit } of signs) {
      expect(readingKinds.find(({ name }) => name === kind)?.unit, kind).toBe(unit);
    }
  });

  it('cut a measured value into ranges that neither overlap nor leave a gap', () => {
    const measured = tests.filter(({ outcomes }) => outcomes.some(({ reads }) => reads !== null));
    expect(measured.length).toBeGreaterThan(10);
    for (const { guide, id, outcomes } of measured) {
      const ranges = outcomes.flatMap(({ reads }) => reads ?? []);
      expect(new Set(ranges.map(({ unit }) => unit)).size, `${guide} ${id}`).toBe(1);
      const sorted = ranges.toSorted((a, b) => (a.from ?? -Infinity) - (b.from ?? -Infinity));
      sorted.slice(1).forEach((range, at) => {
        expect(range.from, `${guide} ${id}`).toBe(sorted[at]?.below);
      });
      expect(sorted[0]?.from, `${guide} ${id}`).toBeUndefined();
      expect(sorted.at(-1)?.below, `${guide} ${id}`).toBeUndefined();
    }
  });

  it('name no maker and no product', () => {
    const text = JSON.stringify(guides);
    expect(text).not.toMatch(/\b(Bosch|Garrett|Haltech|Holley|Honda|Toyota|Ford|Subaru|Nissan|BMW|Mazda)\b/i);
  });
});
