import { readFileSync } from 'node:fs';
import type { Facts, PaintedFigure, PaintedPaper, Table, Words } from './paper.ts';
import { TONE_WORD } from './paper.ts';

type Doc = PDFKit.PDFDocument;

const fontAt = (name: string): Buffer => readFileSync(new URL(`../../data/fonts/${name}`, import.meta.url));

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
export const MARGINS = { top: 54, bottom: 60, left: 56, right: 48 };
const GAP = 6;
const MOST_FIGURE = 300;
/** A row taller than this begins where it stands rather than on a page of its own. */
const TALL_ROW = 300;

/** What can be set onto the pages of a document, one thing under the other. */
export interface Page {
  title(paper: Pick<PaintedPaper, 'title' | 'subtitle'>): void;
  heading(words: string): void;
  words(words: Words): void;
  facts(facts: Facts): void;
  /** Sets a table, stopping after each row, so that a long one holds nobody up. */
  table(table: Table): Generator<void>;
  figure(figure: PaintedFigure): void;
  sectionEnd(): void;
  /** Title and page number at the foot of every page, once it is known how many there are; nothing is set after it. */
  feet(title: string): void;
}

/** Begins a document's first page. */
export function openPage(doc: Doc): Page {
  doc.registerFont('plain', fontAt('DejaVuSans.ttf')).registerFont('bold', fontAt('DejaVuSans-Bold.ttf'));
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
  const text = (words: string): void => void doc.text(words, MARGINS.left, doc.y, { width });
  const room = (needed: number): void => {
    if (doc.y + needed > bottom()) doc.addPage();
  };

  function* table({ head, shares, rows }: Omit<Table, 'kind'>): Generator<void> {
    const sum = shares.reduce((total, share) => total + share, 0);
    const columns = shares.map((share) => (width * share) / sum);
    const heightOf = (row: readonly string[]): number =>
      5 +
      Math.max(
        ...row.map((cell, index) => doc.heightOfString(cell || ' ', { width: (columns[index] ?? 0) - GAP })),
      );
    const line = (row: readonly string[], height: number, tag: 'TH' | 'TD'): void => {
      const top = doc.y;
      let x = MARGINS.left;
      row.forEach((cell, index) => {
        const at = x;
        const column = columns[index] ?? 0;
        tagged(tag, () => void doc.text(cell, at, top + 2, { width: column - GAP }));
        x += column;
      });
      // a cell longer than the page has turned it, and its end is where the pen stands
      doc.y = top + height > bottom() ? doc.y : top + height;
      rule(tag === 'TH' ? INK.head : INK.rule);
    };
    const heading = (): void => {
      if (head.length === 0) return;
      style('bold', 9, INK.head);
      line(head, heightOf(head), 'TH');
    };
    style('plain', 9, INK.text);
    room(Math.min(heightOf(rows[0] ?? [' ']), TALL_ROW) + 24);
    heading();
    for (const row of rows) {
      style('plain', 9, INK.text);
      const height = heightOf(row);
      if (doc.y + Math.min(height, TALL_ROW) > bottom()) {
        doc.addPage();
        heading();
        style('plain', 9, INK.text);
      }
      line(row, height, 'TD');
      yield;
    }
    doc.moveDown(0.8);
  }

  function rule(colour: string): void {
    doc.markContent('Artifact', { type: 'Layout' });
    doc
      .lineWidth(0.5)
      .strokeColor(colour)
      .moveTo(MARGINS.left, doc.y)
      .lineTo(MARGINS.left + width, doc.y)
      .stroke();
    doc.endMarkedContent();
  }

  return {
    title({ title, subtitle }) {
      style('bold', 22, INK.text);
      tagged('H1', () => text(title));
      style('plain', 10, INK.small);
      tagged('P', () => text(subtitle));
      doc.moveDown(1);
    },
    heading(words) {
      room(110);
      doc.outline.addItem(words);
      style('bold', 14, INK.head);
      tagged('H2', () => text(words));
      doc.moveDown(0.4);
    },
    words({ text: said, tone = 'plain' }) {
      const inTone = (): Doc => style('plain', 10, tone === 'plain' ? INK.text : INK[tone]);
      room(Math.min(60, inTone().heightOfString(said, { width })));
      inTone(); // a new page begins in black
      tagged('P', () => text(TONE_WORD[tone] + said));
      doc.moveDown(0.4);
    },
    facts({ facts }) {
      const rows = facts.map(([label, value]) => [label, value]);
      Array.from(table({ head: [], shares: [1, 2], rows }));
    },
    table,
    figure({ png, alt, width: w, height: h }) {
      const scale = Math.min(1, width / w, MOST_FIGURE / h);
      room(h * scale + GAP);
      const top = doc.y;
      const draw = (): void => void doc.image(Buffer.from(png), MARGINS.left, top, { width: w * scale });
      tagged('Figure', draw, { alt });
      doc.y = top + h * scale + 2 * GAP; // an image placed by hand does not move the pen
    },
    sectionEnd() {
      doc.moveDown(0.6);
    },
    feet(title) {
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
          { width, lineBreak: false, ellipsis: true },
        );
        doc.endMarkedContent();
      }
    },
  };
}
