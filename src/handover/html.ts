import type { Facts, PaintedFigure, PaintedPaper, PaintedSection, Table, Words } from './paper.ts';
import { TONE_WORD } from './paper.ts';

/**
 * Sets a paper as one HTML file that needs nothing beside it: figures are inside, nothing is fetched, no script runs. It
 * reads on a phone and prints on A4 or Letter.
 */
export function htmlOf({ title, subtitle, sections }: PaintedPaper): string {
  const contents = sections
    .map(({ heading }, index) => `<li><a href="#s${index + 1}">${escaped(heading)}</a></li>`)
    .join('');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'">
<title>${escaped(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<header><h1 dir="auto">${escaped(title)}</h1><p>${escaped(subtitle)}</p></header>
<nav aria-label="Contents"><ol>${contents}</ol></nav>
<main>${sections.map(sectionHtml).join('\n')}</main>
</body>
</html>
`;
}

function sectionHtml({ heading, blocks }: PaintedSection, index: number): string {
  return `<section id="s${index + 1}"><h2>${escaped(heading)}</h2>${blocks.map(blockHtml).join('\n')}</section>`;
}

function blockHtml(block: PaintedSection['blocks'][number]): string {
  switch (block.kind) {
    case 'words':
      return wordsHtml(block);
    case 'facts':
      return factsHtml(block);
    case 'table':
      return tableHtml(block);
    case 'figure':
      return figureHtml(block);
  }
}

function factsHtml({ facts }: Facts): string {
  const lines = facts.map(
    ([label, value]) => `<dt dir="auto">${escaped(label)}</dt><dd dir="auto">${escaped(value)}</dd>`,
  );
  return `<dl>${lines.join('')}</dl>`;
}

function wordsHtml({ text, tone = 'plain' }: Words): string {
  const word = TONE_WORD[tone];
  const lead = word === '' ? '' : `<strong>${word}</strong>`;
  return `<p class="${tone}" dir="auto">${lead}${escaped(text)}</p>`;
}

function tableHtml({ head, rows }: Table): string {
  const cells = (row: readonly string[], tag: 'th' | 'td'): string =>
    row
      .map((cell) => `<${tag}${tag === 'th' ? ' scope="col"' : ' dir="auto"'}>${escaped(cell)}</${tag}>`)
      .join('');
  const body = rows.map((row) => `<tr>${cells(row, 'td')}</tr>`).join('\n');
  return `<div class="wide"><table><thead><tr>${cells(head, 'th')}</tr></thead><tbody>${body}</tbody></table></div>`;
}

function figureHtml({ png, alt, width, height }: PaintedFigure): string {
  const data = Buffer.from(png).toString('base64');
  return `<figure><img alt="${escaped(alt)}" width="${width}" height="${height}" src="data:image/png;base64,${data}"></figure>`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);
}

const STYLE = `
:root { color-scheme: light dark; --sheet: #f3efe6; --rule: #d8d1c2; --ink: #1c2225; --blue: #1d3a6e; --red: #a63a24; --brass: #8a6410; }
@media (prefers-color-scheme: dark) { :root { --sheet: #15191b; --rule: #2a3134; --ink: #e9e4d8; --blue: #8fb0ea; --red: #f08a6c; --brass: #d9b25a; } }
@media print { :root { --sheet: #fff; --ink: #000; } nav { display: none; } h2 { break-after: avoid; } tr, figure { break-inside: avoid; } thead { display: table-header-group; } }
body { margin: 0 auto; max-width: 52rem; padding: 1rem; background: var(--sheet); color: var(--ink); font: 16px/1.5 system-ui, sans-serif; }
h1 { font-size: 32px; line-height: 1.2; margin: 0; }
h2 { font-size: 20px; border-bottom: 2px solid var(--blue); margin: 2rem 0 .5rem; }
a { color: var(--blue); }
dl { display: grid; grid-template-columns: minmax(8rem, 1fr) 2fr; margin: 0; }
dt, dd { margin: 0; padding: .25rem 0; border-bottom: 1px solid var(--rule); overflow-wrap: anywhere; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: 14px; font-variant-numeric: tabular-nums; }
th, td { text-align: start; vertical-align: top; padding: .25rem .5rem .25rem 0; border-bottom: 1px solid var(--rule); }
.open { color: var(--brass); }
.caution { color: var(--red); }
figure { margin: 1rem 0; }
img { max-width: 100%; height: auto; }
`;
