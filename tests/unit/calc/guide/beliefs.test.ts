import { describe, expect, it } from 'vitest';
import { beliefs } from '../../../../src/calc/guide/beliefs.ts';
import { nextTest } from '../../../../src/calc/guide/next-test.ts';
import { aCause, aGuide, aTest } from '../../../support/a-guide.ts';
import { searchAfter } from '../../../support/guide-tree.ts';

/** Worked by hand: weights 50, 30, 20, and 5 for something else. */
const guide = aGuide(
  [aCause('fuse', 50), aCause('wire', 30), aCause('pump', 20)],
  [
    aTest('look', 1, { blown: { leaves: ['fuse'] }, whole: { rulesOut: ['fuse'] } }),
    aTest('volts', 4, { none: { leaves: ['fuse', 'wire'] }, there: { rulesOut: ['fuse', 'wire'] } }),
    aTest('bench', 30, { dead: { leaves: ['pump'] }, runs: { rulesOut: ['pump'] } }),
  ],
);
const share = (found: Parameters<typeof searchAfter>[0], cause: string): number =>
  beliefs(guide, searchAfter(found)).suspects.find((one) => one.cause.id === cause)?.shareRatio ?? 0;

describe('beliefs', () => {
  it('begin with the weights, and five in a hundred for something else', () => {
    expect(share([], 'fuse')).toBeCloseTo(50 / 105, 12);
    expect(beliefs(guide, searchAfter([])).otherRatio).toBeCloseTo(5 / 105, 12);
  });

  it('share out what a finding leaves', () => {
    const found = [{ test: 'look', outcome: 'whole' }];
    expect(share(found, 'fuse')).toBe(0);
    expect(share(found, 'wire')).toBeCloseTo(30 / 55, 12);
    expect(share(found, 'pump')).toBeCloseTo(20 / 55, 12);
  });

  it('drop something else only for what points to one cause alone', () => {
    expect(beliefs(guide, searchAfter([{ test: 'look', outcome: 'blown' }])).otherRatio).toBe(0);
    // under something else both outcomes of the second test are as likely
    const after = beliefs(guide, searchAfter([{ test: 'volts', outcome: 'none' }]));
    expect(after.otherRatio).toBeCloseTo(2.5 / 82.5, 12);
  });

  it('hold a cause that two outcomes keep for half as likely under each', () => {
    const vague = aGuide(
      [aCause('fuse', 10), aCause('wire', 10)],
      [aTest('wiggle', 1, { runs: { leaves: ['wire'] }, dead: { leaves: ['fuse', 'wire'] } })],
    );
    const { suspects } = beliefs(vague, searchAfter([{ test: 'wiggle', outcome: 'dead' }]));
    expect(suspects[0]?.cause.id).toBe('fuse');
    expect((suspects[0]?.shareRatio ?? 0) / (suspects[1]?.shareRatio ?? 1)).toBeCloseTo(2, 12);
  });

  it('know nothing of tests that the guide has lost since', () => {
    expect(share([{ test: 'gone', outcome: 'x' }], 'fuse')).toBeCloseTo(50 / 105, 12);
  });
});

describe('the next test', () => {
  const next = (...found: Parameters<typeof searchAfter>[0][number][]) => nextTest(guide, searchAfter(found));

  it('is the one that tells most for its minutes', () => {
    expect(next()).toMatchObject({ kind: 'test', test: { id: 'look' } });
  });

  it('is another when that one cannot be done, and that one again when nothing else is left', () => {
    expect(nextTest(guide, searchAfter([], ['look']))).toMatchObject({ kind: 'test', test: { id: 'volts' } });
    expect(nextTest(guide, searchAfter([], ['look', 'volts', 'bench']))).toMatchObject({
      kind: 'put-off',
      test: { id: 'look' },
    });
  });

  it('is none when a test leaves one cause alone', () => {
    expect(next({ test: 'look', outcome: 'blown' })).toMatchObject({
      kind: 'found',
      cause: { id: 'fuse' },
      by: 'test',
    });
  });

  it('proves the last cause where a test can, and says so where none can', () => {
    const found = [
      { test: 'look', outcome: 'whole' },
      { test: 'volts', outcome: 'there' },
    ];
    expect(next(...found)).toMatchObject({ kind: 'test', test: { id: 'bench' } });
    const last = [
      { test: 'look', outcome: 'whole' },
      { test: 'volts', outcome: 'none' },
    ];
    expect(next(...last)).toMatchObject({ kind: 'found', cause: { id: 'wire' }, by: 'elimination' });
  });

  it('is beyond the guide when findings do not go together', () => {
    expect(next({ test: 'look', outcome: 'blown' }, { test: 'volts', outcome: 'there' })).toEqual({
      kind: 'beyond',
      left: [],
    });
  });

  it('waits for what must be done before', () => {
    const guarded = aGuide(
      [aCause('a', 10), aCause('b', 10)],
      [
        { ...aTest('bridge', 1, { runs: { leaves: ['a'] }, dead: { leaves: ['b'] } }), after: ['by-hand'] },
        aTest('by-hand', 20, { free: { rulesOut: ['b'] }, stuck: { leaves: ['b', 'a'] } }),
      ],
    );
    expect(nextTest(guarded, searchAfter([]))).toMatchObject({ kind: 'test', test: { id: 'by-hand' } });
    expect(nextTest(guarded, searchAfter([{ test: 'by-hand', outcome: 'stuck' }]))).toMatchObject({
      test: { id: 'bridge' },
    });
  });

  it('looks again at what was put right without a change', () => {
    const search = { ...searchAfter([]), excluded: ['fuse'] };
    expect(beliefs(guide, search).suspects.map(({ cause }) => cause.id)).toEqual(['wire', 'pump']);
  });
});
