import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { fittingKinds, fittings } from '../../../src/tables/fittings.ts';
import { readTable, refuseTwins } from '../../../src/tables/read-table.ts';
import { commonWeight, foundOn, spannerSize, tapDrill } from '../../../src/tables/thread-practice.ts';
import { threadTables } from '../../../src/tables/threads.ts';

describe('a table that is wrong', () => {
  const Table = z.object({
    threads: z.array(z.strictObject({ id: z.string(), pitch_mm: z.number().positive() })),
  });
  it('is refused with the file and the row', () => {
    const raw = {
      threads: [
        { id: 'a', pitch_mm: 1 },
        { id: 'b', pitch_mm: -1 },
      ],
    };
    expect(() => readTable('threads/x.json', Table, raw)).toThrow(
      /^data\/threads\/x\.json at threads\.1\.pitch_mm: /,
    );
  });
  it('is refused when an id stands twice', () => {
    expect(() => refuseTwins('threads/x.json', ['a', 'b', 'a'])).toThrow(
      'data/threads/x.json: a stands twice',
    );
  });
});

describe('the thread tables', () => {
  it('hold every family the crew meets', () => {
    expect(threadTables.isoMetric.length).toBe(101);
    expect(threadTables.unified.length).toBe(81);
    expect(threadTables.iso228.length).toBe(14);
    expect(threadTables.iso7.length).toBe(10);
    expect(threadTables.npt.length).toBe(10);
    expect(threadTables.whitworth.length).toBe(29);
    expect(fittings.length).toBe(80);
  });

  it('give every fitting a kind with its seat', () => {
    for (const { id, kind } of fittings) expect(fittingKinds.get(kind)?.seat, id).toBeTruthy();
  });
});

describe('practice', () => {
  it('weighs a known thread by itself, another by its series, a stranger as ordinary', () => {
    expect(commonWeight({ id: 'M22x1.5', family: 'iso-metric', series: 'fine' })).toBe(4);
    expect(commonWeight({ id: 'M25x2', family: 'iso-metric', series: 'fine' })).toBe(0.5);
    expect(commonWeight({ id: 'x', family: 'y', series: 'z' })).toBe(1);
  });
  it('knows what a thread is found on, and what it does not know', () => {
    expect(foundOn('M14x1.25')).toBe('spark plugs');
    expect(foundOn('M25x2')).toBeUndefined();
    expect(tapDrill('M25x2')).toBeUndefined();
  });
  it('gives both spanners where the older standard differed', () => {
    expect(spannerSize({ family: 'iso-metric', nominal: '10' })).toBe('16 mm, older 17 mm (DIN 931)');
    expect(spannerSize({ family: 'iso-metric', nominal: '8' })).toBe('13 mm');
    expect(spannerSize({ family: 'npt', nominal: '1/8' })).toBeUndefined();
  });
});
