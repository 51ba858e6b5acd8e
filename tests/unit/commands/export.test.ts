import { describe, expect, it } from 'vitest';
import type { Answer } from '../../../src/core/reply.ts';
import { readCsv } from '../../../src/exchange/csv.ts';
import { packRecordFile, readRecordFile, writeRecordFile } from '../../../src/exchange/record-file.ts';
import { type CrewBot, cardIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { type PdfText, readPdf } from '../../support/read-pdf.ts';

const HOSTILE = '=HYPERLINK("http://x","<b>gasket</b>")';

async function build(): Promise<CrewBot> {
  const bot = await openCrewBot();
  await bot.run('build name', { name: 'Hill-climb séven' });
  await bot.run('build spec', { what: 'bore', value: '81 mm' });
  const order = { supplier: 'Norvale', due: '2026-12-04', price: '84.50' };
  await bot.run('order place', { what: HOSTILE, ...order });
  await bot.run('order place', { what: 'Ölfilter', ...order, quantity: 3 });
  await bot.run('order arrived', { order: '2', quantity: 1 });
  return bot;
}

function fileOf({ files = [] }: Answer, ending: string): string {
  const found = files.find(({ name }) => name.endsWith(ending));
  if (found === undefined)
    throw new Error(`no file …${ending} among ${files.map(({ name }) => name).join(', ')}`);
  return new TextDecoder('utf-8', { ignoreBOM: true }).decode(found.bytes);
}

const pdfOf = ({ files = [] }: Answer): Promise<PdfText> =>
  readPdf(files.find(({ name }) => name.endsWith('.pdf'))?.bytes ?? new Uint8Array());

describe('/export csv', () => {
  it('writes one file for each kind of thing, under the build’s name', async () => {
    const card = cardIn(await (await build()).run('export csv'));
    expect(card.files?.map(({ name }) => name)).toEqual([
      'hill-climb-seven-orders.csv',
      'hill-climb-seven-parts.csv',
      'hill-climb-seven-specification.csv',
    ]);
    expect(card.working).toEqual(['orders: 2 lines', 'parts: 2 lines', 'specification: 1 line']);
  });

  it('keeps text from running as a formula, leaves numbers numbers, and reads back as it was', async () => {
    const card = cardIn(await (await build()).run('export csv'));
    const text = fileOf(card, 'orders.csv');
    expect(text.startsWith('\uFEFFnumber,what,')).toBe(true);
    expect(text).toContain(`"'=HYPERLINK`);
    const [head = [], first = [], second = []] = readCsv(text);
    const cell = (row: readonly string[], name: string) => row[head.indexOf(name)];
    expect(cell(first, 'what')).toBe(HOSTILE);
    expect(cell(second, 'what')).toBe('Ölfilter');
    expect([cell(second, 'received'), cell(second, 'still to come'), cell(second, 'price')]).toEqual([
      '1',
      '2',
      '84.5',
    ]);
  });

  it('is a list that /import orders reads', async () => {
    const bot = await build();
    const lines = fileOf(cardIn(await bot.run('export csv')), 'orders.csv');
    const other = await openCrewBot();
    const card = cardIn(await other.run('import orders', { lines }));
    expect(card.result).toBe('2 orders to write down');
  });
});

describe('/export json', () => {
  it('holds every recorded row', async () => {
    const bot = await build();
    const card = cardIn(await bot.run('export json'));
    const {
      kind: _,
      madeOn,
      team: __,
      ...whole
    } = readRecordFile(card.files?.[0]?.bytes ?? new Uint8Array());
    expect(madeOn).toBe('2026-11-23');
    expect(whole).toEqual(bot.teams.at(TEAM).whole.read());
  });
});

describe('a long record', () => {
  const text = writeRecordFile(
    {
      step: '0001',
      tables: { note: Array.from({ length: 60_000 }, (_, id) => ({ id, words: `${id} `.repeat(20) })) },
    },
    { on: '2026-11-23', team: 'Crew' },
  );

  it('is packed, and read back as it was', () => {
    const { name, bytes } = packRecordFile('record', text);
    expect(name).toBe('record.json.gz');
    expect(bytes.length).toBeLessThan(text.length / 5);
    expect(readRecordFile(bytes).tables['note']).toHaveLength(60_000);
  });

  it.each([
    ['cut short', (bytes: Uint8Array) => bytes.subarray(0, bytes.length / 2)],
    ['not a gzip behind its mark', () => Uint8Array.of(0x1f, 0x8b, 1, 2, 3)],
  ])('%s is refused in words', (_, damage) => {
    const { bytes } = packRecordFile('record', text);
    expect(() => readRecordFile(damage(bytes))).toThrow('not a record written by /export json');
  });
});

describe('/export papers', () => {
  it('sets the record as a PDF with its chapters, what is open first', async () => {
    const card = cardIn(await (await build()).run('export papers'));
    const { pages, chapters } = await pdfOf(card);
    const text = pages.join(' ');
    expect(chapters.slice(0, 3)).toEqual(['Open points', 'Specification', 'Stages']);
    for (const chapter of chapters) expect(text).toContain(chapter);
    for (const said of [
      'Hill-climb séven',
      'as it stood on Mon 23 Nov 2026',
      '81 mm',
      'Ölfilter',
      'GBP 84.50',
    ]) {
      expect(text).toContain(said);
    }
  });

  it('sets the same as one HTML file that runs nothing and fetches nothing', async () => {
    const html = fileOf(cardIn(await (await build()).run('export papers')), '.html');
    expect(html).toContain('&#60;b&#62;gasket&#60;/b&#62;');
    expect(html).not.toMatch(/<b>gasket|<script|src="http|href="http|@import|url\(/);
    expect(html).toContain(`default-src 'none'`);
  });

  it('numbers its pages and repeats a table’s headings on each', async () => {
    const bot = await openCrewBot();
    const rows = Array.from({ length: 130 }, (_, index) => `bolt ${index},Pellgate,2026-12-04`);
    const card = cardIn(await bot.run('import orders', { lines: ['what,from,due', ...rows].join('\n') }));
    await bot.press(`import/write?id=${String(card.data['proposal'])}`);
    const { pages } = await pdfOf(cardIn(await bot.run('export papers')));
    expect(pages.length).toBeGreaterThan(3);
    for (const [index, page] of pages.entries()) {
      expect(page).toContain(`page ${index + 1} of ${pages.length}`);
    }
    const ofTable = pages.filter((page) => page.includes('Pellgate'));
    expect(ofTable.length).toBeGreaterThan(1);
    for (const page of ofTable) expect(page).toContain('Origin');
    for (let bolt = 0; bolt < 130; bolt++) expect(pages.join(' ')).toContain(`bolt ${bolt} `);
  });

  it.each(['csv', 'papers'])('says what to do where there is no build: %s', async (what) => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run(`export ${what}`)).message).toContain('Ask in the channel of a build.');
  });

  it('has no tables of a build that is only a name', async () => {
    const bot = await openCrewBot();
    await bot.run('build name', { name: 'Coupe' });
    expect(refusalIn(await bot.run('export csv')).message).toContain(
      'Nothing but its name is recorded of Coupe',
    );
  });
});
