import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { renderPng } from '../../../src/pictures/render.ts';
import { type TimelineData, type TimelineRow, timelinePicture } from '../../../src/pictures/timeline.ts';
import { check } from '../../support/laws.ts';
import { collisions, textsIn } from '../../support/svg-text.ts';

const SURE = { p10: 4, p50: 6, p90: 9 };

const data: TimelineData = {
  title: 'First start: Fri 11 Dec, or Tue 8 Dec to Sat 19 Dec',
  today: '2026-11-23',
  end: { p10: 15, p50: 18, p90: 26 },
  rows: [
    { kind: 'arrival', name: 'head gasket', arrives: SURE, drives: true },
    { kind: 'work', name: 'fit head', begins: SURE, ends: { p10: 7, p50: 8, p90: 12 }, drives: true },
    { kind: 'work', name: 'lay the loom', begins: { p10: 1, p50: 2, p90: 3 }, ends: SURE, drives: false },
  ],
  more: 12,
};

const aSpread = fc
  .tuple(fc.nat(200), fc.nat(60), fc.nat(60))
  .map(([p10, more, most]) => ({ p10, p50: p10 + more, p90: p10 + more + most }));

const aRow: fc.Arbitrary<TimelineRow> = fc.oneof(
  fc.record({
    kind: fc.constant('work' as const),
    name: fc.string({ minLength: 1, maxLength: 120 }),
    begins: aSpread,
    ends: aSpread,
    drives: fc.boolean(),
  }),
  fc.record({
    kind: fc.constant('arrival' as const),
    name: fc.string({ minLength: 1, maxLength: 120 }),
    arrives: aSpread,
    drives: fc.boolean(),
  }),
);

const aTimeline: fc.Arbitrary<TimelineData> = fc.record({
  title: fc.constantFrom('First start: Fri 11 Dec', 'Running in: Fri 7 Jan 2028, or Wed 5 Jan to Sat 29 Jan'),
  today: fc.constantFrom('2026-11-23', '2026-12-30', '2027-02-28'),
  end: aSpread,
  rows: fc.array(aRow, { maxLength: 9 }),
  more: fc.nat(900),
});

describe('the timeline', () => {
  it('says the answer, names every row, today and the day, and what its marks mean', () => {
    const words = textsIn(timelinePicture(data).svg).map(({ words: each }) => each);
    expect(words.slice(0, 2).join(' ')).toBe(data.title);
    expect(words).toEqual(
      expect.arrayContaining(['today', '11 Dec', 'head gasket', 'fit head', 'lay the loom']),
    );
    expect(words.join(' ')).toContain('Diamond: a part arrives.');
    expect(words.join(' ')).toContain('12 more not drawn.');
  });

  it('says the same in words', () => {
    expect(timelinePicture(data).alt).toBe(
      'First start: Fri 11 Dec, or Tue 8 Dec to Sat 19 Dec. Between Tue 8 Dec and Sat 19 Dec, eight times in ten. head gasket arrives Sun 29 Nov; fit head: Sun 29 Nov to Tue 1 Dec; lay the loom: Wed 25 Nov to Sun 29 Nov; 12 more.',
    );
  });

  it('keeps every text on the sheet and off every other, and its description short', () => {
    check([aTimeline], (timeline) => {
      const { svg, width, height, alt } = timelinePicture(timeline);
      const texts = textsIn(svg);
      for (const { words, room } of texts) {
        const inside =
          room.x >= 0 && room.x + room.width <= width && room.y >= 0 && room.y + room.height <= height;
        expect(inside, `"${words}" leaves the sheet`).toBe(true);
      }
      expect(collisions(texts)).toEqual([]);
      expect(alt.length).toBeLessThanOrEqual(1024);
    });
  });

  it('can be painted', async () => {
    expect((await renderPng(timelinePicture(data))).length).toBeGreaterThan(5_000);
    expect((await renderPng(timelinePicture({ ...data, rows: [] }))).length).toBeGreaterThan(2_000);
  });
});
