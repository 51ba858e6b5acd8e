import { describe, expect, it } from 'vitest';
import { element, escaped } from '../../../src/pictures/svg.ts';

describe('an SVG element', () => {
  it('leaves undefined attributes out and cuts numbers to hundredths', () => {
    expect(element('line', { x1: 1 / 3, y1: 2, stroke: undefined })).toBe('<line x1="0.33" y1="2"/>');
    expect(element('g', {}, '<a/>', '<b/>')).toBe('<g><a/><b/></g>');
  });

  it('refuses a place that is no number, which would draw nothing without a word', () => {
    expect(() => element('rect', { x: Number.NaN })).toThrow('a place that is no number: NaN');
    expect(() => element('rect', { x: Infinity })).toThrow('a place that is no number: Infinity');
  });
});

describe('words in a drawing', () => {
  it('are shown, not obeyed', () => {
    expect(escaped('</text><script>alert("x")</script>&amp;')).toBe(
      '&lt;/text&gt;&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt;&amp;amp;',
    );
    expect(element('rect', { fill: '"/><image href="file:///etc/passwd' })).toBe(
      '<rect fill="&quot;/&gt;&lt;image href=&quot;file:///etc/passwd"/>',
    );
  });

  it('lose what XML cannot hold', () => {
    expect(escaped('a\u0000b\u001bc\uffff')).toBe('abc');
    expect(escaped('half a pair \ud800')).toBe('half a pair \ufffd');
  });
});
