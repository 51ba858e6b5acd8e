import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { INK } from '../../src/pictures/sheet.ts';
import { threadPicture } from '../../src/pictures/thread-picture.ts';
import { collisions, textsIn } from '../support/svg-text.ts';

const runs = {
  seed: Number(process.env['FC_SEED'] ?? 20261125),
  numRuns: Number(process.env['FC_RUNS'] ?? 200),
};

const TPI = [28, 27, 26, 24, 20, 19, 18, 16, 14, 11.5, 11] as const;
const METRIC = [0.75, 1, 1.25, 1.5, 1.75, 2] as const;

const aBand = fc
  .record({
    from: fc.double({ min: 0.94, max: 1.05, noNaN: true }),
    width: fc.double({ min: 0.001, max: 0.03, noNaN: true }),
    pitch: fc.oneof(
      fc.constantFrom(...TPI).map((tpi) => ({ pitchMm: 25.4 / tpi, tpi })),
      fc.constantFrom(...METRIC).map((pitchMm) => ({ pitchMm, tpi: undefined })),
    ),
    side: fc.constantFrom('male' as const, 'female' as const),
    tapered: fc.boolean(),
    fits: fc.boolean(),
  })
  .map(({ pitch, ...rest }) => ({ ...rest, ...pitch }));

const aPicture = fc
  .record({
    size: fc.double({ min: 3, max: 65, noNaN: true }),
    plusMinusMm: fc.double({ min: 0.005, max: 0.5, noNaN: true }),
    pitch: fc.option(
      fc.record({
        mm: fc.double({ min: 0.5, max: 3, noNaN: true }),
        plusMinusMm: fc.double({ min: 0.005, max: 0.3, noNaN: true }),
      }),
      { nil: undefined },
    ),
    bands: fc.array(aBand, { maxLength: 8 }),
  })
  .map(({ size, plusMinusMm, pitch, bands }) => ({
    title: 'The readings cannot separate them',
    diameter: { mm: size, plusMinusMm },
    ...(pitch === undefined ? {} : { pitch }),
    bands: bands.map(({ from, width, ...band }, index) => ({
      ...band,
      name: `7/8-${index} UNEF`,
      fromMm: from * size,
      toMm: (from + width) * size,
    })),
  }));

describe('a picture of any threads', () => {
  it('keeps every text on the sheet and off every other', () => {
    fc.assert(
      fc.property(aPicture, (data) => {
        const { svg, width, height } = threadPicture(data);
        const texts = textsIn(svg);
        expect(texts.length).toBeGreaterThan(5);
        for (const { words, room } of texts) {
          const inside =
            room.x >= 0 && room.y >= 0 && room.x + room.width <= width && room.y + room.height <= height;
          expect(inside, `"${words}" leaves the sheet`).toBe(true);
        }
        expect(collisions(texts)).toEqual([]);
      }),
      runs,
    );
  });

  it('names every thread it draws, up to eight', () => {
    fc.assert(
      fc.property(aPicture, (data) => {
        const all = textsIn(threadPicture(data).svg)
          .map(({ words }) => words)
          .join(' ')
          .replaceAll('\u00a0', ' ');
        for (const { name } of data.bands) expect(all).toContain(name);
      }),
      runs,
    );
  });

  it('describes itself in no more than the platform takes', () => {
    fc.assert(
      fc.property(aPicture, (data) => {
        const { alt } = threadPicture(data);
        expect(alt.length).toBeLessThanOrEqual(1024);
        expect(alt).toContain(`${data.diameter.mm.toFixed(2)} ± `);
      }),
      runs,
    );
  });
});

/** WCAG 2.2, "relative luminance" and "contrast ratio". */
function contrast(one: string, other: string): number {
  const [lighter = 0, darker = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (lighter + 0.05) / (darker + 0.05);
}

function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((share) => (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

describe('the inks', () => {
  it.each(['text', 'soft', 'vermilionText'] as const)('are 4.5 to 1 or better for words: %s', (ink) => {
    expect(contrast(INK[ink], INK.paper)).toBeGreaterThanOrEqual(4.5);
  });

  it.each(['blue', 'vermilion'] as const)('are 3 to 1 or better for lines and marks: %s', (ink) => {
    expect(contrast(INK[ink], INK.paper)).toBeGreaterThanOrEqual(3);
  });
});
