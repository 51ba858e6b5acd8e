import { breather } from '../core/breathe.ts';
import type { PaintedPaper } from './paper.ts';
import { MARGINS, openPage } from './pdf-page.ts';

/**
 * Sets a paper as a PDF of A4 pages: a heading line on each, tables that go on over pages with their headings, figures as
 * wide as the text, bookmarks for the sections, and a structure that a screen reader can follow. A long one lets others in
 * every few milliseconds.
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
  const breathe = breather();
  const page = openPage(doc);
  page.title(paper);
  for (const { heading, blocks } of paper.sections) {
    page.heading(heading);
    for (const block of blocks) {
      switch (block.kind) {
        case 'words':
          page.words(block);
          break;
        case 'facts':
          page.facts(block);
          break;
        case 'table':
          for (const _row of page.table(block)) await breathe();
          break;
        case 'figure':
          page.figure(block);
          break;
      }
      await breathe();
    }
    page.sectionEnd();
  }
  page.feet(paper.title);
  doc.end();
  return done;
}
