import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface PdfText {
  readonly pages: readonly string[];
  /** Its bookmarks. */
  readonly chapters: readonly string[];
}

/** The text of each page of a PDF, as a reader of another make sees it, and its bookmarks. */
export async function readPdf(bytes: Uint8Array): Promise<PdfText> {
  const task = getDocument({ data: Uint8Array.from(bytes), useSystemFonts: false, verbosity: 0 });
  const document = await task.promise;
  const pages = await Promise.all(
    Array.from({ length: document.numPages }, async (_, index) => {
      const content = await (await document.getPage(index + 1)).getTextContent();
      return content.items.map((item) => ('str' in item ? item.str : '')).join(' ');
    }),
  );
  const outline = (await document.getOutline()) ?? [];
  await task.destroy();
  return { pages, chapters: outline.map(({ title }) => title) };
}
