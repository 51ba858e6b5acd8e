import { describe, expect, it } from 'vitest';
import { threadCatalogue } from '../../../../src/calc/threads/catalogue.ts';
import { identifyThread, type Suspect } from '../../../../src/calc/threads/identify.ts';
import { threadsToShow } from '../../../../src/calc/threads/near.ts';
import type { ThreadReadings } from '../../../../src/calc/threads/readings.ts';
import { threadTables } from '../../../../src/tables/threads.ts';

const suspects: readonly Suspect[] = threadCatalogue(threadTables).map((thread) => ({
  thread,
  weight: 1,
  seats: new Set(),
}));

function shown(readings: ThreadReadings & Required<Pick<ThreadReadings, 'diameter'>>) {
  return threadsToShow(identifyThread(suspects, readings), suspects, readings.diameter, readings);
}

describe('the threads shown beside a reading', () => {
  const diameter = { mm: 21.9, plusMinusMm: 0.05 };

  it('are the one that stands, then what was ruled out near it', () => {
    const all = shown({ diameter, pitch: { mm: 1.5, plusMinusMm: 0.024 }, side: 'male' });
    expect(all[0]).toMatchObject({ thread: { id: 'M22x1.5' }, side: 'male', stands: true });
    expect(all.filter(({ stands }) => stands)).toHaveLength(1);
    expect(all.slice(1).map(({ thread }) => thread.id)).toContain('7/8-14 UNF');
    expect(all.length).toBeLessThanOrEqual(5);
  });

  it('are no more than eight, each once, when many stand', () => {
    const all = shown({ diameter: { mm: 21.9, plusMinusMm: 0.5 } });
    expect(all).toHaveLength(8);
    expect(new Set(all.map(({ thread }) => thread.id)).size).toBe(8);
  });

  it('are of the side that was measured', () => {
    for (const side of ['male', 'female'] as const) {
      const all = shown({ diameter, pitch: { mm: 1.5, plusMinusMm: 0.024 }, side });
      expect(all.length).toBeGreaterThan(0);
      expect(all.every((each) => each.side === side)).toBe(true);
    }
  });

  it('are none where no thread is near', () => {
    expect(shown({ diameter: { mm: 150, plusMinusMm: 0.05 }, side: 'male' })).toEqual([]);
  });
});
