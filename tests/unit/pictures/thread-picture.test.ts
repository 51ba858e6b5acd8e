import { describe, expect, it } from 'vitest';
import type { ThreadBand, ThreadPictureData } from '../../../src/pictures/thread-data.ts';
import { threadPicture } from '../../../src/pictures/thread-picture.ts';
import { textsIn } from '../../support/svg-text.ts';
import { M22, READ, UNF } from '../../support/thread-bands.ts';

const wordsOf = (data: ThreadPictureData): readonly string[] =>
  textsIn(threadPicture(data).svg).map(({ words }) => words.replaceAll('\u00a0', ' '));
const boxesOf = (data: ThreadPictureData) =>
  [
    ...threadPicture(data).svg.matchAll(
      /<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"[^>]*stroke="(#\w+)"[^>]*>/g,
    ),
  ].map(([whole, x, y, width, height]) => ({
    x: Number(x),
    y: Number(y),
    width: Number(width),
    height: Number(height),
    dashed: whole.includes('stroke-dasharray'),
  }));

describe('the picture of a thread', () => {
  it('says the answer, the reading with its doubt, and what the axes are, with their units', () => {
    const words = wordsOf(READ);
    expect(words).toContain('M22 × 1.5, almost certain');
    expect(words).toContain('Measured 21.90 ± 0.05 mm, pitch 1.50 ± 0.02 mm');
    expect(words).toContain('pitch, mm');
    expect(words).toContain('diameter over the crests, mm');
    expect(words).toContain('measured');
    expect(words.join(' ')).toContain('filled where the reading fits, dashed where not');
  });

  it('draws a published band as wide as its limits on the axis it is read from', () => {
    const { svg } = threadPicture(READ);
    const at = new Map(
      textsIn(svg)
        .filter(({ words, room }) => /^2\d\.\d$/.test(words) && room.y > 200)
        .map(({ words, room }) => [Number(words), room.x + room.width / 2]),
    );
    const [[low, lowAt] = [], [high, highAt] = []] = [...at];
    if (low === undefined || high === undefined || lowAt === undefined || highAt === undefined) {
      throw new Error('the axis has fewer than two values');
    }
    const unitsPerMm = (highAt - lowAt) / (high - low);
    const [box] =
      boxesOf({ ...READ, bands: [M22] }).length === 0 ? [] : boxesOf(READ).filter((each) => !each.dashed);
    expect(box?.width).toBeCloseTo((M22.toMm - M22.fromMm) * unitsPerMm, 0);
    expect(box?.x).toBeCloseTo(lowAt + (M22.fromMm - low) * unitsPerMm, 0);
  });

  it('sets higher pitches higher, and only what fits is filled', () => {
    const boxes = boxesOf(READ);
    expect(boxes).toHaveLength(2);
    const [held, missed] = [boxes.find(({ dashed }) => !dashed), boxes.find(({ dashed }) => dashed)];
    expect(held?.y).toBeGreaterThan(missed?.y ?? Number.POSITIVE_INFINITY);
  });

  it('has an axis in threads to the inch only where a standard counts so', () => {
    expect(wordsOf(READ)).toEqual(expect.arrayContaining(['tpi', '14']));
    expect(wordsOf({ ...READ, bands: [M22] })).not.toContain('tpi');
  });

  it('shows a strip over the whole height when the pitch is not known', () => {
    const { pitch, ...unknown } = READ;
    expect(pitch).toBeDefined();
    expect(wordsOf(unknown)).toContain('Measured 21.90 ± 0.05 mm, pitch not known');
    expect(threadPicture(unknown).svg).toContain('height="230" fill="#d55e00"');
    expect(threadPicture(READ).svg).not.toContain('height="230" fill="#d55e00"');
  });

  it('draws twins once, with both names and what uses either', () => {
    const data = {
      ...READ,
      bands: [
        { ...M22, note: 'BANJO' },
        { ...M22, name: 'Old 22', note: 'PORT' },
      ],
    };
    expect(boxesOf(data)).toHaveLength(1);
    expect(wordsOf(data)).toEqual(expect.arrayContaining(['M22 × 1.5 or', 'Old 22', 'BANJO, PORT']));
  });

  it('draws a taper thread as a wedge and says so', () => {
    const data = { ...READ, bands: [{ ...M22, tapered: true }] };
    expect(threadPicture(data).svg).toContain('<polygon');
    expect(wordsOf(data).join(' ')).toContain('Wedges: taper threads.');
  });

  it('tells a bore from an outside diameter', () => {
    const bore: ThreadBand = { ...UNF, side: 'female' };
    expect(wordsOf({ ...READ, bands: [M22, bore] })).toEqual(
      expect.arrayContaining(['7/8-14 UNF, bore', 'diameter, mm']),
    );
    expect(wordsOf({ ...READ, bands: [bore] })).toContain('diameter across the bore, mm');
  });

  it('does not call a name a measurement', () => {
    const words = wordsOf({ ...READ, named: '7/8' });
    expect(words.join(' ')).toContain('Named 7/8, taken as 21.90 ± 0.05 mm');
    expect(words).toContain('as named');
    expect(words.join(' ')).not.toMatch(/measured/i);
  });

  it('stands without any thread near', () => {
    const { alt } = threadPicture({ ...READ, title: 'No thread in the tables fits', bands: [] });
    expect(alt).toContain('No thread in the tables fits. Diameter across');
  });

  it('is the same text for the same data', () => {
    expect(threadPicture(READ)).toEqual(threadPicture(structuredClone(READ)));
  });

  it('shows markup in names as it was typed', () => {
    const { svg } = threadPicture({ ...READ, title: '</text><script>x</script>', named: '<image/>' });
    expect(svg).not.toContain('<script>');
    expect(svg).not.toContain('<image');
  });

  it('cuts what is endless and keeps within the sheet', () => {
    const { svg, height, alt } = threadPicture({
      ...READ,
      title: 'long '.repeat(400),
      bands: [{ ...M22, name: 'n'.repeat(3000), note: 'o'.repeat(3000) }],
    });
    expect(height).toBeLessThan(600);
    expect(alt.length).toBeLessThanOrEqual(1024);
    for (const { room, words } of textsIn(svg)) expect(room.x + room.width, words).toBeLessThanOrEqual(360);
  });
});

describe('its description', () => {
  it('says in words what is shown, with the values', () => {
    expect(threadPicture(READ).alt).toBe(
      'M22 × 1.5, almost certain. Diameter across, pitch upwards. ' +
        'Measured 21.90 ± 0.05 mm, pitch 1.50 ± 0.02 mm. ' +
        'M22 × 1.5: 21.73 to 21.97 mm at pitch 1.5 mm, fits. ' +
        '7/8-14 UNF: 21.92 to 22.18 mm at pitch 1.814 mm (14 tpi), does not fit.',
    );
  });

  it('stops at the end of a sentence', () => {
    const bands = Array.from({ length: 40 }, (_, index) => ({
      ...M22,
      name: `Thread ${index}`,
      fromMm: 21 - index / 10,
    }));
    const { alt } = threadPicture({ ...READ, bands });
    expect(alt.length).toBeLessThanOrEqual(1024);
    expect(alt).toMatch(/fits\.$/);
  });
});
