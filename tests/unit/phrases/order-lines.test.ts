import { describe, expect, it } from 'vitest';
import { readCountedNames } from '../../../src/phrases/counted-names.ts';
import { asSeveral, holdsSeveral, readOrderLines } from '../../../src/phrases/order-lines.ts';

function only(typed: string) {
  const read = readOrderLines(typed);
  if (read.verdict !== 'read') throw new Error(JSON.stringify(read));
  const [line, ...more] = read.lines;
  if (line === undefined || more.length > 0) throw new Error(`${read.lines.length} lines`);
  return line;
}

describe('a line of an order', () => {
  it.each([
    ['head gasket 84.50', 'head gasket', 1, '84.50', false],
    ['head gasket', 'head gasket', 1, null, false],
    ['M8 bolt x10 12', 'M8 bolt', 10, '12', false],
    ['M8 bolt 10 pcs', 'M8 bolt', 10, null, false],
    ['4 x sump plug washer', 'sump plug washer', 4, null, false],
    ['2 off head gasket @ 40 each', 'head gasket', 2, '40', true],
    ['stud M10 x 1.25 8 pcs 3.90 each', 'stud M10 x 1.25', 8, '3.90', true],
    ['stud M10 x 1.25 x8 31.20', 'stud M10 x 1.25', 8, '31.20', false],
    ['M8 x 40 bolt x10 12', 'M8 x 40 bolt', 10, '12', false],
    ['copper washer 14x18 x6 3.20', 'copper washer 14x18', 6, '3.20', false],
    ['oil filter £8', 'oil filter', 1, '£8', false],
    ['oil filter EUR 8', 'oil filter', 1, 'EUR 8', false],
    ['oil filter 8 €', 'oil filter', 1, '8 €', false],
    ['gasket = 12', 'gasket', 1, '12', false],
    ['- oil filter 8.20', 'oil filter', 1, '8.20', false],
    ['10 × washer 3,50', 'washer', 10, '3,50', false],
    ['hose 19 mm', 'hose 19 mm', 1, null, false],
    ['"M8 x 10" x4 @ 12', 'M8 x 10', 4, '12', false],
    ['"3 way valve" 12.00', '3 way valve', 1, '12.00', false],
    ['"3/8" hose" x2', '3/8" hose', 2, null, false],
  ])('%s', (typed, name, quantity, price, each) => {
    expect(only(typed)).toEqual({ name, quantity, price, each });
  });

  it.each([
    ['oil filter 8', ['It costs 8', '8 of them', 'It belongs to the name']],
    ['gasket 1.2', ['It costs 1.2', 'It belongs to the name']],
    ['10 M8 bolts', ['10 × M8 bolts', 'One "10 M8 bolts"']],
    ['3 way valve 12.00', ['3 × way valve', 'One "3 way valve"']],
    ['M8 x 10', ['One "M8 x 10"', '10 × M8']],
    ['washer 14 x 18 2.00', ['One "washer 14 x 18"', '18 × washer 14']],
  ])('asks what is meant by "%s", and reads each answer without asking again', (typed, labels) => {
    const read = readOrderLines(`pump 99.00; ${typed}`);
    if (read.verdict !== 'ask') throw new Error(JSON.stringify(read));
    expect(read.doubt.ways.map(({ label }) => label)).toEqual(labels);
    for (const way of read.doubt.ways) {
      const settled = readOrderLines(read.rest(way.typed));
      expect(settled.verdict, way.typed).toBe('read');
      if (settled.verdict === 'read') expect(settled.lines.map(({ name }) => name)[0]).toBe('pump');
    }
  });

  it.each([
    ['', 'No line was typed.'],
    [' ; ;', 'No line was typed.'],
    ['84.50', '"84.50" has no name.'],
    ['gasket each', '"gasket each" says "each" without a price.'],
    ['gasket x0', 'is no number of pieces from 1 to 10000'],
    ['gasket x20000', 'is no number of pieces from 1 to 10000'],
    ['a'.repeat(201), 'is longer than 200 characters.'],
    [
      Array.from({ length: 26 }, (_, index) => `thing x${index + 1}`).join(';'),
      '26 lines are more than the 25',
    ],
  ])('refuses %j', (typed, problem) => {
    const read = readOrderLines(typed);
    if (read.verdict !== 'refuse') throw new Error(JSON.stringify(read));
    expect(read.problem).toContain(problem);
  });
});

describe('one thing or several', () => {
  it.each([
    ['head gasket', 'no'],
    ['head gasket 84.50; bolt x10', 'yes'],
    ['gasket; hose', 'perhaps'],
    ['+gasket; hose', 'no'],
    ["'; DROP TABLE orders; --", 'no'],
    ['gasket;', 'no'],
  ])('%s: %s', (typed, held) => {
    expect(holdsSeveral(typed)).toBe(held);
  });

  it('says the counts so that nobody has to ask', () => {
    expect(holdsSeveral(asSeveral('gasket; hose'))).toBe('yes');
    expect(readOrderLines(asSeveral('gasket; hose'))).toMatchObject({
      lines: [{ name: 'gasket' }, { name: 'hose' }],
    });
  });
});

describe('names with counts', () => {
  it.each([
    ['bolt x2', [{ name: 'bolt x2' }, { name: 'bolt', quantity: 2 }]],
    ['2 gaskets', [{ name: '2 gaskets' }, { name: 'gaskets', quantity: 2 }]],
    ['#13', [{ name: '#13' }]],
    ['#13: 4', [{ name: '#13: 4' }, { name: '#13', quantity: 4 }]],
  ])('%s', (typed, readings) => {
    expect(readCountedNames(typed)).toMatchObject([{ typed, readings }]);
  });

  it('are parted by semicolons, commas with a space, "and", and line ends', () => {
    expect(readCountedNames('bolt x2; hose, pin and #4\nplug').map(({ typed }) => typed)).toEqual([
      'bolt x2',
      'hose',
      'pin',
      '#4',
      'plug',
    ]);
  });
});
