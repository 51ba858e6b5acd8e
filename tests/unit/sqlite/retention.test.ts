import { describe, expect, it } from 'vitest';
import { expired } from '../../../src/sqlite/retention.ts';

const HOUR = 3_600_000;
const at = (text: string) => Temporal.Instant.from(text).epochMilliseconds;
const hourlyFrom = (text: string, count: number) =>
  Array.from({ length: count }, (_, hour) => at(text) + hour * HOUR);

describe('old backups', () => {
  it('are all kept for 24 hours', () => {
    expect(expired(hourlyFrom('2026-01-01T00:05:00Z', 24))).toEqual([]);
  });

  it('thin out to 24 hours, 30 days and 12 months over three years', () => {
    const taken = hourlyFrom('2024-01-01T00:05:00Z', (366 + 365 + 365) * 24);
    const gone = new Set(expired(taken));
    const kept = taken.filter((time) => !gone.has(time));
    const days = Array.from({ length: 29 }, (_, day) => at('2026-12-02T23:05:00Z') + day * 24 * HOUR);
    const monthEnds = [
      '01-31',
      '02-28',
      '03-31',
      '04-30',
      '05-31',
      '06-30',
      '07-31',
      '08-31',
      '09-30',
      '10-31',
      '11-30',
    ];
    expect(kept).toEqual([
      ...monthEnds.map((end) => at(`2026-${end}T23:05:00Z`)),
      ...days,
      ...taken.slice(-24), // the last of them is also the newest of its day and its month
    ]);
  });

  it('are counted by periods that have one, so that an outage never empties the shelf', () => {
    const taken = hourlyFrom('2020-02-01T00:00:00Z', 3);
    expect(expired([...taken, at('2026-01-01T00:00:00Z')])).toEqual([]);
  });

  it('keep the newest of each hour', () => {
    const [early, late] = [at('2026-01-01T00:05:00Z'), at('2026-01-01T00:45:00Z')];
    expect(expired([late, early])).toEqual([early]);
  });

  it('go oldest first', () => {
    const taken = [1, 2, 3].map((minute) => minute * 60_000);
    expect(expired(taken, { hourly: 1, daily: 1, monthly: 1 })).toEqual(taken.slice(0, 2));
  });
});
