import { describe, expect, it } from 'vitest';
import { painted } from '../../../src/handover/painted.ts';
import type { Block, Paper } from '../../../src/handover/paper.ts';
import { pdfOf } from '../../../src/handover/pdf.ts';
import { readPdf } from '../../support/read-pdf.ts';

const svg =
  '<svg xmlns="http://www.w3.org/2000/svg" width="400" height="300"><rect width="400" height="300" fill="#fff"/></svg>';
const figure: Block = {
  kind: 'figure',
  drawing: { name: 'a.png', alt: 'A white field', svg, width: 400, height: 300 },
};

const set = async (...blocks: readonly Block[]) => {
  const paper: Paper = { title: 'Coupe', subtitle: 'Its record', sections: [{ heading: 'Things', blocks }] };
  return readPdf(await pdfOf(await painted(paper)));
};

describe('a paper set as a PDF', () => {
  it('gives each figure a place of its own', async () => {
    const { pages } = await set(figure, figure, figure, { kind: 'words', text: 'After them.' });
    // three of 300 points and a heading are more than the 728 points of a page
    expect(pages).toHaveLength(2);
    expect(pages[1]).toContain('After them.');
  });

  it('says what is open and what could hurt in a word, not by colour alone', async () => {
    const { pages } = await set(
      { kind: 'words', text: 'a plug is missing', tone: 'open' },
      { kind: 'words', text: 'fuel under pressure', tone: 'caution' },
    );
    expect(pages[0]).toContain('Open: a plug is missing');
    expect(pages[0]).toContain('Caution: fuel under pressure');
  });

  it('shows Greek, accents and signs of the trade', async () => {
    const { pages } = await set({
      kind: 'facts',
      facts: [['λ', '0.86 at 92 °C, Ø 12 mm, 5 µm, Ölwanne, žluť']],
    });
    // the font has one glyph for the micro sign and for mu
    expect(pages[0]?.normalize('NFKC')).toContain('0.86 at 92 °C, Ø 12 mm, 5 μm, Ölwanne, žluť');
  });

  it('goes on with a cell longer than a page', async () => {
    const { pages } = await set({
      kind: 'table',
      head: ['What', 'Said'],
      shares: [1, 1],
      rows: [
        ['long', 'word '.repeat(1500)],
        ['last', 'row'],
      ],
    });
    expect(pages.join(' ').match(/word/g)).toHaveLength(1500);
    expect(pages.at(-1)).toContain('row');
  });
});
