import { describe, expect, it } from 'vitest';
import { idAt, idMaker, msOf } from '../../../src/channel/wire/snowflake.ts';

describe('ids', () => {
  it('carry the moment they were made', () => {
    // Developer documentation, "Snowflakes": the worked example.
    expect(msOf('175928847299117063')).toBe(Date.parse('2016-04-30T11:18:25.796Z'));
    const nowMs = Date.UTC(2026, 4, 4);
    expect(msOf(idMaker(() => nowMs)())).toBe(nowMs);
  });

  it('go on increasing when the clock stands still or goes back', () => {
    let nowMs = Date.UTC(2026, 4, 4);
    const next = idMaker(() => nowMs);
    const ids = [next(), next()];
    nowMs -= 3_600_000;
    ids.push(next(), next());
    nowMs += 7_200_000;
    ids.push(next());
    expect(ids.map(BigInt)).toEqual(ids.map(BigInt).toSorted((a, b) => (a < b ? -1 : 1)));
    expect(new Set(ids).size).toBe(5);
  });

  it('follow on after those of an earlier life', () => {
    const nowMs = Date.UTC(2026, 4, 4);
    const earlier = idAt(nowMs + 1_000);
    expect(BigInt(idMaker(() => nowMs, earlier)())).toBe(earlier + 1n);
  });

  it.each([0, Date.UTC(2015, 0, 1), Date.UTC(2040, 0, 1)])('have 17 to 19 digits at %d', (nowMs) => {
    expect(idMaker(() => nowMs)()).toMatch(/^\d{17,19}$/);
  });
});
