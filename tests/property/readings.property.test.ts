import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measuredClearances } from '../../src/calc/readings/clearances.ts';
import { compressionAtBarometer, compressionSpread } from '../../src/calc/readings/compression.ts';
import { leakDown } from '../../src/calc/readings/leak-down.ts';
import { judgeReading } from '../../src/calc/readings/limit.ts';
import { pressureFall } from '../../src/calc/readings/pressure-fall.ts';
import { compareWet } from '../../src/calc/readings/wet-compression.ts';
import { cylinderBars } from '../../src/pictures/cylinder-bars.ts';
import { overlap } from '../../src/pictures/labels.ts';
import { between, check, near } from '../support/laws.ts';
import { textsIn } from '../support/svg-text.ts';

const cylinders = fc.array(between(400, 2000), { minLength: 2, maxLength: 16 });

describe('a compression test', () => {
  it('spreads alike in every unit, and names a cylinder that is the lowest', () => {
    check([cylinders, between(0.1, 2)], (readingsKpa, scale) => {
      const { spreadRatio, weakest } = compressionSpread({ readingsKpa, limitRatio: 0.1 }).value;
      const scaled = compressionSpread({
        readingsKpa: readingsKpa.map((each) => each * scale),
        limitRatio: 0.1,
      });
      near(scaled.value.spreadRatio, spreadRatio, 1e-12);
      expect(readingsKpa[weakest - 1]).toBe(Math.min(...readingsKpa));
    });
  });

  it('carried to another barometer and back is what it was, and lower where the air is thin', () => {
    check([between(300, 2500), between(60, 101), between(60, 101)], (readingKpa, fromKpa, toKpa) => {
      const there = compressionAtBarometer({ readingKpa, fromKpa, toKpa }).value.expectedKpa;
      near(
        compressionAtBarometer({ readingKpa: there, fromKpa: toKpa, toKpa: fromKpa }).value.expectedKpa,
        readingKpa,
        1e-9,
      );
      expect(Math.sign(there - readingKpa)).toBe(Math.sign(toKpa - fromKpa));
    });
  });

  it('finds nothing in an even engine, however it rises with oil', () => {
    check([between(500, 1500), between(1, 2), fc.integer({ min: 2, max: 16 })], (kpa, rise, count) => {
      const dryKpa = Array.from({ length: count }, () => kpa);
      const found = compareWet({
        dryKpa,
        wetKpa: dryKpa.map((each) => each * rise),
        limitRatio: 0.1,
        riseRatio: 0.1,
      });
      expect(new Set(found.value.map(({ finding }) => finding))).toEqual(new Set(['sound']));
    });
  });
});

describe('leaks, falls and fits', () => {
  it('leaks more, the less a cylinder holds', () => {
    check([between(200, 1000), between(0, 0.99), between(0.001, 1)], (supplyKpa, share, more) => {
      const held = supplyKpa * share;
      const leak = (cylinderKpa: number) => leakDown({ supplyKpa, cylinderKpa }).value.leakRatio;
      expect(leak(held)).toBeGreaterThan(leak(Math.min(supplyKpa, held + more)));
      near(leak(held), 1 - share, 1e-9);
    });
  });

  it('falls by the same over the same time however long it was watched', () => {
    check([between(100, 1000), between(0.001, 0.2), between(1, 60)], (startKpa, rate, minutes) => {
      const endKpa = startKpa * Math.exp(-rate * minutes);
      near(
        pressureFall({ startKpa, endKpa, minutes, overMinutes: 5 }).value.overRatio,
        1 - Math.exp(-rate * 5),
        1e-9,
      );
    });
  });

  it('judges a clearance the same, by share or by length', () => {
    check([between(20, 100), between(-0.01, 0.3)], (shaft, clearance) => {
      const given = { holesMm: [shaft + clearance], shaftsMm: [shaft] };
      const [byShare] = measuredClearances({
        ...given,
        limit: { kind: 'share', minRatio: 0.001, maxRatio: 0.002 },
      }).value;
      const [byLength] = measuredClearances({
        ...given,
        limit: { kind: 'length', minMm: shaft * 0.001, maxMm: shaft * 0.002 },
      }).value;
      expect(byShare?.standing).toBe(byLength?.standing);
    });
  });

  it('calls low what is below, high what is above, and both ends within', () => {
    check([between(-100, 100), between(0.1, 50)], (min, width) => {
      const limit = { min, max: min + width, unit: 'kPa' } as const;
      const standing = (reading: number) => judgeReading(reading, limit).value.standing;
      expect([
        standing(min - 0.1),
        standing(min),
        standing(min + width),
        standing(min + width + 0.1),
      ]).toEqual(['low', 'ok', 'ok', 'high']);
    });
  });
});

describe('a picture of cylinders', () => {
  const bar = fc.record({
    value: between(0, 3000),
    standing: fc.constantFrom('ok' as const, 'low' as const, 'high' as const),
    second: fc.option(between(0, 3000), { nil: undefined }),
  });
  it('keeps every text on the sheet, and each value off the others', () => {
    check([fc.array(bar, { minLength: 1, maxLength: 16 }), between(0, 4000)], (bars, limit) => {
      const { svg, width, height, alt } = cylinderBars({
        title: 'Spread 47 %: cylinder 4 is weak, 90 psi (6.21 bar)',
        axis: 'Compression, psi',
        bars: bars.map(({ value, standing, second }, index) => ({
          label: `${index + 1}`,
          value,
          words: value.toFixed(0),
          standing,
          ...(second === undefined ? {} : { second: { value: second, words: `wet ${second.toFixed(0)}` } }),
        })),
        limit: { value: limit, words: '10 % below the best' },
        called: { low: 'weak', high: 'leaks' },
        name: 'cylinders.png',
      });
      const texts = textsIn(svg);
      expect(texts.length).toBeGreaterThan(bars.length);
      for (const { words, room } of texts) {
        expect(room.x, words).toBeGreaterThanOrEqual(0);
        expect(room.x + room.width, words).toBeLessThanOrEqual(width);
        expect(room.y + room.height, words).toBeLessThanOrEqual(height);
      }
      const large = texts.filter(({ words }) => !words.startsWith('wet'));
      for (const [index, one] of large.entries())
        for (const other of large.slice(index + 1))
          expect(overlap(one.room, other.room), `${one.words} on ${other.words}`).toBe(false);
      expect(alt).toContain('10 % below the best');
    });
  });
});
