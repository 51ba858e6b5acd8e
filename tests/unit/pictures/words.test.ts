import { describe, expect, it } from 'vitest';
import { fitted, line, paragraph, widthOf, wrapped } from '../../../src/pictures/words.ts';

const type = { size: 13 };

describe('words set in the bundled face', () => {
  it('are as wide as its published advances say: 2048 units to the em, figures 1303 each', () => {
    // DejaVu Sans 2.37, table hmtx: every figure 1303 units, so that figures stand under one another
    for (const figure of '0123456789') expect(widthOf(figure, { size: 2048 })).toBeCloseTo(1303, 0);
    expect(widthOf('1111', type)).toBeCloseTo(widthOf('8096', type), 6);
  });

  it('break at spaces only, and never at an unbroken one', () => {
    expect(wrapped('aaa bbb ccc', widthOf('aaa bbb', type), type, 9)).toEqual(['aaa bbb', 'ccc']);
    expect(wrapped('21.90\u00a0mm wide', widthOf('21.90', type), type, 9)[0]).not.toBe('21.90');
    expect(wrapped('', 100, type, 2)).toEqual([]);
  });

  it('are cut where they do not fit, and the cut is seen', () => {
    const lines = wrapped('one two three four five six seven', widthOf('one two t', type), type, 2);
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/…$/);
    for (const each of lines) expect(widthOf(each, type)).toBeLessThanOrEqual(widthOf('one two t', type));
    expect(fitted('M22', 100, type)).toBe('M22');
    expect(widthOf(fitted('W'.repeat(500), 80, type), type)).toBeLessThanOrEqual(80);
  });

  it('end where a paragraph says', () => {
    const one = paragraph('a', { x: 0, y: 10, width: 100 }, type, 3);
    const two = paragraph(`${'a'.repeat(14)} ${'b'.repeat(14)}`, { x: 0, y: 10, width: 120 }, type, 3);
    expect(two.end - 10).toBeCloseTo(2 * (one.end - 10));
  });

  it('are escaped', () => {
    expect(line('<b>', { x: 0, y: 0 }, type)).toContain('>&lt;b&gt;</text>');
  });
});
