import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quoteValue, splitOptions } from '../../../src/channel/people/split-options.ts';

const NAMES = ['size', 'side', 'what', 'due', 'note'];

/** Pairs of name and value; the unnamed one is called `-`. */
const pairs = (text: string) => splitOptions(text, NAMES).map(({ name, value }) => [name ?? '-', value]);

describe('the options of a typed line', () => {
  it.each([
    {
      text: ' what:"head gasket" due:"12 Dec"',
      read: [
        ['what', 'head gasket'],
        ['due', '12 Dec'],
      ],
    },
    {
      text: ' what:head gasket due:12 Dec',
      read: [
        ['what', 'head gasket'],
        ['due', '12 Dec'],
      ],
    },
    {
      text: ' size:21.9 x 1.5 side:male',
      read: [
        ['size', '21.9 x 1.5'],
        ['side', 'male'],
      ],
    },
    { text: ' 21.9 x 1.5', read: [['-', '21.9 x 1.5']] },
    {
      text: ' 21.9 x 1.5 side:male',
      read: [
        ['-', '21.9 x 1.5'],
        ['side', 'male'],
      ],
    },
    {
      text: String.raw` size:"11/16\" 16tpi" side:male`,
      read: [
        ['size', '11/16" 16tpi'],
        ['side', 'male'],
      ],
    },
    {
      text: ' size:"11/16" 16tpi" side:male',
      read: [
        ['size', '11/16" 16tpi'],
        ['side', 'male'],
      ],
    },
    { text: ' size:"0.863in"', read: [['size', '0.863in']] },
    {
      text: ' size:11/16" 16tpi side:male',
      read: [
        ['size', '11/16" 16tpi'],
        ['side', 'male'],
      ],
    },
    {
      text: ' what:“head gasket” due:‘12 Dec’',
      read: [
        ['what', 'head gasket'],
        ['due', '12 Dec'],
      ],
    },
    {
      text: " what:'head gasket' due:'12 Dec'",
      read: [
        ['what', 'head gasket'],
        ['due', '12 Dec'],
      ],
    },
    {
      text: " note:'tis bent side:male",
      read: [
        ['note', "'tis bent"],
        ['side', 'male'],
      ],
    },
    {
      text: ' note:"see size: below" side:male',
      read: [
        ['note', 'see size: below'],
        ['side', 'male'],
      ],
    },
    { text: ' Size: 21.9', read: [['size', '21.9']] },
    { text: ' due:12:30', read: [['due', '12:30']] },
    {
      text: ' what: due:today',
      read: [
        ['what', ''],
        ['due', 'today'],
      ],
    },
    { text: ' what:""', read: [['what', '']] },
    { text: ' note:"unclosed thing', read: [['note', '"unclosed thing']] },
    { text: '', read: [] },
  ])('reads $text', ({ text, read }) => {
    expect(pairs(text)).toEqual(read);
  });

  it('reads any value back as it was quoted', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (value) => {
        expect(pairs(` what:${quoteValue(value)} side:x`)).toEqual([
          ['what', value],
          ['side', 'x'],
        ]);
      }),
      { seed: 20261124 },
    );
  });

  it.each(['plain', 'head gasket', '11/16" 16tpi', '“curly”', 'back\\slash', 'a:b', "don't", 'side:male'])(
    'reads %s back as it was quoted',
    (value) => {
      expect(pairs(` what:${quoteValue(value)} side:x`)).toEqual([
        ['what', value],
        ['side', 'x'],
      ]);
    },
  );
});
