import { readFileSync } from 'node:fs';
import type { Fact } from '../core/reply.ts';
import type { PaintedFigure, PaintedPaper, PaintedSection, Table, Words } from './paper.ts';
import { TONE_WORD } from './paper.ts';

type Doc = PDFKit.PDFDocument;

const fontAt = (name: string): Buffer => readFileSync(new URL(`../../data/fonts/${name}`, import.meta.url));
const FONTS = { plain: fontAt('DejaVuSans.ttf'), bold: fontAt('DejaVuSans-Bold.ttf') };

/** Black on paper; the state's colour beside its words, never instead of them. */
const INK = {
  text: '#1c2225',
  head: '#1d3a6e',
  rule: '#d8d1c2',
  open: '#8a6410',
  caution: '#a63a24',
  small: '#5a6165',
};

/** Points. A4 with room for a binder's holes. */
const MARGINS = { top: 54, bottom: 60, left: 56, right: 48 };
const GAP = 6;
const MOST_FIGURE = 300;

/**
 * Sets a paper as a PDF of A4 pages: a heading line on each, tables that go on over pages with their headings, figures as
 * wide as the text, bookmarks for the sections, and a structure that a screen reader can follow.
 */
export async function pdfOf(paper: PaintedPaper): Promise<Uint8Array> {
  const { default: PDFDocument } = await import('pdfkit'); // 140 ms that a start does not need
  const doc = new PDFDocument({
    size: 'A4',
    margins: MARGINS,
    bufferPages: true,
    tagged: true,
    displayTitle: true,
    lang: 'en',
    pdfVersion: '1.7',
    info: { Title: paper.title, Subject: paper.subtitle },
  });
  const chunks: Uint8Array[] = [];
  const done = new Promise<Uint8Array>((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => void chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
  });
  doc.registerFont('plain', FONTS.plain).registerFont('bold', FONTS.bold);
  const set = setter(doc);
  set.title(paper);
  for (const section of paper.sections) set.section(section);
  set.feet(paper.title);
  doc.end();
  return done;
}

function setter(doc: Doc) {
  const root = doc.struct('Document');
  doc.addStructure(root);
  const width = doc.page.width - MARGINS.left - MARGINS.right;
  const bottom = (): number => doc.page.height - MARGINS.bottom;

  /** Sets what `draw` draws as one element of the structure. */
  const tagged = (tag: string, draw: () => void, attributes: { readonly alt?: string } = {}): void => {
    root.add(doc.struct(tag, attributes, [draw]));
  };
  const style = (font: 'plain' | 'bold', size: number, colour: string): Doc =>
    doc.font(font).fontSize(size).fillColor(colour);
  const text = (words: string, options: PDFKit.Mixins.TextOptions = {}): void =>
    void doc.text(words, MARGINS.left, doc.y, { width, ...options });
  const room = (needed: number): void => {
    if (doc.y + needed > bottom()) doc.addPage();
  };

  const words = ({ text: said, tone = 'plain' }: Words): void => {
    const colour = tone === 'plain' ? INK.text : INK[tone];
    style('plain', 10, colour);
    room(Math.min(60, doc.heightOfString(said, { width })));
    tagged('P', () => text(TONE_WORD[tone] + said));
    doc.moveDown(0.4);
  };

  const facts = (all: readonly Fact[]): void =>
    table({ kind: 'table', head: [], shares: [1, 2], rows: all.map(([label, value]) => [label, value]) });

  const table = ({ head, shares, rows }: Table): void => {
    const sum = shares.reduce((total, share) => total + share, 0);
    const widths = shares.map((share) => (width * share) / sum);
    const heightOf = (row: readonly string[]): number =>
      Math.max(
        ...row.map((cell, index) => doc.heightOfString(cell || ' ', { width: (widths[index] ?? 0) - GAP })),
      ) + 5;
    const line = (row: readonly string[], font: 'plain' | 'bold', tag: 'TH' | 'TD'): void => {
      style(font, 9, font === 'bold' ? INK.head : INK.text);
      const height = heightOf(row);
      const top = doc.y;
      let x = MARGINS.left;
      row.forEach((cell, index) => {
        const at = x;
        const cellWidth = (widths[index] ?? 0) - GAP;
        tagged(tag, () => void doc.text(cell, at, top + 2, { width: cellWidth }));
        x += widths[index] ?? 0;
      });
      doc.y = top + height;
      doc.markContent('Artifact', { type: 'Layout' });
      doc
        .lineWidth(0.5)
        .strokeColor(font === 'bold' ? INK.head : INK.rule)
        .moveTo(MARGINS.left, doc.y)
        .lineTo(MARGINS.left + width, doc.y)
        .stroke();
      doc.endMarkedContent();
    };
    const heading = (): void => {
      if (head.length > 0) line(head, 'bold', 'TH');
    };
    style('plain', 9, INK.text);
    room(heightOf(rows[0] ?? [' ']) + 24);
    heading();
    for (const row of rows) {
      style('plain', 9, INK.text);
      if (doc.y + Math.min(heightOf(row), 300) > bottom()) {
        doc.addPage();
        heading();
      }
      line(row, 'plain', 'TD');
    }
    doc.moveDown(0.8);
  };

  const figure = ({ png, alt, width: w, height: h }: PaintedFigure): void => {
    const scale = Math.min(1, width / w, MOST_FIGURE / h);
    room(h * scale + GAP);
    const top = doc.y;
    tagged('Figure', () => void doc.image(Buffer.from(png), MARGINS.left, top, { width: w * scale }), {
      alt,
    });
    doc.y = top + h * scale + 2 * GAP; // an image placed by hand does not move the pen
  };

  return {
    title({ title, subtitle }: PaintedPaper): void {
      style('bold', 22, INK.text);
      tagged('H1', () => text(title));
      style('plain', 10, INK.small);
      tagged('P', () => text(subtitle));
      doc.moveDown(1);
    },
    section({ heading, blocks }: PaintedSection): void {
      room(110);
      doc.outline.addItem(heading);
      style('bold', 14, INK.head);
      tagged('H2', () => text(heading));
      doc.moveDown(0.4);
      for (const block of blocks) {
        switch (block.kind) {
          case 'words':
            words(block);
            break;
          case 'facts':
            facts(block.facts);
            break;
          case 'table':
            table(block);
            break;
          case 'figure':
            figure(block);
            break;
        }
      }
      doc.moveDown(0.6);
    },
    /** Title and page number at the foot of every page, once it is known how many there are. */
    feet(title: string): void {
      root.end();
      const { start, count } = doc.bufferedPageRange();
      for (let page = start; page < start + count; page++) {
        doc.switchToPage(page);
        doc.page.margins.bottom = 0; // else writing below the margin begins a page of its own
        doc.markContent('Artifact', { type: 'Pagination' });
        style('plain', 8, INK.small).text(
          `${title}, page ${page + 1} of ${count}`,
          MARGINS.left,
          doc.page.height - 40,
          {
            width,
            lineBreak: false,
            ellipsis: true,
          },
        );
        doc.endMarkedContent();
      }
    },
  };
}
