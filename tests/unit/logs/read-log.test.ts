import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { Rows } from '../../../src/calc/fuelling/drive.ts';
import { type OpenLog, openLog } from '../../../src/logs/read-log.ts';
import { modelOf, type Row, runModel } from '../../support/model-engine/engine.ts';
import { logStyles } from '../../support/model-engine/log-styles.ts';
import { bytesOf, latin1, logText, utf16 } from '../../support/model-engine/log-text.ts';

const rows: readonly Row[] = [
  ...runModel(modelOf(3, { seconds: 60, rowsPerS: 20, faults: false, coldStart: false })),
];

/** The bytes of a text, in pieces of this many. */
async function* pieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

async function readAll(bytes: AsyncIterable<Uint8Array>) {
  const log = await openLog({
    bytes,
    assigned: () => ({}),
    stoichiometricAfr: 14.7,
    breathe: async () => {},
  });
  expect(log.recognised.open).toEqual([]);
  const batches: Rows[] = [];
  for await (const batch of log.rows()) batches.push(batch);
  const column = (channel: keyof Rows['columns']): number[] =>
    batches.flatMap(({ columns, count }) => [...(columns[channel] ?? new Float64Array(count))]);
  return { log, column };
}

const readText = (text: string) => readAll(pieces(new TextEncoder().encode(text), 1000));

const plain = (body: string, header = 'Time (s),RPM,MAP (kPa),Lambda') => `${header}\n${body}\n`;
const three = '0.0,900,40,1.00\n0.1,910,41,1.01\n0.2,920,42,1.02';

describe.each(Object.entries(logStyles))('a log in this style: %s', (_, style) => {
  it('is read row by row as it was written', async () => {
    const { column, log } = await readAll(bytesOf(logText(rows, style)));
    expect(log.tally.rows).toBe(rows.length);
    const first = rows[0]?.timeS ?? 0;
    rows.forEach((row, index) => {
      expect(column('timeS')[index] ?? Number.NaN).toBeCloseTo(row.timeS - first, 2);
      expect(column('speedRpm')[index]).toBe(row.speedRpm);
      expect(column('loadKPa')[index] ?? Number.NaN).toBeCloseTo(row.loadKPa, 1);
      expect(column('lambda')[index] ?? Number.NaN).toBeCloseTo(row.lambda, 2);
      if (index > 100) return;
      expect(column('targetLambda')[index] ?? Number.NaN).toBeCloseTo(row.targetLambda, 2);
      expect(column('trimRatio')[index] ?? Number.NaN).toBeCloseTo(row.trimRatio, 3);
      expect(column('coolantC')[index] ?? Number.NaN).toBeCloseTo(row.coolantC, 1);
    });
  });
});

describe('a log', () => {
  const style = logStyles['German, semicolons, decimal commas, a row of units'];
  const text = style === undefined ? '' : [...logText(rows, style)].join('');

  it.each<[string, (text: string) => Uint8Array]>([
    ['UTF-8 with its mark', (all) => new TextEncoder().encode(`\ufeff${all}`)],
    ['UTF-16, little end first, with its mark', (all) => utf16(`\ufeff${all}`)],
    ['UTF-16 without a mark', utf16],
    ['UTF-16, big end first', (all) => new Uint8Array(Buffer.from(`\ufeff${all}`, 'utf16le').swap16())],
    ['Western European', latin1],
    ['gzip', (all) => new Uint8Array(gzipSync(all))],
    ['gzip of Western European', (all) => new Uint8Array(gzipSync(latin1(all)))],
  ])('in %s is read, in whatever pieces it arrives', async (_, encode) => {
    for (const size of [1_000_000, 4_096, 333]) {
      const { column, log } = await readAll(pieces(encode(text), size));
      expect(log.tally.rows).toBe(rows.length);
      expect(column('coolantC')[5] ?? Number.NaN).toBeCloseTo(rows[5]?.coolantC ?? 0, 1);
    }
  });

  it.each([
    ['blank', '0.1,,41,1.01'],
    ['not a number', '0.1,NaN,41,1.01'],
    ['a dash', '0.1,-,41,1.01'],
    ['a word', '0.1,n/a,41,1.01'],
    ['beyond what there is', '0.1,65535,41,1.01'],
  ])('has a gap where a reading is %s', async (_, middle) => {
    const { column } = await readText(plain(`0.0,900,40,1.00\n${middle}\n0.2,920,42,1.02`));
    expect(column('speedRpm')).toEqual([900, Number.NaN, 920]);
    expect(column('loadKPa')).toEqual([40, 41, 42]);
  });

  it('may say the header again, and put its columns in another order from there on', async () => {
    const again = `${three}\nTime (s),RPM,MAP (kPa),Lambda\n0.3,930,43,1.03\nTime (s),Lambda,MAP (kPa),RPM\n0.4,1.04,44,940`;
    const { column, log } = await readText(plain(again));
    expect(log.tally.repeatedHeaders).toBe(2);
    expect(column('speedRpm')).toEqual([900, 910, 920, 930, 940]);
    expect(column('lambda')).toEqual([1, 1.01, 1.02, 1.03, 1.04]);
  });

  it('may have lines that are no rows, and rows that are too short or too long', async () => {
    const { column, log } = await readText(
      plain(`${three}\n\n# a lap\nmarker: pit lane\n0.3,930,43,1.03,9\n0.4,940,44`),
    );
    expect(column('speedRpm')).toEqual([900, 910, 920, 930, 940]);
    expect(column('lambda').slice(3)).toEqual([1.03, Number.NaN]);
    expect(log.tally.notRows).toBe(2);
  });

  it('may begin with anything before its header', async () => {
    const before = '"The hill, run 3"\nDriver,Cleo\nWeather,dry\n# sensor: wideband, "bung 2\n\n';
    const { column } = await readText(before + plain(three));
    expect(column('speedRpm')).toEqual([900, 910, 920]);
  });

  it('may have its header in a comment', async () => {
    const { column } = await readText(plain(three, '# Time (s),RPM,MAP (kPa),Lambda'));
    expect(column('speedRpm')).toEqual([900, 910, 920]);
  });

  it('may have names that are units as well', async () => {
    const { column } = await readText(plain(three, 'sec,rpm,kPa,lambda'));
    expect(column('speedRpm')).toEqual([900, 910, 920]);
    expect(column('loadKPa')).toEqual([40, 41, 42]);
  });

  it('may have units below its names that are not all known', async () => {
    const { column, log } = await readText(
      plain(`s,1/min,mbar,-\n0.0,900,400,1.00\n0.1,910,410,1.01`, 'Time,Revs,Manifold pressure,Lambda'),
    );
    expect(column('loadKPa')).toEqual([40, 41]);
    expect(log.layout.units).toEqual(['s', '1/min', 'mbar', '-']);
  });

  it('may have no end to its last line', async () => {
    const { column } = await readText(plain(three).trimEnd());
    expect(column('lambda')).toEqual([1, 1.01, 1.02]);
  });
});

describe('the clock of a log', () => {
  const at = (cells: readonly string[], header = 'Time,RPM,MAP (kPa),Lambda', delimiter = ',') =>
    readText(`${header}\n${cells.map((cell, row) => [cell, 900 + row, 40, 1].join(delimiter)).join('\n')}\n`);

  it.each<[string, readonly string[], readonly number[]]>([
    ['seconds', ['10.0', '10.1', '10.3'], [0, 0.1, 0.3]],
    ['milliseconds by their steps', ['1000', '1100', '1300'], [0, 0.1, 0.3]],
    ['microseconds by their steps', ['1000000', '1100000', '1300000'], [0, 0.1, 0.3]],
    ['a time of day', ['09:59:59.900', '10:00:00.000', '10:00:00.200'], [0, 0.1, 0.3]],
    ['a time of day past midnight', ['23:59:59.900', '00:00:00.000', '00:00:00.200'], [0, 0.1, 0.3]],
    ['twelve hours and their half', ['11:59:59.9 AM', '12:00:00.0 PM', '12:00:00.2 PM'], [0, 0.1, 0.3]],
    ['minutes and seconds', ['1:59.9', '2:00.0', '2:00.2'], [0, 0.1, 0.3]],
    [
      'a date with its time',
      ['2026-05-04T10:00:00.000Z', '2026-05-04T10:00:00.100Z', '2026-05-04T10:00:00.300Z'],
      [0, 0.1, 0.3],
    ],
    ['an epoch in seconds', ['1778000000.0', '1778000000.1', '1778000000.3'], [0, 0.1, 0.3]],
    ['an epoch in milliseconds', ['1778000000000', '1778000000100', '1778000000300'], [0, 0.1, 0.3]],
    ['days of a spreadsheet', ['46146.5', '46146.5000011574', '46146.5000034722'], [0, 0.1, 0.3]],
  ])('counts in %s', async (_, cells, seconds) => {
    const { column } = await at(cells);
    const found = column('timeS');
    expect(found).toHaveLength(seconds.length);
    seconds.forEach((time, row) => void expect(found[row] ?? Number.NaN).toBeCloseTo(time, 3));
  });

  it('is set apart where it begins anew, and never runs backwards', async () => {
    const { column, log } = await at(['50.0', '50.1', '0.0', '0.1', '0.2']);
    expect(log.tally.clockResets).toBe(1);
    const found = column('timeS');
    expect(found.every((time, row) => row === 0 || time > (found[row - 1] ?? 0))).toBe(true);
    expect((found[2] ?? 0) - (found[1] ?? 0)).toBeGreaterThan(5);
    expect((found[4] ?? 0) - (found[2] ?? 0)).toBeCloseTo(0.2, 6);
  });

  it('is set apart where it leaps by hours', async () => {
    const { column, log } = await at(['50.0', '50.1', '99999.0', '99999.1']);
    expect(log.tally.clockJumps).toBe(1);
    expect(column('timeS')[3]).toBeLessThan(100);
  });

  it('of whole seconds is spread over the rows of each', async () => {
    const cells = Array.from({ length: 20 }, (_, row) => `10:00:0${Math.floor(row / 10)}`);
    const { column } = await at([...cells, '10:00:02']);
    const found = column('timeS');
    found.slice(0, 21).forEach((time, row) => void expect(time).toBeCloseTo(row / 10, 6));
  });

  it('leaves a row out that comes too late', async () => {
    const { column, log } = await at(['10.0', '12.0', '12.1', '12.05', '12.2']);
    expect(column('timeS').map((time) => Math.round(time * 100))).toEqual([0, 200, 210, 220]);
    expect(log.tally.withoutTime).toBe(1);
  });
});

describe('a file that is none', () => {
  it.each<[string, Uint8Array, string]>([
    ['empty', new Uint8Array(0), 'is empty'],
    ['a letter', new TextEncoder().encode('Dear crew,\nthe gasket has come.\n'), 'no columns of numbers'],
    ['numbers without names', new TextEncoder().encode('1,2,3\n4,5,6\n7,8,9\n'), 'no columns of numbers'],
    ['a spreadsheet', Uint8Array.of(0x50, 0x4b, 3, 4, 1, 2, 3, 4), 'zip archive or a spreadsheet'],
    ['a picture', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10), 'picture'],
    ['bytes', Uint8Array.of(1, 0, 3, 7, 9, 200, 3, 4, 5, 6, 7, 8), 'no text'],
    [
      'a gzip cut off',
      new Uint8Array(gzipSync('Time,RPM\n1,2\n'.repeat(999))).subarray(0, 40),
      'cannot be unpacked',
    ],
    [
      'gzip with rubbish inside',
      Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 3, 1, 2, 3, 4, 5),
      'cannot be unpacked',
    ],
  ])('is refused: %s', async (_, bytes, words) => {
    await expect(readAll(pieces(bytes, 1000))).rejects.toThrow(words);
  });

  it('lets the file go when nobody reads on', async () => {
    let closed = false;
    async function* endless(): AsyncGenerator<Uint8Array> {
      try {
        yield new TextEncoder().encode('Time (s),RPM,MAP (kPa),Lambda\n');
        for (let row = 0; ; row++) yield new TextEncoder().encode(`${row / 10},900,40,1\n`.repeat(50));
      } finally {
        closed = true;
      }
    }
    const log: OpenLog = await openLog({
      bytes: endless(),
      assigned: () => ({}),
      stoichiometricAfr: 14.7,
      breathe: async () => {},
    });
    await log.close();
    expect(closed).toBe(true);
  });
});
