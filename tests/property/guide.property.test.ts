import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Beliefs, beliefs, chanceOf, chanceOfOther, type Found } from '../../src/calc/guide/beliefs.ts';
import { type Guide, type GuideTest, keeps } from '../../src/calc/guide/guide.ts';
import { bitsOf, nextTest } from '../../src/calc/guide/next-test.ts';
import { factorsOf, type Known, raises } from '../../src/calc/guide/raise.ts';
import { guides } from '../../src/tables/guide.ts';
import {
  asWritten,
  byRule,
  costOf,
  dearestFirst,
  meanMinutes,
  pathsOf,
  searchAfter,
} from '../support/guide-tree.ts';
import { check } from '../support/laws.ts';

const all: readonly Guide[] = guides;
const aGuide = fc.constantFrom(...all);

/** More tests than these nobody does in a row before asking somebody else. */
const MOST_TESTS = 10;

describe.each(all.map((guide) => [guide.id, guide] as const))('the guide for %s', (_id, guide) => {
  const paths = pathsOf(guide);

  it('ends every path in a cause or beyond the guide, without a test done twice, in few tests', () => {
    expect(paths.length).toBeGreaterThan(guide.causes.length);
    for (const { found, end } of paths) {
      expect(['found', 'beyond']).toContain(end.kind);
      const tests = found.map(({ test }) => test);
      expect(new Set(tests).size).toBe(tests.length);
      expect(tests.length).toBeLessThanOrEqual(MOST_TESTS);
    }
  });

  it('reaches every test and every cause', () => {
    const tests = new Set(paths.flatMap(({ found }) => found.map(({ test }) => test)));
    const causes = new Set(paths.flatMap(({ end }) => (end.kind === 'found' ? [end.cause.id] : [])));
    expect(guide.tests.map(({ id }) => id).filter((id) => !tests.has(id))).toEqual([]);
    expect(guide.causes.map(({ id }) => id).filter((id) => !causes.has(id))).toEqual([]);
  });

  it('never gives up while two causes could still be told apart', () => {
    const undecided = paths.filter(({ end }) => end.kind === 'beyond' && end.left.length > 0);
    expect(undecided.map(({ found }) => found)).toEqual([]);
  });

  it('rules something out or proves something with every finding on the way', () => {
    for (const { found } of paths) {
      found.forEach((one, index) => {
        const before = beliefs(guide, searchAfter(found.slice(0, index)));
        const after = beliefs(guide, searchAfter(found.slice(0, index + 1)));
        const outcome = guide.tests
          .find(({ id }) => id === one.test)
          ?.outcomes.find(({ id }) => id === one.outcome);
        const proves = outcome?.leaves?.length === 1;
        const moved =
          after.suspects.length < before.suspects.length || proves || after.otherRatio !== before.otherRatio;
        const reweighed = after.suspects.some(
          ({ cause, shareRatio }) =>
            Math.abs(shareRatio - (before.suspects.find((was) => was.cause === cause)?.shareRatio ?? 0)) >
            1e-9,
        );
        expect(moved || reweighed, `${one.test} ${one.outcome}`).toBe(true);
      });
    }
  });

  it.each(guide.causes.map((cause) => [cause.id, cause] as const))(
    'finds %s when it is that',
    (_name, cause) => {
      const cost = costOf(guide, cause, byRule);
      expect([...cost.ends]).toEqual([cause.id]);
      expect(cost.mostTests).toBeLessThanOrEqual(MOST_TESTS);
    },
  );
});

describe('the order of tests', () => {
  const figures = all.map((guide) => ({
    guide: guide.id,
    rule: meanMinutes(guide, byRule),
    written: meanMinutes(guide, asWritten),
    dearest: meanMinutes(guide, dearestFirst),
  }));
  const mean = (of: (row: (typeof figures)[number]) => number): number =>
    figures.reduce((sum, row) => sum + of(row), 0) / figures.length;

  it('takes less time over all guides than the order in which the tests are written', () => {
    expect(mean(({ rule }) => rule)).toBeLessThan(0.9 * mean(({ written }) => written));
  });

  it('takes less than half the time of the dearest first', () => {
    expect(mean(({ rule }) => rule)).toBeLessThan(0.5 * mean(({ dearest }) => dearest));
  });

  it('is nowhere noticeably worse than the order as written', () => {
    expect(figures.filter(({ rule, written }) => rule > 1.05 * written)).toEqual([]);
  });
});

describe('beliefs', () => {
  /** A guide and some of its tests with outcomes as they come, also such as do not go together. */
  const someFindings = aGuide.chain((guide) =>
    fc
      .subarray([...guide.tests], { minLength: 0, maxLength: Math.min(6, guide.tests.length) })
      .chain((tests) =>
        fc.tuple(
          fc.constant(guide),
          fc.tuple(
            ...tests.map((test) =>
              fc.constantFrom(...test.outcomes).map(({ id }): Found => ({ test: test.id, outcome: id })),
            ),
          ),
        ),
      ),
  );

  it('add up to one, and hold nothing that a finding has ruled out', () => {
    check([someFindings], ([guide, found]) => {
      const { suspects, otherRatio } = beliefs(guide, searchAfter(found));
      const sum = suspects.reduce((total, { shareRatio }) => total + shareRatio, otherRatio);
      expect(Math.abs(sum - 1)).toBeLessThan(1e-9);
      for (const { test, outcome } of found) {
        const noted = guide.tests.find(({ id }) => id === test)?.outcomes.find(({ id }) => id === outcome);
        for (const { cause } of suspects) expect(noted && keeps(noted, cause.id)).toBe(true);
      }
    });
  });

  it('do not hang on the order in which findings were made', () => {
    check([someFindings], ([guide, found]) => {
      const one = beliefs(guide, searchAfter(found));
      const other = beliefs(guide, searchAfter(found.toReversed()));
      for (const { cause, shareRatio } of one.suspects) {
        const share =
          other.suspects.find((suspect) => suspect.cause.id === cause.id)?.shareRatio ?? Number.NaN;
        expect(share).toBeCloseTo(shareRatio, 9);
      }
      expect(other.suspects).toHaveLength(one.suspects.length);
    });
  });

  /** The same quantity the other way round: how uncertain the outcome is, less how uncertain it is under each cause. */
  function mutualInformation(test: GuideTest, { suspects, otherRatio }: Beliefs): number {
    const entropy = (chances: readonly number[]): number =>
      chances.reduce((sum, chance) => (chance > 0 ? sum - chance * Math.log2(chance) : sum), 0);
    const under = [
      ...suspects.map(({ cause, shareRatio }) => ({
        share: shareRatio,
        chances: test.outcomes.map((outcome) => chanceOf(test, outcome, cause.id)),
      })),
      { share: otherRatio, chances: test.outcomes.map((outcome) => chanceOfOther(test, outcome)) },
    ];
    const overall = test.outcomes.map((_, at) =>
      under.reduce((sum, { share, chances }) => sum + share * (chances[at] ?? 0), 0),
    );
    return entropy(overall) - under.reduce((sum, { share, chances }) => sum + share * entropy(chances), 0);
  }

  it('tell of a test what information theory says: I(C;O) = H(O) − H(O|C) (Cover & Thomas, eq. 2.39)', () => {
    check([someFindings], ([guide, found]) => {
      const now = beliefs(guide, searchAfter(found));
      const covering = guide.tests.filter((test) =>
        now.suspects.every(({ cause }) => test.outcomes.some((outcome) => keeps(outcome, cause.id))),
      );
      for (const test of covering) expect(bitsOf(test, now)).toBeCloseTo(mutualInformation(test, now), 9);
    });
  });
});

describe('a walk at random', () => {
  const choices = fc.array(fc.nat({ max: 99 }), { minLength: 60, maxLength: 60 });
  const words = all.flatMap(({ causes }) =>
    causes.flatMap(({ touches, leftOff }) => [...touches, ...leftOff]),
  );
  const anything = fc.record({
    partsChanged: fc.array(
      fc.record({
        name: fc.constantFrom(...words),
        how: fc.constantFrom('fitted' as const, 'came' as const),
        daysAgo: fc.nat({ max: 60 }),
      }),
      { maxLength: 4 },
    ),
    measuresOpen: fc.array(fc.record({ id: fc.nat(), what: fc.constantFrom(...words), daysAgo: fc.nat() }), {
      maxLength: 3,
    }),
    readings: fc.constant([]),
  });

  it('comes to an end in few tests, with tests put off on the way and whatever the record knows', () => {
    check([aGuide, choices, anything], (guide, picks, known: Known) => {
      const factors = factorsOf(raises(guide, known));
      const found: Found[] = [];
      const putOff: string[] = [];
      for (const pick of picks) {
        const next = nextTest(guide, { found, putOff, excluded: [], factors });
        if (next.kind === 'found' || next.kind === 'beyond') {
          const tests = found.map(({ test }) => test);
          expect(new Set(tests).size).toBe(tests.length);
          expect(tests.length).toBeLessThanOrEqual(guide.tests.length);
          return;
        }
        expect(found.map(({ test }) => test)).not.toContain(next.test.id);
        if (next.kind === 'test' && pick % 4 === 0) {
          expect(putOff).not.toContain(next.test.id);
          putOff.push(next.test.id);
        } else {
          const outcome = next.test.outcomes[pick % next.test.outcomes.length];
          found.push({ test: next.test.id, outcome: outcome?.id ?? '' });
        }
      }
      throw new Error(`${guide.id} did not end`);
    });
  });

  it('never rules out what the record speaks for, and puts it no lower', () => {
    check([aGuide, anything], (guide, known: Known) => {
      const plainly = beliefs(guide, searchAfter([]));
      const all = raises(guide, { ...known, readings: [] });
      const raised = beliefs(guide, { ...searchAfter([]), factors: factorsOf(all) });
      expect(raised.suspects).toHaveLength(plainly.suspects.length);
      const only = new Set(all.map(({ cause }) => cause));
      if (only.size !== 1) return;
      for (const { cause, shareRatio } of raised.suspects) {
        const was = plainly.suspects.find((one) => one.cause.id === cause.id)?.shareRatio ?? 1;
        if (only.has(cause.id)) expect(shareRatio).toBeGreaterThan(was);
        else expect(shareRatio).toBeLessThan(was);
      }
    });
  });
});
